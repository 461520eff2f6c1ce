/**
 * The main job: sweep the lengths, find the best for the target between them, confirm it by a run at
 * that very length, and weigh every length against the trumpets the builder has now.
 */
import { bestOf, CUT, lengthToTry, type Reason, reasonFor } from '../../decision/choice.ts';
import type { LengthUnit } from '../../decision/lengthUnit.ts';
import {
  flattestPair,
  type MixedLengths,
  MOST_UNLIKE,
  mixedLengths,
} from '../../decision/mixedLengths.ts';
import { paretoSet } from '../../decision/pareto.ts';
import type { Sampling } from '../../decision/sampleCurves.ts';
import {
  type Fit,
  fits,
  type ShelfAnswer,
  shelfAnswer,
  shelfLengths,
} from '../../decision/shelf.ts';
import { scores, type Target } from '../../decision/target.ts';
import { type TradeOff, tradeOff, type WeighedLength } from '../../decision/tradeOff.ts';
import { cylindersDiffer } from '../../engine/manifolds.ts';
import type { InjectorsSpecification } from '../../injectors.ts';
import type { EngineSpecification } from '../../specification.ts';
import type { PointRunner } from '../../sweep/runner.ts';
import { type LengthCurve, type SweepObserver, withLength } from '../../sweep/sweep.ts';
import { Contest, type Resolution } from '../contest.ts';
import { Curves } from '../curves.ts';
import { rangesOf } from '../refinement.ts';
import { type Flywheel, flywheel } from './flywheel.ts';
import { freeFeed, isBoosted } from './freeFeed.ts';
import { type Fuelled, fuelled } from './fuelled.ts';
import { type MovedBand, movedBands } from './movedBands.ts';

export interface LengthQuestion {
  engine: EngineSpecification;
  /** Lengths to try [m], rising; the baseline is the engine's own. */
  lengths: readonly number[];
  /** Speeds [rpm], rising. */
  speeds: readonly number[];
  target: Target;
  /** The scenario's, whose fuel the lengths are computed without. */
  injectors?: InjectorsSpecification;
  /** What can be fitted and bought; without it any length can. */
  fit?: Fit;
  /** Whether points are computed between the speeds where the answer turns on them. */
  refine?: boolean;
  /** Unit in which lengths are round and told; millimetres where absent. */
  unit?: LengthUnit;
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
  /** The length recommended and the one fitted now at the flywheel. */
  flywheel: { recommended: Flywheel; baseline: Flywheel };
  /** What the answer would be with the bands moved. */
  moved: MovedBand[];
  /** How well the curves are known between the speeds; absent where nothing was refined. */
  resolution?: Resolution;
  /** At which speeds samples are known as well as the answer; absent where nothing was refined. */
  sampling?: Sampling;
  /** What can be fitted and bought, as asked. */
  fit?: Fit;
  /** As asked. */
  unit?: LengthUnit;
  /** What to buy; absent where no shelf is given or nothing on it can be fitted. */
  shelf?: ShelfAnswer;
  /** The pair of lengths spread over the cylinders that is flattest; absent for one cylinder. */
  mixed?: MixedLengths & { speeds: number[] };
  /** The same change of length breathing ambient air; given where a pressurised box feeds. */
  free?: TradeOff;
  /** The same change of length with the scenario's injectors; given where it has some. */
  fuelled?: Fuelled;
}

