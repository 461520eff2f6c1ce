/**
 * Which places of known curves a table should keep, so that straight lines between them err least where they err most:
 *
 *   worst(q, k) = min over j < k of max(worst(q - 1, j), error of the line from j to k)
 *
 * over q steps from the first place to k: exact for what is known, and of all choices the least.
 * Source: dynamic programming, Bellman (1961), Commun. ACM 4:284, for polygons (from memory).
 */
import type { Figures } from './loadGrid.ts';

/** The first and the last always; no more than lines within `limit` want, and at most `most`. */
export interface KnotWishes {
  limit: number;
  most: number;
}

/** Where a line errs most: its error [-], the place between its ends and the curve, by index. */
export interface LineError {
  error: number;
  at: number;
  row: number;
}

/**
 * @param xs rising
 * @param rows curves over them; NaN where one has no figure
 * @returns indices of the places kept, rising
 */
export function lineKnots(
  xs: readonly number[],
  rows: Figures,
  { limit, most }: KnotWishes,
): number[] {
  const errors = xs.map((_, j) => xs.map((_, k) => (k > j ? lineError(xs, rows, j, k).error : 0)));
  const last = xs.length - 1;
  let worst = errors[0]!;
  const from = [xs.map(() => 0)];
  while (worst[last]! > limit && from.length < most - 1) {
    const before = worst;
    const next = xs.map((_, k) => leastBy(k, (j) => Math.max(before[j]!, errors[j]![k]!)));
    worst = next.map(({ value }) => value);
    from.push(next.map(({ by }) => by));
  }
  const kept = [last];
  for (const step of from.reverse()) kept.push(step[kept.at(-1)!]!);
  return [...new Set(kept)].sort((a, b) => a - b);
}

/** The least of a value over 0..k, and what gives it. */
function leastBy(k: number, value: (j: number) => number): { value: number; by: number } {
  let least = { value: value(0), by: 0 };
  for (let j = 1; j < k; j++) if (value(j) < least.value) least = { value: value(j), by: j };
  return least;
}

/** Of the straight lines from place `j` to place `k`, one a curve, the greatest error over the curve between. */
export function lineError(xs: readonly number[], rows: Figures, j: number, k: number): LineError {
  let worst = { error: 0, at: j, row: 0 };
  rows.forEach((ys, row) => {
    for (let at = j + 1; at < k; at++) {
      const part = (xs[at]! - xs[j]!) / (xs[k]! - xs[j]!);
      const error = Math.abs((ys[j]! + part * (ys[k]! - ys[j]!)) / ys[at]! - 1);
      if (error > worst.error) worst = { error, at, row };
    }
  });
  return worst;
}
