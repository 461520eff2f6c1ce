/** Which of several curves to take, and which length between them to try. */
import { bestBetween } from './bestBetween.ts';
import { flatTop } from './flatTop.ts';
import { leastMargin } from './floor.ts';
import type { LengthUnit } from './lengthUnit.ts';
import { justifiedStep } from './lengthUnit.ts';
import type { TradeOff, WeighedLength } from './tradeOff.ts';

/** Lengths are cut to the millimetre. */
export const CUT = 1e-3;

/** Share of the best mean that counts as next to nothing [-]. */
export const NEXT_TO_NOTHING = 0.005;

type Weighed = Pick<TradeOff, 'bandMean' | 'floors'>;

/**
 * Index of the best: the greatest mean among those that meet every floor; where none does, the one
 * that misses by least. Curves that failed in a band are never the best while another is whole.
 */
export function bestOf(choices: readonly Weighed[]): number {
  const margins = choices.map((choice) => leastMargin(choice.floors));
  const holds = (i: number) => margins[i]! >= 0;
  const figure = choices.some((_, i) => holds(i))
    ? choices.map((choice, i) => (holds(i) ? choice.bandMean : Number.NaN))
    : margins;
  return greatest(figure);
}

/**
 * The length to try next [m]: the top of the parabola through the best and its neighbours, in round
 * figures of the builder's unit as far as the flat top bears it; to the millimetre, a floor forbids that, the last length towards it at which the floor still holds,
 * margins running straight between lengths; where no length meets the floors, the least miss.
 *
 * @param lengths rising [m], one a choice
 */
export function lengthToTry(
  lengths: readonly number[],
  choices: readonly Weighed[],
  unit: LengthUnit = 'mm',
): number {
  const margins = choices.map((choice) => leastMargin(choice.floors));
  const means = choices.map((choice) => choice.bandMean);
  const top = bestBetween(lengths, means);
  if (!margins.some((margin) => margin < 0)) return rounded(top, lengths, means, unit);
  if (!margins.some((margin) => margin >= 0)) return toCut(bestBetween(lengths, margins));
  const best = bestOf(choices);
  const next = best + Math.sign(top - lengths[best]!);
  if (next === best || !(margins[next]! < 0)) return rounded(top, lengths, means, unit);
  const share = margins[best]! / (margins[best]! - margins[next]!);
  const edge = lengths[best]! + share * (lengths[next]! - lengths[best]!);
  const nearer = Math.abs(top - lengths[best]!) < Math.abs(edge - lengths[best]!) ? top : edge;
  return toCut(nearer);
}

/** The top in round figures that lose next to nothing; a length computed where it is as near. */
function rounded(
  top: number,
  lengths: readonly number[],
  means: readonly number[],
  unit: LengthUnit,
): number {
  if (lengths.includes(top)) return top;
  const { from, to } = flatTop(lengths, means, NEXT_TO_NOTHING);
  const step = justifiedStep(to - from, unit);
  const round = toStep(top, step);
  const near = lengths.find((length) => Math.abs(length - top) <= step / 2);
  return near ?? Math.min(Math.max(round, lengths[0]!), lengths.at(-1)!);
}

function greatest(figures: readonly number[]): number {
  return figures.reduce(
    (at, figure, i) => (figure > figures[at]! || Number.isNaN(figures[at]!) ? i : at),
    0,
  );
}

/** A length [m] to the nearest millimetre. */
function toCut(length: number): number {
  return toStep(length, CUT);
}

function toStep(length: number, step: number): number {
  return Number((Math.round(length / step) * step).toPrecision(12));
}

/** Why the recommended length was chosen. */
export type Reason =
  /** The best lies between lengths tried and a run there confirms it. */
  | 'confirmed-between'
  /** The run between the lengths tried was no better: the best of those tried stands. */
  | 'best-tried'
  /** The best lies at the end of the lengths tried: longer or shorter may be better still. */
  | 'at-the-end'
  /** A length with a better mean exists, but it breaks a floor. */
  | 'held-by-floor'
  /** No length meets every floor: this one misses by least. */
  | 'nearest-miss'
  /** No length beats the baseline. */
  | 'keep-baseline';

/**
 * @param own length fitted now [m]
 * @param between length that the trend pointed to [m]
 */
export function reasonFor(
  choices: readonly WeighedLength[],
  chosen: WeighedLength,
  own: number,
  between: number,
): Reason {
  const { length, bandMean, meetsFloors } = chosen;
  if (!meetsFloors) return 'nearest-miss';
  if (choices.some((other) => other.bandMean > bandMean)) return 'held-by-floor';
  if (length === own) return 'keep-baseline';
  if (chosen === choices[0] || chosen === choices.at(-1)) return 'at-the-end';
  return Math.abs(length - between) < CUT / 2 ? 'confirmed-between' : 'best-tried';
}
