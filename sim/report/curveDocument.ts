/** One length at all speeds as a JSON document. */
import type { LengthCurve } from '../decision/lengthStudy.ts';
import type { PointResult } from '../engine/point.ts';
import { isFailure, type PointOutcome } from '../sweep/runner.ts';
import { type DocumentHead, documentHead, plain, type ScenarioStamp } from './document.ts';

/** The columns of one curve: one entry a speed, null where the point failed. */
export interface CurveColumns {
  length_mm: number | null;
  volumetric_efficiency: (number | null)[];
  pressure_at_valve_closing_kPa: (number | null)[];
  charge_temperature_K: (number | null)[];
  residual_fraction: (number | null)[];
  backflow_fraction: (number | null)[];
  mouth_outflow_fraction: (number | null)[];
  indicated_torque_Nm: (number | null)[];
  /** Estimated error of volumetric efficiency from the mesh. */
  mesh_error_percent: (number | null)[];
  settled: boolean[];
  cycles: (number | null)[];
  failures: (string | null)[];
}

export interface AuditSummary {
  mass_error_max: number | null;
  energy_error_max: number | null;
}

export interface CurveDocument extends DocumentHead, CurveColumns {
  speeds_rpm: number[];
  audit: AuditSummary;
}

export function curveDocument(
  curve: LengthCurve,
  speeds: readonly number[],
  scenario: ScenarioStamp,
): CurveDocument {
  return {
    ...documentHead('curve', 1, scenario),
    speeds_rpm: [...speeds],
    ...curveColumns(curve),
    audit: auditSummary([curve]),
  };
}

export function curveColumns({ length, outcomes }: LengthCurve): CurveColumns {
  return {
    length_mm: plain(length * 1e3),
    volumetric_efficiency: column(outcomes, (point) => point.volumetricEfficiency),
    pressure_at_valve_closing_kPa: column(outcomes, (point) => point.pressureAtClosing / 1e3),
    charge_temperature_K: column(outcomes, (point) => point.chargeTemperature),
    residual_fraction: column(outcomes, (point) => point.residualFraction),
    backflow_fraction: column(outcomes, (point) => point.backflow),
    mouth_outflow_fraction: column(outcomes, (point) => point.mouthOutflow),
    indicated_torque_Nm: column(outcomes, (point) => point.indicatedTorque),
    mesh_error_percent: column(outcomes, (point) => 100 * point.meshError),
    settled: outcomes.map((outcome) => !isFailure(outcome) && outcome.settled),
    cycles: column(outcomes, (point) => point.cycles),
    failures: outcomes.map((outcome) => (isFailure(outcome) ? outcome.failure : null)),
  };
}

/** One figure of each outcome; null where the point failed. */
export function column(
  outcomes: readonly PointOutcome[],
  figure: (point: PointResult) => number,
): (number | null)[] {
  return outcomes.map((outcome) => (isFailure(outcome) ? null : plain(figure(outcome))));
}

/** The worst audit of all points. */
export function auditSummary(curves: readonly LengthCurve[]): AuditSummary {
  const points = curves
    .flatMap((curve) => curve.outcomes)
    .filter((outcome): outcome is PointResult => !isFailure(outcome));
  const worst = (figure: (point: PointResult) => number) =>
    points.length === 0 ? null : plain(Math.max(...points.map(figure)));
  return {
    mass_error_max: worst((point) => point.audit.massError),
    energy_error_max: worst((point) => point.audit.energyError),
  };
}
