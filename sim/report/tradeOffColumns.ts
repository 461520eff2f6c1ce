/** What curves give and take, as parts of JSON documents. */
import { bandsOf, type Target } from '../decision/target.ts';
import type { TradeOff } from '../decision/tradeOff.ts';
import { plain } from './document.ts';

type Figure = number | null;

/** Figures are of the target's score: volumetric efficiency [-] or indicated torque [Nm]. */
export interface TradeOffColumns {
  band_mean: Figure;
  gain_in_band_percent: Figure;
  worst_loss_outside_band_percent: Figure;
  at_rpm: Figure;
  least_in_band: Figure;
  least_at_rpm: Figure;
  area_under_curve: Figure;
  meets_floors: boolean;
  /** What is left to each floor [%]; negative where it is missed. */
  floor_margins_percent: Figure[];
}

export function tradeOffColumns(tradeOff: TradeOff): TradeOffColumns {
  return {
    band_mean: plain(tradeOff.bandMean),
    gain_in_band_percent: plain(tradeOff.gainPercent),
    worst_loss_outside_band_percent: plain(tradeOff.worstLossPercent),
    at_rpm: tradeOff.worstLossSpeed ?? null,
    least_in_band: plain(tradeOff.least),
    least_at_rpm: plain(tradeOff.leastSpeed),
    area_under_curve: plain(tradeOff.area),
    meets_floors: tradeOff.meetsFloors,
    floor_margins_percent: tradeOff.floors.map((floor) => plain(floor.marginPercent)),
  };
}

export interface TargetColumns {
  from_rpm: number;
  to_rpm: number;
  weights?: { speed_rpm: number; weight: number }[];
  score: string;
  bands: { from_rpm: Figure; to_rpm: Figure; weight: number }[];
  floors: { speed_rpm: number; least?: number; most_loss_percent?: number }[];
}

export function targetColumns(target: Target): TargetColumns {
  return {
    from_rpm: target.from,
    to_rpm: target.to,
    ...(target.weights && {
      weights: target.weights.map(({ speed, weight }) => ({ speed_rpm: speed, weight })),
    }),
    score: target.score ?? 'volumetric-efficiency',
    bands: bandsOf(target).map(({ from, to, weight }) => ({
      from_rpm: plain(from),
      to_rpm: plain(to),
      weight: weight ?? 1,
    })),
    floors: (target.floors ?? []).map(({ speed, least, mostLossPercent }) => ({
      speed_rpm: speed,
      ...(least !== undefined && { least }),
      ...(mostLossPercent !== undefined && { most_loss_percent: mostLossPercent }),
    })),
  };
}
