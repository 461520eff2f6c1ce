/**
 * What a curve is worth in a band of speed: the weighted mean
 *
 *   mean = int w(n) y(n) dn / int w(n) dn,   n from `from` to `to` [rpm],
 *
 * with y and w straight between their points. Simpson's rule between all of them is exact.
 */
import { interpolateLinear } from '../interpolation.ts';

/** A band of speed, with a weight against speed where speeds do not count alike. */
export interface Band {
  /** Ends [rpm]. */
  from: number;
  to: number;
  weights?: readonly { speed: number; weight: number }[];
}

/** Weighted mean over the band of a curve given at rising speeds [rpm] that span the band. */
export function bandMean(speeds: readonly number[], values: readonly number[], band: Band): number {
  const weightAt = weightFunction(band);
  const valueAt = (n: number) => interpolateLinear(speeds, values, n);
  const knots = bandKnots(speeds, band);
  let weighted = 0;
  let weights = 0;
  for (let i = 0; i + 1 < knots.length; i++) {
    const ends = [knots[i]!, 0.5 * (knots[i]! + knots[i + 1]!), knots[i + 1]!];
    const width = knots[i + 1]! - knots[i]!;
    const [w0, w1, w2] = ends.map(weightAt) as [number, number, number];
    const [y0, y1, y2] = ends.map(valueAt) as [number, number, number];
    weighted += (width / 6) * (w0 * y0 + 4 * w1 * y1 + w2 * y2);
    weights += (width / 6) * (w0 + 4 * w1 + w2);
  }
  return weighted / weights;
}

/** Whether a speed [rpm] lies in the band. */
export function inBand(band: Band, speed: number): boolean {
  return speed >= band.from && speed <= band.to;
}

function weightFunction(band: Band): (speed: number) => number {
  const rows = band.weights;
  if (!rows || rows.length === 0) return () => 1;
  const speeds = rows.map((row) => row.speed);
  const weights = rows.map((row) => row.weight);
  return (speed) => interpolateLinear(speeds, weights, speed);
}

function bandKnots(speeds: readonly number[], band: Band): number[] {
  const inner = [...speeds, ...(band.weights ?? []).map((row) => row.speed)].filter(
    (speed) => speed > band.from && speed < band.to,
  );
  return [...new Set([band.from, ...inner, band.to])].sort((a, b) => a - b);
}
