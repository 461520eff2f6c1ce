/**
 * Results as CSV text (RFC 4180): one head line with the unit in every name, then rows; no remarks,
 * so that any spreadsheet or script reads it. A figure that does not exist is an empty cell.
 */
import type { LengthCurve, LengthStudy } from '../decision/lengthStudy.ts';
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

function csv(heads: readonly string[], rows: readonly (readonly Cell[])[]): string {
  return [heads, ...rows].map((row) => `${row.map(cellText).join(',')}\r\n`).join('');
}

function cellText(cell: Cell): string {
  const text = cell === null ? '' : String(cell);
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
