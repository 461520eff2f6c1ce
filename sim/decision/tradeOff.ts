/** What one curve gives and takes against another, over all speeds. */
import type { PointOutcome } from '../sweep/runner.ts';
import type { Reach } from '../sweep/sweep.ts';
import { feltAt } from './felt.ts';
import { type FloorMargin, floorMargins, leastMargin } from './floor.ts';
import { type Stretch, stretchesOf } from './stretches.ts';
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
  /** The same of means over the speeds that an engine feels as one (felt.ts) [%]. */
  feltLossPercent: number;
  /** Greatest loss in the bands [%], and where [rpm]; as outside them. */
  bandLossPercent: number;
  bandLossSpeed?: number;
  feltBandLossPercent: number;
  /** Where the curve wins and where it loses by as much as can be felt, rising. */
  stretches: Stretch[];
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
export type WeighedLength = TradeOff & {
  length: number;
  /** Where it is known between the speeds of the sweep; absent where none is. */
  known?: Reach | 'sweep';
};

/** Change below which nobody feels a difference [%]; common practice, no source. */
const FELT_CHANGE = 0.5;

/** Volumetric efficiency of each outcome [-]; NaN where the point failed. */
export function efficiencies(outcomes: readonly PointOutcome[]): number[] {
  return scores(outcomes, 'volumetric-efficiency');
}

/** How much a figure is over another [%]. */
export const percentOver = (figure: number, other: number) => 100 * (figure / other - 1);

/** A curve against the baseline's, both at the same rising speeds [rpm]. */
export function tradeOff(
  speeds: readonly number[],
  curve: readonly number[],
  baseline: readonly number[],
  target: Target,
): TradeOff {
  const mean = targetMean(speeds, curve, target);
  const inside = speeds.map((speed) => inTarget(target, speed));
  const outside = inside.map((is) => !is);
  const losses = speeds.map((_, i) => 100 * (1 - curve[i]! / baseline[i]!));
  const felt = [curve, baseline].map((ys) => speeds.map((speed) => feltAt(speeds, ys, speed)));
  const feltLosses = speeds.map((_, i) => 100 * (1 - felt[0]![i]! / felt[1]![i]!));
  const [out, band] = [worstOf(speeds, losses, outside), worstOf(speeds, losses, inside)];
  const least = leastInBands(speeds, curve, target);
  const floors = floorMargins(speeds, curve, baseline, target);
  return {
    bandMean: mean,
    gainPercent: percentOver(mean, targetMean(speeds, baseline, target)),
    worstLossPercent: out.loss,
    ...(out.loss > 0 && { worstLossSpeed: out.speed }),
    feltLossPercent: worstOf(speeds, feltLosses, outside).loss,
    bandLossPercent: band.loss,
    ...(band.loss > 0 && { bandLossSpeed: band.speed }),
    feltBandLossPercent: worstOf(speeds, feltLosses, inside).loss,
    stretches: stretchesOf(
      speeds,
      losses.map((loss) => -loss),
      FELT_CHANGE,
    ),
    least: least.value,
    leastSpeed: least.speed,
    area: areaUnder(speeds, curve),
    floors,
    meetsFloors: leastMargin(floors) >= 0,
  };
}

/** The greatest loss among the speeds that count; NaN where a point there failed, 0 where none loses. */
function worstOf(speeds: readonly number[], losses: readonly number[], counts: readonly boolean[]) {
  const open = losses.map((loss, i) => (counts[i] ? loss : 0));
  const worst = open.reduce((at, loss, i) => (loss > open[at]! ? i : at), 0);
  // A point that failed may have been the worst: then the price is not known.
  const loss = open.some(Number.isNaN) ? Number.NaN : Math.max(0, open[worst]!);
  return { loss, speed: speeds[worst]! };
}
