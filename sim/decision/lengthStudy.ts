/**
 * The main job: sweep the lengths, find the best for the band between them, confirm it by a run at
 * that very length, and weigh it against the trumpets the builder has now.
 */

import type { EngineSpecification } from '../specification.ts';
import { isFailure, type PointOutcome, type PointRunner } from '../sweep/runner.ts';
import { type SweepObserver, sweep, withLength } from '../sweep/sweep.ts';
import { type Band, bandMean } from './band.ts';
import { bestBetween } from './bestBetween.ts';
import { efficiencies, type TradeOff, tradeOff } from './tradeOff.ts';

export interface LengthQuestion {
  engine: EngineSpecification;
  /** Lengths to try [m], rising; the baseline is the engine's own. */
  lengths: readonly number[];
  /** Speeds [rpm], rising. */
  speeds: readonly number[];
  target: Band;
}

/** One length at all speeds. */
export interface LengthCurve {
  /** Trumpet length, rim plane to body face [m]. */
  length: number;
  outcomes: PointOutcome[];
}

/** Why the recommended length was chosen. */
export type Reason =
  /** The best lies between lengths tried and a run there confirms it. */
  | 'confirmed-between'
  /** The run between the lengths tried was no better: the best of those tried stands. */
  | 'best-tried'
  /** The best lies at the end of the lengths tried: longer or shorter may be better still. */
  | 'at-the-end'
  /** No length beats the baseline. */
  | 'keep-baseline';

export interface LengthStudy {
  speeds: number[];
  target: Band;
  /** The lengths tried. */
  tried: LengthCurve[];
  baseline: LengthCurve;
  recommended: LengthCurve & { reason: Reason };
  /** The recommended length against the baseline. */
  decision: TradeOff;
}

/** Lengths are cut to the millimetre. */
const CUT = 1e-3;

export async function lengthStudy(
  question: LengthQuestion,
  runner: PointRunner,
  observer: SweepObserver = {},
): Promise<LengthStudy> {
  const { engine, lengths, speeds, target } = question;
  const own = engine.intake.trumpet.length;
  const all = [...new Set([...lengths, own])].sort((a, b) => a - b);
  const curves = await runLengths(engine, all, speeds, runner, observer);
  const tried = curves.filter((curve) => lengths.includes(curve.length));
  const baseline = curves.find((curve) => curve.length === own)!;
  const worth = (curve: LengthCurve) => bandMean(speeds, efficiencies(curve.outcomes), target);
  const between = toCut(bestBetween(all, curves.map(worth)));
  const known = curves.find((curve) => Math.abs(curve.length - between) < CUT / 2);
  const candidate = known ?? (await runLengths(engine, [between], speeds, runner, observer))[0]!;
  const best = curves.reduce((a, b) => (worth(b) > worth(a) ? b : a));
  const chosen = worth(candidate) >= worth(best) ? candidate : best;
  return {
    speeds: [...speeds],
    target,
    tried,
    baseline,
    recommended: { ...chosen, reason: reasonFor(chosen, candidate, baseline, all) },
    decision: tradeOff(
      speeds,
      efficiencies(chosen.outcomes),
      efficiencies(baseline.outcomes),
      target,
    ),
  };
}

/** Curves of the given lengths [m]. */
export async function runLengths(
  engine: EngineSpecification,
  lengths: readonly number[],
  speeds: readonly number[],
  runner: PointRunner,
  observer: SweepObserver = {},
): Promise<LengthCurve[]> {
  const variants = lengths.map((length) => withLength(engine, length));
  const table = await sweep(variants, speeds, runner, observer);
  return lengths.map((length, i) => ({ length, outcomes: table[i]! }));
}

/** Whether every point of every curve has settled. */
export function allSettled(curves: readonly LengthCurve[]): boolean {
  return curves.every((curve) =>
    curve.outcomes.every((outcome) => !isFailure(outcome) && outcome.settled),
  );
}

function reasonFor(
  chosen: LengthCurve,
  candidate: LengthCurve,
  baseline: LengthCurve,
  all: readonly number[],
): Reason {
  if (chosen === baseline) return 'keep-baseline';
  if (chosen.length === all[0] || chosen.length === all[all.length - 1]) return 'at-the-end';
  return chosen === candidate ? 'confirmed-between' : 'best-tried';
}

function toCut(length: number): number {
  return Math.round(length / CUT) / Math.round(1 / CUT);
}
