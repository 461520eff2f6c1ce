/** How far a curve stays above the floors of a target. */
import { interpolateLinear } from '../interpolation.ts';
import type { Floor, Target } from './target.ts';

/** One floor and how a curve stands to it. */
export interface FloorMargin {
  floor: Floor;
  /** Score there. */
  value: number;
  /** Loss against the baseline there [%]; negative where it gains. */
  lossPercent: number;
  /** What is left to the floor, the smaller of both kinds [% of the score]; negative: missed. */
  marginPercent: number;
}

/** Every floor of the target against a curve and its baseline at the same rising speeds [rpm]. */
export function floorMargins(
  speeds: readonly number[],
  curve: readonly number[],
  baseline: readonly number[],
  target: Target,
): FloorMargin[] {
  return (target.floors ?? []).map((floor) => {
    const value = interpolateLinear(speeds, curve, floor.speed);
    const lossPercent = 100 * (1 - value / interpolateLinear(speeds, baseline, floor.speed));
    const margins = [
      ...(floor.least === undefined ? [] : [100 * (value / floor.least - 1)]),
      ...(floor.mostLossPercent === undefined ? [] : [floor.mostLossPercent - lossPercent]),
    ];
    return { floor, value, lossPercent, marginPercent: Math.min(...margins) };
  });
}

/** The least of the margins [%]; infinite where there is no floor. */
export function leastMargin(margins: readonly FloorMargin[]): number {
  return Math.min(...margins.map((margin) => margin.marginPercent));
}
