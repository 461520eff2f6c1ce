/**
 * What is asked of a curve: bands of speed with weights, floors at named speeds, and the figure that
 * counts.
 *
 *   mean = sum_k W_k mean_k / sum_k W_k      W_k  weight of band k [-], mean_k  bandMean of it
 */
import { interpolateLinear } from '../interpolation.ts';
import { isFailure, type PointOutcome } from '../sweep/runner.ts';
import { type Band, bandMean, inBand } from './band.ts';

/** The figure of a point that counts. */
export type Score = 'volumetric-efficiency' | 'indicated-torque';

/** One of several bands. */
export interface WeightedBand extends Band {
  /** How much its mean counts beside the other bands [-]; 1 where absent. */
  weight?: number;
}

/** What must hold at one speed; a floor may state either or both. */
export interface Floor {
  /** Speed [rpm]; the curve runs straight between the speeds computed. */
  speed: number;
  /** Least score: volumetric efficiency [-] or indicated torque [N m]. */
  least?: number;
  /** Greatest loss against the baseline [%]. */
  mostLossPercent?: number;
}

/** Bands, floors and score. A single band alone is a target too. */
export interface Target extends Band {
  /** The bands where there are several; `from` and `to` are then the outermost ends. */
  bands?: readonly WeightedBand[];
  floors?: readonly Floor[];
  /** Volumetric efficiency where absent. */
  score?: Score;
}

/** The bands of a target; at least one. */
export function bandsOf(target: Target): readonly WeightedBand[] {
  return target.bands && target.bands.length > 0 ? target.bands : [target];
}

/** Whether a speed [rpm] lies in any of the bands. */
export function inTarget(target: Target, speed: number): boolean {
  return bandsOf(target).some((band) => inBand(band, speed));
}

/** The target with its bands and their weights moved up by some speed [rpm]. */
export function movedTarget(target: Target, by: number): Target {
  const moved = <T extends Band>(band: T): T => ({
    ...band,
    from: band.from + by,
    to: band.to + by,
    ...(band.weights && {
      weights: band.weights.map(({ speed, weight }) => ({ speed: speed + by, weight })),
    }),
  });
  return { ...moved(target), ...(target.bands && { bands: target.bands.map(moved) }) };
}

/** The score of each outcome; NaN where the point failed. */
export function scores(outcomes: readonly PointOutcome[], score?: Score): number[] {
  return outcomes.map((outcome) => {
    if (isFailure(outcome)) return Number.NaN;
    return score === 'indicated-torque' ? outcome.indicatedTorque : outcome.volumetricEfficiency;
  });
}

/** Weighted mean over all bands of a curve at rising speeds [rpm] that span them. */
export function targetMean(
  speeds: readonly number[],
  values: readonly number[],
  target: Target,
): number {
  let sum = 0;
  let weights = 0;
  for (const band of bandsOf(target)) {
    const weight = band.weight ?? 1;
    sum += weight * bandMean(speeds, values, band);
    weights += weight;
  }
  return sum / weights;
}

/** Least value in the bands and the speed [rpm] it stands at; the curve is straight between points. */
export function leastInBands(
  speeds: readonly number[],
  values: readonly number[],
  target: Target,
): { value: number; speed: number } {
  const ends = bandsOf(target).flatMap(({ from, to }) => [from, to]);
  const knots = [...ends, ...speeds.filter((speed) => inTarget(target, speed))];
  const points = knots.map((speed) => ({ speed, value: interpolateLinear(speeds, values, speed) }));
  return points.reduce((least, point) =>
    point.value < least.value || Number.isNaN(point.value) ? point : least,
  );
}

/** Area under a curve over all its speeds [score x rpm]; straight between points, so trapezia. */
export function areaUnder(speeds: readonly number[], values: readonly number[]): number {
  let area = 0;
  for (let i = 0; i + 1 < speeds.length; i++) {
    area += 0.5 * (values[i]! + values[i + 1]!) * (speeds[i + 1]! - speeds[i]!);
  }
  return area;
}
