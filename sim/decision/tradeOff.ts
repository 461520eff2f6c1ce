/** What one length gives and takes against another, over all speeds. */
import { isFailure, type PointOutcome } from '../sweep/runner.ts';
import { type Band, bandMean, inBand } from './band.ts';

export interface TradeOff {
  /** Weighted mean volumetric efficiency in the band [-]. */
  bandMean: number;
  /** Gain of that mean over the baseline's [%]. */
  gainPercent: number;
  /** Greatest loss outside the band [%], 0 where no speed outside it loses. */
  worstLossPercent: number;
  /** Where that is [rpm]; undefined where no speed loses. */
  worstLossSpeed?: number;
}

/** Volumetric efficiency of each outcome [-]; NaN where the point failed. */
export function efficiencies(outcomes: readonly PointOutcome[]): number[] {
  return outcomes.map((outcome) =>
    isFailure(outcome) ? Number.NaN : outcome.volumetricEfficiency,
  );
}

/** A curve against the baseline's, both at the same rising speeds [rpm]. */
export function tradeOff(
  speeds: readonly number[],
  curve: readonly number[],
  baseline: readonly number[],
  band: Band,
): TradeOff {
  const mean = bandMean(speeds, curve, band);
  const losses = speeds.map((speed, i) =>
    inBand(band, speed) ? 0 : 100 * (1 - curve[i]! / baseline[i]!),
  );
  const worst = losses.reduce((at, loss, i) => (loss > losses[at]! ? i : at), 0);
  const loss = Math.max(0, losses[worst]!);
  return {
    bandMean: mean,
    gainPercent: 100 * (mean / bandMean(speeds, baseline, band) - 1),
    worstLossPercent: loss,
    ...(loss > 0 && { worstLossSpeed: speeds[worst]! }),
  };
}
