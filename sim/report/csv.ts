/**
 * Results as CSV text (RFC 4180): one head line with the unit in every name, then rows; no remarks,
 * so that any spreadsheet or script reads it. A figure that does not exist is an empty cell.
 */
import type { LengthCurve, LengthStudy } from '../decision/lengthStudy.ts';
import type { UncertaintyStudy } from '../decision/uncertainty.ts';
import type { VariantStudy } from '../decision/variantStudy.ts';
import type { Trace } from '../engine/trace.ts';
import { type CurveColumns, curveColumns } from './curveDocument.ts';
import { plain } from './document.ts';
import { studyCurves } from './lengthTable.ts';

type Cell = string | number | boolean | null;

/** Every point of a study: one row a length and speed. */
export function sweepCsv(study: LengthStudy): string {
  const rows = studyCurves(study).flatMap((curve) => {
    const role = roleOf(curve, study);
    return curveRows(curve, study.speeds).map((row) => [...row, role]);
  });
  return csv([...CURVE_HEADS, 'role'], rows);
}

/** One length: one row a speed. */
export function curveCsv(curve: LengthCurve, speeds: readonly number[]): string {
  return csv(CURVE_HEADS, curveRows(curve, speeds));
}

/** Every point of a sweep of other keys: one row a variant and speed, one column a key. */
export function variantCsv(study: VariantStudy): string {
  const rows = study.weighed.flatMap(({ texts, outcomes }) =>
    curveRows({ length: Number.NaN, outcomes }, study.speeds).map((row) => [
      ...texts,
      ...row.slice(1),
    ]),
  );
  return csv([...study.keys.map(({ path }) => path), ...CURVE_HEADS.slice(1)], rows);
}

/** The bands of both curves: one row a length and speed. */
export function uncertaintyCsv({ recommended, baseline, speeds }: UncertaintyStudy): string {
  const rows = [recommended, baseline].flatMap(({ length, curve }) =>
    curve.map(({ mean, p5, p50, p95 }, j) => [
      plain(length * 1e3),
      speeds[j]!,
      ...[mean, p5, p50, p95].map((figure) => plain(figure.value)),
    ]),
  );
  return csv(['length_mm', 'speed_rpm', 'mean', 'p5', 'p50', 'p95'], rows);
}

/** One cycle: one row a crank angle, 0 at firing. */
export function traceCsv(trace: Trace): string {
  const { stations } = trace;
  const heads = [
    'crank_angle_deg',
    'cylinder_pressure_kPa',
    'cylinder_temperature_K',
    'intake_lift_mm',
    'exhaust_lift_mm',
    ...stations.flatMap(({ name }) => [
      `${name}_pressure_kPa`,
      `${name}_velocity_m_per_s`,
      `${name}_mass_flow_g_per_s`,
      `${name}_temperature_K`,
    ]),
  ];
  const rows = trace.crankAngle.map((angle, i) => [
    plain(angle),
    plain(trace.cylinderPressure[i]! / 1e3),
    plain(trace.cylinderTemperature[i]!),
    plain(trace.intakeLift[i]! * 1e3),
    plain(trace.exhaustLift[i]! * 1e3),
    ...stations.flatMap((station) => [
      plain(station.pressure[i]! / 1e3),
      plain(station.velocity[i]!),
      plain(station.massFlow[i]! * 1e3),
      plain(station.temperature[i]!),
    ]),
  ]);
  return csv(heads, rows);
}

const CURVE_KEYS = [
  'volumetric_efficiency',
  'pressure_at_valve_closing_kPa',
  'charge_temperature_K',
  'residual_fraction',
  'backflow_fraction',
  'mouth_outflow_fraction',
  'indicated_torque_Nm',
  'settled',
  'cycles',
  'failures',
] as const satisfies readonly (keyof CurveColumns)[];

const CURVE_HEADS = ['length_mm', 'speed_rpm', ...CURVE_KEYS.slice(0, -1), 'failure'];

function curveRows(curve: LengthCurve, speeds: readonly number[]): Cell[][] {
  const columns = curveColumns(curve);
  return speeds.map((speed, i) => [
    columns.length_mm,
    speed,
    ...CURVE_KEYS.map((key) => columns[key][i]!),
  ]);
}

function roleOf({ length }: LengthCurve, { recommended, baseline }: LengthStudy): string {
  if (length === recommended.length) {
    return length === baseline.length ? 'recommended and baseline' : 'recommended';
  }
  return length === baseline.length ? 'baseline' : 'tried';
}

export function csv(heads: readonly string[], rows: readonly (readonly Cell[])[]): string {
  return [heads, ...rows].map((row) => `${row.map(cellText).join(',')}\r\n`).join('');
}

function cellText(cell: Cell): string {
  const text = cell === null ? '' : String(cell);
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
