/** What one curve gives and takes against another, over all speeds. */
import type { PointOutcome } from '../sweep/runner.ts';
import { type FloorMargin, floorMargins, leastMargin } from './floor.ts';
import { areaUnder, inTarget, leastInBands, scores, type Target, targetMean } from './target.ts';

export interface TradeOff {
  /** Weighted mean score in the bands: volumetric efficiency [-] or indicated torque [N m]. */
  bandMean: number;
  /** Gain of that mean over the baseline's [%]. */
  gainPercent: number;
  /** Greatest loss outside the bands [%], 0 where none loses; NaN where a point there failed. */
  worstLossPercent: number;
  /** Where that is [rpm]; undefined where no speed loses. */
  worstLossSpeed?: number;
  /** Least score in the bands, and where [rpm]. */
  least: number;
  leastSpeed: number;
  /** Area under the curve over all speeds [score x rpm]. */
  area: number;
  /** One entry a floor of the target. */
  floors: FloorMargin[];
  /** Whether every floor holds. */
  meetsFloors: boolean;
}

/** One length [m] with what it gives and takes. */
export type WeighedLength = TradeOff & { length: number };

/** Volumetric efficiency of each outcome [-]; NaN where the point failed. */
export function efficiencies(outcomes: readonly PointOutcome[]): number[] {
  return scores(outcomes, 'volumetric-efficiency');
}

/** A curve against the baseline's, both at the same rising speeds [rpm]. */
export function tradeOff(
  speeds: readonly number[],
  curve: readonly number[],
  baseline: readonly number[],
  target: Target,
): TradeOff {
  const mean = targetMean(speeds, curve, target);
  const losses = speeds.map((speed, i) =>
    inTarget(target, speed) ? 0 : 100 * (1 - curve[i]! / baseline[i]!),
  );
  const worst = losses.reduce((at, loss, i) => (loss > losses[at]! ? i : at), 0);
  // A point that failed may have been the worst: then the price is not known.
  const loss = losses.some(Number.isNaN) ? Number.NaN : Math.max(0, losses[worst]!);
  const least = leastInBands(speeds, curve, target);
  const floors = floorMargins(speeds, curve, baseline, target);
  return {
    bandMean: mean,
    gainPercent: 100 * (mean / targetMean(speeds, baseline, target) - 1),
    worstLossPercent: loss,
    ...(loss > 0 && { worstLossSpeed: speeds[worst]! }),
    least: least.value,
    leastSpeed: least.speed,
    area: areaUnder(speeds, curve),
    floors,
    meetsFloors: leastMargin(floors) >= 0,
  };
}
