/**
 * Two lengths spread over the cylinders. With a throttle body a cylinder the intakes do not know of
 * each other, so each cylinder breathes as it would with its own length on all of them, and
 *
 *   score(n) = (k score_a(n) + (N - k) score_b(n)) / N     k of N cylinders with length a
 *
 * What couples them is the exhaust alone: a joint where primaries meet passes on a little less or
 * more gas from a neighbour. tests/decision/mixedLengths.test.ts holds this against all cylinders
 * solved together. Cylinders that fill unlike want fuelling of their own; nothing here says that
 * they get it.
 */
import { leastMargin } from './floor.ts';
import type { Target } from './target.ts';
import { type TradeOff, tradeOff } from './tradeOff.ts';

/** Most that cylinders may differ at any speed where a pair is advised [%]; common practice, no source. */
export const MOST_UNLIKE = 10;

/** Scores of one length [m] on all cylinders, one a speed. */
export interface LengthScores {
  length: number;
  values: readonly number[];
}

/** Two lengths on one engine against the baseline. */
export type MixedLengths = TradeOff & {
  /** The shorter length [m] and on how many cylinders. */
  short: number;
  shortCount: number;
  /** The longer length [m] and on how many cylinders. */
  long: number;
  longCount: number;
  /** Mean score of all cylinders at each speed. */
  curve: number[];
  /** Greatest difference between the two lengths at any speed, of their mean [%]. */
  unlikePercent: number;
};

/**
 * Every pair of the lengths, the cylinders shared out as evenly as they go.
 *
 * @param baseline its scores at the same rising speeds [rpm]
 * @param cylinders number of cylinders; with one there are no pairs
 */
export function mixedLengths(
  curves: readonly LengthScores[],
  baseline: readonly number[],
  speeds: readonly number[],
  target: Target,
  cylinders: number,
): MixedLengths[] {
  if (cylinders < 2) return [];
  const known = [...curves].sort((a, b) => a.length - b.length);
  const shares = new Set([Math.floor(cylinders / 2), Math.ceil(cylinders / 2)]);
  return known.flatMap((short, i) =>
    known.slice(i + 1).flatMap((long) =>
      [...shares].map((shortCount) => {
        const share = shortCount / cylinders;
        const curve = short.values.map((y, j) => share * y + (1 - share) * long.values[j]!);
        return {
          short: short.length,
          shortCount,
          long: long.length,
          longCount: cylinders - shortCount,
          curve,
          unlikePercent: unlike(short.values, long.values),
          ...tradeOff(speeds, curve, baseline, target),
        };
      }),
    ),
  );
}

/**
 * The pair whose least score in the bands is greatest, of those that meet the floors where any does;
 * undefined where there is no pair with figures.
 */
export function flattestPair(pairs: readonly MixedLengths[]): MixedLengths | undefined {
  const known = pairs.filter((pair) => Number.isFinite(pair.least));
  const holding = known.filter((pair) => leastMargin(pair.floors) >= 0);
  const open = holding.length > 0 ? holding : known;
  return open.reduce<MixedLengths | undefined>(
    (best, pair) => (best === undefined || pair.least > best.least ? pair : best),
    undefined,
  );
}

function unlike(a: readonly number[], b: readonly number[]): number {
  const differences = a.map((y, i) => (200 * Math.abs(y - b[i]!)) / (y + b[i]!));
  return Math.max(...differences.filter(Number.isFinite), 0);
}
