/** The sweep of lengths and its decision as a JSON document. */
import type { LengthCurve, LengthStudy, Reason } from '../decision/lengthStudy.ts';
import type { MixedLengths } from '../decision/mixedLengths.ts';
import type { ShelfAnswer } from '../decision/shelf.ts';
import { targetMean } from '../decision/target.ts';
import { efficiencies } from '../decision/tradeOff.ts';
import {
  type AuditSummary,
  auditSummary,
  type CurveColumns,
  curveColumns,
} from './curveDocument.ts';
import { type DocumentHead, documentHead, plain, type ScenarioStamp } from './document.ts';
import {
  type TargetColumns,
  type TradeOffColumns,
  targetColumns,
  tradeOffColumns,
} from './tradeOffColumns.ts';
import { type Doubt, type UncertaintyColumns, uncertaintyColumns } from './uncertaintyDocument.ts';

export interface SweepDocument extends DocumentHead {
  /** Rim plane of the mouth to face of the throttle body, bellmouth included. */
  lengths_mm: (number | null)[];
  speeds_rpm: number[];
  target: TargetColumns;
  /** Tables by [length][speed]. */
  volumetric_efficiency: (number | null)[][];
  pressure_at_valve_closing_kPa: (number | null)[][];
  indicated_torque_Nm: (number | null)[][];
  settled: boolean[][];
  failures: (string | null)[][];
  recommended: CurveColumns & {
    band_mean_ve: number | null;
    gain_in_band_percent: number | null;
    worst_loss_outside_band_percent: number | null;
    /** Where the worst loss is; null where no speed outside the band loses. */
    at_rpm: number | null;
    reason: Reason;
  };
  baseline: CurveColumns;
  /** What each length computed gives and takes, shortest first. */
  trade_offs: (TradeOffColumns & { length_mm: number | null })[];
  /** Lengths that no other beats in gain without a higher price, dearest first. */
  pareto_lengths_mm: (number | null)[];
  shelf?: ShelfColumns | null;
  mixed?: MixedColumns;
  /** The same change of length breathing ambient air; given where a pressurised box feeds. */
  free_feed?: TradeOffColumns;
  uncertainty?: UncertaintyColumns;
  audit: AuditSummary;
}

/** What to buy; null in the document where nothing on the shelf can be fitted. */
export interface ShelfColumns {
  buy_mm: number | null;
  /** Null where it is fitted as sold. */
  cut_to_mm: number | null;
  loss_percent: number | null;
  loss_of_a_bad_cut_percent: number | null;
  good_enough: boolean;
}

/** Two lengths spread over the cylinders: the pair that is flattest. */
export interface MixedColumns extends TradeOffColumns {
  short_mm: number | null;
  short_cylinders: number;
  long_mm: number | null;
  long_cylinders: number;
  /** Mean score of all cylinders at each speed. */
  score: (number | null)[];
  cylinders_unlike_percent: number | null;
}

export function sweepDocument(
  study: LengthStudy,
  scenario: ScenarioStamp,
  doubt?: Doubt,
): SweepDocument {
  const { tried, baseline, recommended, decision, target, weighed, pareto } = study;
  const columns = tried.map(curveColumns);
  const table = <K extends keyof CurveColumns>(key: K) => columns.map((curve) => curve[key]);
  const curves: LengthCurve[] = [...tried, baseline, recommended];
  return {
    ...documentHead('sweep', 1, scenario),
    lengths_mm: table('length_mm'),
    speeds_rpm: study.speeds,
    target: targetColumns(target),
    volumetric_efficiency: table('volumetric_efficiency'),
    pressure_at_valve_closing_kPa: table('pressure_at_valve_closing_kPa'),
    indicated_torque_Nm: table('indicated_torque_Nm'),
    settled: table('settled'),
    failures: table('failures'),
    recommended: {
      ...curveColumns(recommended),
      band_mean_ve: plain(targetMean(study.speeds, efficiencies(recommended.outcomes), target)),
      gain_in_band_percent: plain(decision.gainPercent),
      worst_loss_outside_band_percent: plain(decision.worstLossPercent),
      at_rpm: decision.worstLossSpeed ?? null,
      reason: recommended.reason,
    },
    baseline: curveColumns(baseline),
    trade_offs: weighed.map((one) => ({
      length_mm: plain(one.length * 1e3),
      ...tradeOffColumns(one),
    })),
    pareto_lengths_mm: pareto.map(({ length }) => plain(length * 1e3)),
    ...(study.fit && study.fit.shelf.length > 0 && { shelf: shelfColumns(study.shelf) }),
    ...(study.mixed && { mixed: mixedColumns(study.mixed) }),
    ...(study.free && { free_feed: tradeOffColumns(study.free) }),
    ...(doubt && { uncertainty: uncertaintyColumns(doubt) }),
    audit: auditSummary(curves),
  };
}

function shelfColumns(shelf: ShelfAnswer | undefined): ShelfColumns | null {
  if (!shelf) return null;
  return {
    buy_mm: plain(shelf.buy * 1e3),
    cut_to_mm: shelf.cutTo === undefined ? null : plain(shelf.cutTo * 1e3),
    loss_percent: plain(shelf.lossPercent),
    loss_of_a_bad_cut_percent: plain(shelf.missPercent),
    good_enough: shelf.good,
  };
}

function mixedColumns(mixed: MixedLengths): MixedColumns {
  return {
    short_mm: plain(mixed.short * 1e3),
    short_cylinders: mixed.shortCount,
    long_mm: plain(mixed.long * 1e3),
    long_cylinders: mixed.longCount,
    ...tradeOffColumns(mixed),
    score: mixed.curve.map(plain),
    cylinders_unlike_percent: plain(mixed.unlikePercent),
  };
}
