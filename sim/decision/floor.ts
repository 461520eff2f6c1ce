/** How far a curve stays above the floors of a target. */
import { interpolateLinear } from '../interpolation.ts';
import { feltAt } from './felt.ts';
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
  /** The same of the means over the speeds that an engine feels as one (felt.ts). */
  feltMarginPercent: number;
  /** The least margin near the floor's speed, and where [rpm]. */
  near: { speed: number; marginPercent: number };
}

/** How far from its speed a floor is looked at too [rpm]: a driver comes no nearer; no source. */
export const FLOOR_REACH = 250;

/** Every floor of the target against a curve and its baseline at the same rising speeds [rpm]. */
export function floorMargins(
  speeds: readonly number[],
  curve: readonly number[],
  baseline: readonly number[],
  target: Target,
): FloorMargin[] {
  return (target.floors ?? []).map((floor) => {
    const at = (speed: number) => {
      const value = interpolateLinear(speeds, curve, speed);
      return standing(floor, value, interpolateLinear(speeds, baseline, speed));
    };
    const [value, own] = [curve, baseline].map((ys) => feltAt(speeds, ys, floor.speed));
    const near = speeds.filter((speed) => Math.abs(speed - floor.speed) <= FLOOR_REACH);
    const margins = [floor.speed, ...near].map((speed) => ({
      speed,
      marginPercent: at(speed).marginPercent,
    }));
    return {
      floor,
      ...at(floor.speed),
      feltMarginPercent: standing(floor, value!, own!).marginPercent,
      near: margins.reduce((a, b) => (b.marginPercent < a.marginPercent ? b : a)),
    };
  });
}

function standing({ least, mostLossPercent }: Floor, value: number, own: number) {
  const lossPercent = 100 * (1 - value / own);
  const margins = [
    ...(least === undefined ? [] : [100 * (value / least - 1)]),
    ...(mostLossPercent === undefined ? [] : [mostLossPercent - lossPercent]),
  ];
  return { value, lossPercent, marginPercent: Math.min(...margins) };
}

/** The least of the margins [%]; infinite where there is no floor. */
export function leastMargin(margins: readonly FloorMargin[]): number {
  return Math.min(...margins.map((margin) => margin.marginPercent));
}
