/**
 * Trumpets in the open beside the same in a box: full load over speed, what the box does to each cylinder,
 * and to the length that is best in the band. All cylinders in the box are solved together.
 */
import type { LengthUnit } from '../../decision/lengthUnit.ts';
import type { Target } from '../../decision/target.ts';
import type { TradeOff } from '../../decision/tradeOff.ts';
import type { AirboxSpecification } from '../../fittings.ts';
import type { EngineSpecification } from '../../specification.ts';
import { isFailure, type PointOutcome } from '../../sweep/runner.ts';
import { allPoints, type SweepObserver } from '../../sweep/sweep.ts';
import type { Computer } from '../../sweep/tasks.ts';
import type { Resolution } from '../contest.ts';
import { type FedCurve, Runs, type Sensed, sensedIn, tracing } from '../fed.ts';
import { isBoosted, withFreeFeed } from '../length/freeFeed.ts';
import { resolvedPair } from '../pair.ts';
import { inBox } from './fitted.ts';
import { type LengthMean, lengthsInBand, onceOnly } from './lengths.ts';

export interface AirboxQuestion {
  /** With the trumpets that are looked at. */
  engine: EngineSpecification;
  airbox: AirboxSpecification;
  /** [rpm], rising. */
  speeds: readonly number[];
  target: Target;
  /** Trumpet lengths tried in the band [m]; rising. */
  lengths: readonly number[];
  /** Whether points are computed between the speeds until what is told of them is known. */
  refine?: boolean;
  lengthUnit: LengthUnit;
}

/** One length: the mean of the target's score in the band, in the open and in the box. */
export interface BoxedLength {
  length: number;
  open: number;
  boxed: number;
  /** Where it is out of contest, and so known at the speeds of the file alone. */
  coarse: Record<'open' | 'boxed', boolean>;
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
  /** How well all is known between the speeds: box against open, lengths in the open, in the box. */
  resolutions?: Record<'pair' | 'open' | 'boxed', Resolution>;
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
  const { speeds, target, airbox, refine = false } = asked;
  const boxed = inBox(engine, airbox);
  const unboosted = isBoosted(engine) ? [withFreeFeed(engine), withFreeFeed(boxed)] : [];
  observer.onTotal?.(unboosted.length * speeds.length);
  const traced = tracing(computer, boxed, speeds);
  const runner = onceOnly(traced);
  const run = new Runs(computer, observer);
  const inBand = (one: EngineSpecification) =>
    lengthsInBand({ engine: one, lengths, speeds, target, refine }, runner, observer);
  const engines = [boxed, engine] as const;
  const [pair, inOpen, inTheBox, ...freed] = await Promise.all([
    resolvedPair({ engines, speeds, target, refine }, runner, observer),
    inBand(engine),
    inBand(boxed),
    ...unboosted.map((one) => run.curve(one, speeds)),
  ]);
  const tried = lengths.map((length, i) =>
    boxedLength(length, inOpen.means[i]!, inTheBox.means[i]!),
  );
  return {
    ...asked,
    open: { engine, ...pair.theirs },
    boxed: { engine: boxed, ...pair.ours },
    inBox: speeds.map((speed) => sensedIn(traced.traces.get(speed)!, 'chamber')),
    weighed: pair.weighed,
    ...(freed.length > 0 && { free: { open: freed[0]!, boxed: freed[1]! } }),
    lengths: tried,
    ...resolutionsOf(pair.resolution, inOpen.resolution, inTheBox.resolution),
    ...bestOf(tried),
    tried: [...inOpen.outcomes, ...inTheBox.outcomes],
  };
}

const boxedLength = (length: number, open: LengthMean, boxed: LengthMean): BoxedLength => ({
  length,
  open: open.mean,
  boxed: boxed.mean,
  coarse: { open: open.coarse, boxed: boxed.coarse },
});

function resolutionsOf(
  pair?: Resolution,
  open?: Resolution,
  boxed?: Resolution,
): Pick<AirboxStudy, 'resolutions'> {
  return pair && open && boxed ? { resolutions: { pair, open, boxed } } : {};
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
  return [...allPoints(open), ...allPoints(boxed), ...tried, ...unboosted];
}

/** Whether every point has settled. */
export const airboxSound = (study: AirboxStudy): boolean =>
  airboxOutcomes(study).every((one) => !isFailure(one) && one.settled);
