/**
 * The main job: sweep the lengths, find the best for the target between them, confirm it by a run at
 * that very length, and weigh every length against the trumpets the builder has now.
 */
import { bestOf, CUT, lengthToTry, type Reason, reasonFor } from '../../decision/choice.ts';
import { flattestPair, type MixedLengths, mixedLengths } from '../../decision/mixedLengths.ts';
import { paretoSet } from '../../decision/pareto.ts';
import {
  type Fit,
  fits,
  type ShelfAnswer,
  shelfAnswer,
  shelfLengths,
} from '../../decision/shelf.ts';
import { scores, type Target } from '../../decision/target.ts';
import { type TradeOff, tradeOff, type WeighedLength } from '../../decision/tradeOff.ts';
import type { EngineSpecification } from '../../specification.ts';
import type { PointRunner } from '../../sweep/runner.ts';
import { type LengthCurve, runLengths, type SweepObserver } from '../../sweep/sweep.ts';
import { freeFeed, isBoosted } from './freeFeed.ts';

export interface LengthQuestion {
  engine: EngineSpecification;
  /** Lengths to try [m], rising; the baseline is the engine's own. */
  lengths: readonly number[];
  /** Speeds [rpm], rising. */
  speeds: readonly number[];
  target: Target;
  /** What can be fitted and bought; without it any length can. */
  fit?: Fit;
}

export interface LengthStudy {
  speeds: number[];
  target: Target;
  /** The lengths tried, those of the shelf among them. */
  tried: LengthCurve[];
  baseline: LengthCurve;
  recommended: LengthCurve & { reason: Reason };
  /** The recommended length against the baseline. */
  decision: TradeOff;
  /** Every length computed against the baseline, rising. */
  weighed: WeighedLength[];
  /** The lengths that no other beats in gain without a higher price, dearest first. */
  pareto: WeighedLength[];
  /** What can be fitted and bought, as asked. */
  fit?: Fit;
  /** What to buy; absent where no shelf is given or nothing on it can be fitted. */
  shelf?: ShelfAnswer;
  /** The pair of lengths spread over the cylinders that is flattest; absent for one cylinder. */
  mixed?: MixedLengths;
  /** The same change of length breathing ambient air; given where a pressurised box feeds. */
  free?: TradeOff;
}

export async function lengthStudy(
  question: LengthQuestion,
  runner: PointRunner,
  observer: SweepObserver = {},
): Promise<LengthStudy> {
  const { engine, lengths, speeds, target, fit } = question;
  const own = engine.intake.trumpet.length;
  const all = lengthsToRun(question);
  const asked = new Set([...lengths, ...shelfLengths(fit)]);
  const swept = await runLengths(engine, all, speeds, runner, observer);
  const baseline = swept.find((curve) => curve.length === own)!;
  const weigh = (curve: LengthCurve) => weighLength(speeds, curve, baseline, target);
  const open = swept.filter((curve) => fits(curve.length, fit));
  const between = lengthToTry(
    open.map((curve) => curve.length),
    open.map(weigh),
  );
  const known = swept.some((curve) => Math.abs(curve.length - between) < CUT / 2);
  const extra = known ? [] : await runLengths(engine, [between], speeds, runner, observer);
  const curves = [...swept, ...extra].sort((a, b) => a.length - b.length);
  const weighed = curves.map(weigh);
  const choices = weighed.filter((one) => fits(one.length, fit));
  const chosen = choices[bestOf(choices)]!;
  const curve = curves.find((one) => one.length === chosen.length)!;
  const shelf = fit && shelfAnswer(fit, chosen, weighed);
  const mixed = flattestPair(
    mixedLengths(
      curves.filter((one) => fits(one.length, fit)),
      baseline,
      speeds,
      target,
      engine.cylinder.count,
    ),
  );
  const boosted = isBoosted(engine) && chosen.length !== own;
  const free = boosted
    ? await freeFeed(engine, chosen.length, speeds, target, runner, observer)
    : undefined;
  return {
    speeds: [...speeds],
    target,
    tried: swept.filter(({ length }) => asked.has(length)),
    baseline,
    recommended: { ...curve, reason: reasonFor(choices, chosen, own, between) },
    decision: decisionOf(chosen),
    weighed,
    pareto: paretoSet(choices),
    ...(fit && { fit }),
    ...(shelf && { shelf }),
    ...(mixed && { mixed }),
    ...(free && { free }),
  };
}

/** The lengths of the question's table [m], rising: those to try, the baseline's, the shelf's. */
export function lengthsToRun({ engine, lengths, fit }: LengthQuestion): number[] {
  const all = [...lengths, ...shelfLengths(fit), engine.intake.trumpet.length];
  return [...new Set(all)].sort((a, b) => a - b);
}

/** One length against the baseline, by the score of the target. */
export function weighLength(
  speeds: readonly number[],
  curve: LengthCurve,
  baseline: LengthCurve,
  target: Target,
): WeighedLength {
  const figures = (of: LengthCurve) => scores(of.outcomes, target.score);
  return { length: curve.length, ...tradeOff(speeds, figures(curve), figures(baseline), target) };
}

function decisionOf({ length: _, ...decision }: WeighedLength): TradeOff {
  return decision;
}
