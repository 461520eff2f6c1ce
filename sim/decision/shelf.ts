/** From the best length to what to buy and where to saw. */
import { bestOf } from './choice.ts';
import { throughPoints } from './throughPoints.ts';
import type { WeighedLength } from './tradeOff.ts';

/** What can be fitted and bought. */
export interface Fit {
  /** Longest trumpet that may be fitted [m]; absent where nothing is in the way. */
  longest?: number;
  /** Lengths on sale [m], rising; empty where none are listed. */
  shelf: readonly number[];
  /** Whether trumpets may be cut, at the end of the throttle body. */
  cut: boolean;
  /** How far a cut may miss either way [m]. */
  tolerance: number;
  /** Loss against the best that is good enough [%]. */
  withinPercent: number;
}

export interface ShelfAnswer {
  /** Length to buy [m]. */
  buy: number;
  /** Length to cut it to [m]; absent where it is fitted as sold. */
  cutTo?: number;
  /** Loss of what is then fitted against the recommended length, in the mean over the bands [%]. */
  lossPercent: number;
  /** The same where the cut misses by the tolerance, on the worse side [%]; 0 without a cut. */
  missPercent: number;
  /** Whether that is good enough and breaks no floor. */
  good: boolean;
}

/** Whether a length [m] may be fitted. */
export function fits(length: number, fit: Fit | undefined): boolean {
  return fit?.longest === undefined || length <= fit.longest + 1e-9;
}

/** Lengths of the shelf that must be computed [m]: all as sold, or the longest where a saw helps. */
export function shelfLengths(fit: Fit | undefined): number[] {
  const fitting = (fit?.shelf ?? []).filter((length) => fits(length, fit));
  return fit?.cut ? fitting.slice(-1) : fitting;
}

/**
 * What to buy for the recommended length.
 *
 * @param weighed every length computed, rising; among them those of `shelfLengths`
 * @returns undefined where nothing on the shelf can be fitted, even cut
 */
export function shelfAnswer(
  fit: Fit,
  recommended: WeighedLength,
  weighed: readonly WeighedLength[],
): ShelfAnswer | undefined {
  const { shelf, cut, tolerance, withinPercent } = fit;
  const wanted = recommended.length;
  const loss = (mean: number) => 100 * (1 - mean / recommended.bandMean);
  const long = shelf.find((length) => length >= wanted - tolerance);
  if (cut && long !== undefined) {
    const asSold = Math.abs(long - wanted) <= tolerance;
    const miss = [-tolerance, tolerance].map((by) => loss(meanAt(weighed, wanted + by)));
    const missPercent = asSold ? 0 : Math.max(0, ...miss);
    return {
      buy: long,
      ...(!asSold && { cutTo: wanted }),
      lossPercent: 0,
      missPercent,
      good: missPercent <= withinPercent && recommended.meetsFloors,
    };
  }
  const sold = shelfLengths(fit);
  const offers = weighed.filter((one) => sold.includes(one.length));
  if (offers.length === 0) return undefined;
  const best = offers[bestOf(offers)]!;
  const lossPercent = loss(best.bandMean);
  const good = lossPercent <= withinPercent && best.meetsFloors;
  return { buy: best.length, lossPercent, missPercent: 0, good };
}

/** Mean score at a length between those computed, on the parabola through the three nearest. */
function meanAt(weighed: readonly WeighedLength[], length: number): number {
  const near = [...weighed]
    .sort((a, b) => Math.abs(a.length - length) - Math.abs(b.length - length))
    .slice(0, 3);
  return throughPoints(
    near.map((one) => ({ x: one.length, y: one.bandMean })),
    length,
  );
}
