/**
 * What one way changes against another at the same speeds: the mean of the differences, and what so few speeds leave
 * open in it,
 *
 *   t(0.95, n - 1) s / sqrt(n)      s scatter of the differences, at least that which two points have anyway
 *
 * Source: interval of a mean of paired differences, any text on statistics.
 */
import { hypot, square } from '../elementary/powers.ts';
import { studentT } from './studentT.ts';

const LEVEL = 0.95;

export interface PairedChange {
  mean: number;
  /** Half-width of the interval in which the mean lies at 95 %. */
  open: number;
}

/**
 * @param differences one a speed; undefined where a point failed
 * @param scatter of a single point, in the same unit
 * @returns undefined for fewer than two
 */
export function pairedChange(
  differences: readonly (number | undefined)[],
  scatter: number,
): PairedChange | undefined {
  const known = differences.filter((value) => value !== undefined);
  const n = known.length;
  if (n < 2) return undefined;
  const mean = known.reduce((sum, value) => sum + value, 0) / n;
  const squares = known.reduce((sum, value) => sum + square(value - mean), 0);
  const deviation = Math.max(Math.sqrt(squares / (n - 1)), hypot(scatter, scatter));
  return { mean, open: (studentT(LEVEL, n - 1) * deviation) / Math.sqrt(n) };
}
