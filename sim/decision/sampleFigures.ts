/**
 * Figures of a sample, each with its own error.
 *
 * Quantiles: straight between order statistics, x_(1 + p (n - 1)) (Hyndman & Fan, Amer. Statistician
 * 50 (1996) 361, definition 7). Their 95 % interval: order statistics at n p +- 1.96 sqrt(n p (1 - p)),
 * whatever the distribution. Share: Wilson's 95 % interval, J. Amer. Stat. Assoc. 22 (1927) 209.
 * Both are those of independent samples; a Latin hypercube does no worse for a mean, and they are
 * stated for it as they are.
 */
import { square } from '../elementary/powers.ts';

/** Standard normal deviate of a two-sided 95 % interval. */
const Z95 = 1.959964;

/** A figure with its 95 % interval. */
export interface Estimate {
  value: number;
  low: number;
  high: number;
}

/** Mean, median, and the points with 5 % below and above. */
export interface Spread {
  mean: Estimate;
  p5: Estimate;
  p50: Estimate;
  p95: Estimate;
}

/** The spread of a sample; NaN where any of it is. */
export function spreadOf(sample: readonly number[]): Spread {
  return {
    mean: meanOf(sample),
    p5: quantile(sample, 0.05),
    p50: quantile(sample, 0.5),
    p95: quantile(sample, 0.95),
  };
}

export function meanOf(sample: readonly number[]): Estimate {
  const value = sample.reduce((sum, x) => sum + x, 0) / sample.length;
  const half = Z95 * Math.sqrt(varianceOf(sample) / sample.length);
  return { value, low: value - half, high: value + half };
}

/** Variance about the mean, of n - 1 degrees of freedom. */
export function varianceOf(sample: readonly number[]): number {
  const mean = sample.reduce((sum, x) => sum + x, 0) / sample.length;
  return sample.reduce((sum, x) => sum + square(x - mean), 0) / (sample.length - 1);
}

export function quantile(sample: readonly number[], p: number): Estimate {
  const n = sample.length;
  if (sample.some(Number.isNaN)) return { value: Number.NaN, low: Number.NaN, high: Number.NaN };
  const sorted = [...sample].sort((a, b) => a - b);
  const reach = Z95 * Math.sqrt(n * p * (1 - p));
  const order = (rank: number) => sorted[Math.min(n, Math.max(1, rank)) - 1]!;
  const place = p * (n - 1);
  const below = Math.floor(place);
  const [low, high] = [sorted[below]!, sorted[Math.min(below + 1, n - 1)]!];
  return {
    value: low + (place - below) * (high - low),
    low: order(Math.floor(n * p - reach)),
    high: order(Math.ceil(n * p + reach) + 1),
  };
}

/** The share `count` of `n` with Wilson's interval. */
export function shareOf(count: number, n: number): Estimate {
  const p = count / n;
  const z2 = Z95 * Z95;
  const middle = (p + z2 / (2 * n)) / (1 + z2 / n);
  const half = (Z95 * Math.sqrt((p * (1 - p)) / n + z2 / (4 * n * n))) / (1 + z2 / n);
  return { value: p, low: Math.max(0, middle - half), high: Math.min(1, middle + half) };
}