export async function lengthStudy(
  question: LengthQuestion,
  runner: PointRunner,
  observer: SweepObserver = {},
): Promise<LengthStudy> {
  const { engine, lengths, speeds, target, fit } = question;
  const own = engine.intake.trumpet.length;
  const asked = new Set([...lengths, ...shelfLengths(fit)]);
  const engineOf = (length: number) => withLength(engine, length);
  const curves = new Curves({ ...question, own, engineOf }, runner, observer);
  const mayWin = (length: number) => fits(length, fit);
  const contest = new Contest({ refine: question.refine ?? false, mayWin }, curves);
  await curves.add(lengthsToRun(question));
  const swept = new Set(curves.all.map(({ length }) => length));
  await contest.resolve();
  const between = await addBetween(contest, curves, question.unit);
  const resolution = await contest.conclude();
  const sampling = curves.sampling();
  const weighed = curves.weighed();
  const choices = weighed.filter(({ length }) => mayWin(length));
  const chosen = choices[bestOf(choices)]!;
  const shelf = fit && shelfAnswer(fit, chosen, weighed);
  const mixed = bestPair(question, curves);
  const elsewhere =
    chosen.length !== own && (await asOtherwise(question, curves, chosen.length, runner, observer));
  return {
    speeds: [...speeds],
    target,
    tried: curves.all.filter(({ length }) => asked.has(length) && swept.has(length)),
    baseline: curves.baseline,
    recommended: { ...curves.at(chosen.length), reason: reasonFor(choices, chosen, own, between) },
    decision: decisionOf(chosen),
    weighed,
    pareto: paretoSet(choices.filter(hasPrice)),
    flywheel: flywheels(question, curves, chosen.length),
    moved: movedBands(question, curves, chosen.length),
    ...(resolution && { resolution }),
    ...(sampling && { sampling }),
    ...(fit && { fit }),
    ...(shelf && { shelf }),
    ...(question.unit && { unit: question.unit }),
    ...(mixed && { mixed }),
    ...elsewhere,
  };
}

/** Computes the length between those known that promises most; gives it as it was found [m]. */
async function addBetween(contest: Contest, curves: Curves, unit?: LengthUnit): Promise<number> {
  const known = curves.all.map(({ length }) => length);
  const open = contest.choices();
  const lengths = open.map(({ length }) => length);
  const between = lengthToTry(lengths, open, unit);
  await curves.add([known.find((length) => Math.abs(length - between) < CUT / 2) ?? between]);
  return between;
}

/** The same change of length breathing ambient air, and with the fuel of the injectors. */
async function asOtherwise(
  question: LengthQuestion,
  curves: Curves,
  length: number,
  runner: PointRunner,
  observer: SweepObserver,
): Promise<Pick<LengthStudy, 'free' | 'fuelled'>> {
  const { engine, injectors, speeds, target } = question;
  const free = isBoosted(engine)
    ? await freeFeed(engine, length, bandSpeeds(question, curves), target, runner, observer)
    : undefined;
  const dry = weighLength(speeds, curves.at(length), curves.baseline, target);
  const wet =
    injectors && (await fuelled(engine, injectors, dry, speeds, target, runner, observer));
  return { ...(free && { free }), ...(wet && { fuelled: wet }) };
}

/** The speeds computed of the baseline in the bands and about them; it is resolved there [rpm]. */
function bandSpeeds(question: LengthQuestion, { baseline }: Curves): number[] {
  const inBands = baseline.resolved
    ? rangesOf({ ...question, target: { ...question.target, floors: [] } }, 'bands')
    : [];
  const between = (baseline.between ?? []).map(({ speed }) => speed);
  const near = between.filter((speed) =>
    inBands.some(({ from, to }) => speed >= from && speed <= to),
  );
  return [...question.speeds, ...near].sort((a, b) => a - b);
}

/** Both at the speeds at which both are known. */
function flywheels(question: LengthQuestion, curves: Curves, recommended: number) {
  const [ours, own] = [curves.at(recommended), curves.baseline];
  const at = curves.speedsFor(ours, own);
  return { recommended: flywheel(question, ours, at), baseline: flywheel(question, own, at) };
}

/** Whether the price of a length is known as well as the study knows any. */
const hasPrice = ({ known = 'all' }: WeighedLength) => known === 'all';

/** The flattest pair of like lengths whose curves are known best; its curve is at its own speeds. */
function bestPair(question: LengthQuestion, curves: Curves): LengthStudy['mixed'] {
  const { fit, target, engine } = question;
  const { baseline } = curves;
  // Which cylinder has which length would count.
  if (cylindersDiffer(engine)) return undefined;
  const open = curves.all.filter(
    ({ length, resolved }) => fits(length, fit) && (resolved !== undefined) === !!baseline.resolved,
  );
  const at = curves.speedsFor(baseline, ...open);
  const values = open.map((curve) => ({ length: curve.length, values: curves.figures(curve, at) }));
  const own = curves.figures(baseline, at);
  const pairs = mixedLengths(values, own, at, target, engine.cylinder.count);
  const best = flattestPair(pairs.filter(({ unlikePercent }) => unlikePercent <= MOST_UNLIKE));
  return best && { ...best, speeds: at };
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

function decisionOf({ length: _, known: _known, ...decision }: WeighedLength): TradeOff {
  return decision;
}
