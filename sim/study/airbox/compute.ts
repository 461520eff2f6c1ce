/**
 * Trumpets in the open beside the same in a box: full load over speed, what the box does to each cylinder,
 * and to the length that is best in the band. All cylinders in the box are solved together.
 */
import type { LengthUnit } from '../../decision/lengthUnit.ts';
import { scores, type Target, targetMean } from '../../decision/target.ts';
import { type TradeOff, tradeOff } from '../../decision/tradeOff.ts';
import type { AirboxSpecification } from '../../fittings.ts';
import type { EngineSpecification } from '../../specification.ts';
import { isFailure, type PointOutcome } from '../../sweep/runner.ts';
import { type SweepObserver, withLength } from '../../sweep/sweep.ts';
import type { Computer } from '../../sweep/tasks.ts';
import { type FedCurve, outcomeOf, Runs, type Sensed, sensedIn } from '../fed.ts';
import { isBoosted, withFreeFeed } from '../length/freeFeed.ts';
import { inBox } from './fitted.ts';

export interface AirboxQuestion {
  /** With the trumpets that are looked at. */
  engine: EngineSpecification;
  airbox: AirboxSpecification;
  /** [rpm], rising. */
  speeds: readonly number[];
  target: Target;
  /** Trumpet lengths tried in the band [m]; rising. */
  lengths: readonly number[];
  lengthUnit: LengthUnit;
}

/** One length: the mean of the target's score in the band, in the open and in the box. */
export interface BoxedLength {
  length: number;
  open: number;
  boxed: number;
}

export interface AirboxStudy extends Omit<AirboxQuestion, 'engine' | 'lengths'> {
  open: FedCurve;
  boxed: FedCurve;
  /** Pressure where the snorkel opens, a speed each; undefined where the point failed. */
  inBox: (Sensed | undefined)[];
  /** In the box against in the open. */
  weighed: TradeOff;
  /** The same breathing ambient air, where the feed is boosted: filling over speed of both. */
  free?: Record<'open' | 'boxed', PointOutcome[]>;
  lengths: BoxedLength[];
  /** Best length in the open and in the box, of those tried; undefined where points failed. */
  best?: { open: number; boxed: number };
  /** Every point that the lengths stand on. */
  tried: PointOutcome[];
}

export async function airboxStudyOf(
  question: AirboxQuestion,
  computer: Computer,
  observer: SweepObserver = {},
): Promise<AirboxStudy> {
  const { engine, lengths, ...asked } = question;
  const { speeds, target, airbox } = asked;
  const run = new Runs(computer, observer);
  const boxed = inBox(engine, airbox);
  const unboosted = isBoosted(engine) ? [withFreeFeed(engine), withFreeFeed(boxed)] : [];
  const across = speedsAcross(speeds, target);
  const curves = 2 + unboosted.length;
  observer.onTotal?.(curves * speeds.length + 2 * lengths.length * across.length);
  const inBand = (one: EngineSpecification) =>
    Promise.all(lengths.map((length) => run.curve(withLength(one, length), across)));
  const [freed, open, traces, ...bands] = await Promise.all([
    Promise.all(unboosted.map((one) => run.curve(one, speeds))),
    run.curve(engine, speeds),
    Promise.all(speeds.map((speed) => run.trace(boxed, speed))),
    inBand(engine),
    inBand(boxed),
  ]);
  const outcomes = traces.map(outcomeOf);
  const [out, own] = [open, outcomes].map((one) => scores(one, target.score));
  const [free, closed] = bands.map((curves) =>
    curves.map((one) => targetMean(across, scores(one, target.score), target)),
  );
  const tried = lengths.map((length, i) => ({ length, open: free![i]!, boxed: closed![i]! }));
  return {
    ...asked,
    open: { engine, outcomes: open },
    boxed: { engine: boxed, outcomes },
    inBox: traces.map((one) => sensedIn(one, 'chamber')),
    weighed: tradeOff(speeds, own!, out!, target),
    ...(freed.length > 0 && { free: { open: freed[0]!, boxed: freed[1]! } }),
    lengths: tried,
    ...bestOf(tried),
    tried: bands.flat(2),
  };
}

/** Speeds of the band, with those beside it where it ends between two. */
function speedsAcross(speeds: readonly number[], { from, to }: Target): number[] {
  const first = Math.max(
    speeds.findLastIndex((speed) => speed <= from),
    0,
  );
  const last = speeds.findIndex((speed) => speed >= to);
  return speeds.slice(first, last < 0 ? undefined : last + 1);
}

function bestOf(lengths: readonly BoxedLength[]): Pick<AirboxStudy, 'best'> {
  const known = lengths.every(({ open, boxed }) => Number.isFinite(open + boxed));
  if (lengths.length === 0 || !known) return {};
  const top = (of: (one: BoxedLength) => number) =>
    lengths.reduce((a, b) => (of(b) > of(a) ? b : a)).length;
  return { best: { open: top(({ open }) => open), boxed: top(({ boxed }) => boxed) } };
}

/** Every point that the study rests on. */
export function airboxOutcomes({ open, boxed, tried, free }: AirboxStudy): PointOutcome[] {
  const unboosted = free ? [...free.open, ...free.boxed] : [];
  return [...open.outcomes, ...boxed.outcomes, ...tried, ...unboosted];
}

/** Whether every point has settled. */
export const airboxSound = (study: AirboxStudy): boolean =>
  airboxOutcomes(study).every((one) => !isFailure(one) && one.settled);
