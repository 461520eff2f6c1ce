/** What each of a family of unknowns has above the mean of all, and how much readings say of it. */
import { aboveMean, deviationOf, type MostProbable } from './mostProbable.ts';

/** What one has above the mean of all, and one standard deviation of it. */
export interface Share {
  value: number;
  deviation: number;
}

/**
 * Deviation left, over the prior one, above which readings count as having told nothing: our own mark, no
 * source.
 */
export const UNTOLD = 0.7;

/** Whole numbers `from` to below `upTo`. */
export const range = (from: number, upTo: number) =>
  Array.from({ length: upTo - from }, (_, i) => from + i);

/** The family of unknowns `from` to below `upTo`. */
export function shares(solved: MostProbable, from: number, upTo: number): Share[] {
  return Array.from({ length: upTo - from }, (_, i) =>
    weighted(solved, aboveMean(from, upTo - from, i, solved.values.length)),
  );
}

/** The same against one of the family in place of the mean. */
export function sharesAgainst(
  solved: MostProbable,
  from: number,
  upTo: number,
  one: number,
): Share[] {
  return Array.from({ length: upTo - from }, (_, i) =>
    weighted(
      solved,
      solved.values.map((__, k) => (k === from + i ? 1 : 0) - (k === from + one ? 1 : 0)),
    ),
  );
}

function weighted({ values, covariance }: MostProbable, weights: readonly number[]): Share {
  const value = weights.reduce((sum, w, k) => sum + w * values[k]!, 0);
  return { value, deviation: deviationOf(covariance, weights) };
}

/** Mean deviation of a family over what it was before; nothing is left to tell of one alone. */
export function leftOf(family: readonly Share[], prior: number): number {
  if (family.length < 2) return 1;
  const before = prior * Math.sqrt(1 - 1 / family.length);
  return family.reduce((sum, { deviation }) => sum + deviation / before, 0) / family.length;
}

/** Step of a slope in prior deviations: wider than the places of a table are apart. */
const SLOPE_STEP = 0.05;

/** How a figure answers to each unknown about the values. */
export function slopesOf(
  of: (x: readonly number[]) => number,
  values: readonly number[],
  deviations: readonly number[],
): number[] {
  return deviations.map((deviation, k) => {
    const by = SLOPE_STEP * deviation;
    const moved = (sign: number) => of(values.map((x, l) => (l === k ? x + sign * by : x)));
    return (moved(1) - moved(-1)) / (2 * by);
  });
}
