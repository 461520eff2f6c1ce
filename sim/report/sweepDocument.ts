/** The sweep of lengths and its decision as a JSON document. */
import type { LengthCurve, LengthStudy, Reason } from '../decision/lengthStudy.ts';
import {
  type AuditSummary,
  auditSummary,
  type CurveColumns,
  curveColumns,
} from './curveDocument.ts';
import { type DocumentHead, documentHead, plain, type ScenarioStamp } from './document.ts';

export interface SweepDocument extends DocumentHead {
  /** Rim plane of the mouth to face of the throttle body, bellmouth included. */
  lengths_mm: (number | null)[];
  speeds_rpm: number[];
  target: {
    from_rpm: number;
    to_rpm: number;
    weights?: readonly { speed_rpm: number; weight: number }[];
  };
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
  audit: AuditSummary;
}

export function sweepDocument(study: LengthStudy, scenario: ScenarioStamp): SweepDocument {
  const { tried, baseline, recommended, decision, target } = study;
  const columns = tried.map(curveColumns);
  const table = <K extends keyof CurveColumns>(key: K) => columns.map((curve) => curve[key]);
  const curves: LengthCurve[] = [...tried, baseline, recommended];
  return {
    ...documentHead('sweep', 1, scenario),
    lengths_mm: table('length_mm'),
    speeds_rpm: study.speeds,
    target: {
      from_rpm: target.from,
      to_rpm: target.to,
      ...(target.weights && {
        weights: target.weights.map(({ speed, weight }) => ({ speed_rpm: speed, weight })),
      }),
    },
    volumetric_efficiency: table('volumetric_efficiency'),
    pressure_at_valve_closing_kPa: table('pressure_at_valve_closing_kPa'),
    indicated_torque_Nm: table('indicated_torque_Nm'),
    settled: table('settled'),
    failures: table('failures'),
    recommended: {
      ...curveColumns(recommended),
      band_mean_ve: plain(decision.bandMean),
      gain_in_band_percent: plain(decision.gainPercent),
      worst_loss_outside_band_percent: plain(decision.worstLossPercent),
      at_rpm: decision.worstLossSpeed ?? null,
      reason: recommended.reason,
    },
    baseline: curveColumns(baseline),
    audit: auditSummary(curves),
  };
}
