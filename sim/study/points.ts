/** What is told of a point, wherever it is told. */
import { type Brake, brakeTorque } from '../decision/brakeTorque.ts';
import type { LengthUnit } from '../decision/lengthUnit.ts';
import type { PointResult } from '../engine/point.ts';
import * as q from '../report/quantities.ts';
import { type Column, column, within, words } from '../report/table.ts';
import type { EngineSpecification } from '../specification.ts';
import { isFailure, type PointOutcome } from '../sweep/runner.ts';
import { spreadOf } from './cylinders.ts';

/** One figure of an outcome; undefined where the point failed. */
export const figureOf =
  (figure: (point: PointResult) => number | undefined) =>
  (outcome: PointOutcome): number | undefined =>
    isFailure(outcome) ? undefined : figure(outcome);

export const efficiencyOf = figureOf((point) => point.volumetricEfficiency);
export const chargeTemperatureOf = figureOf((point) => point.chargeTemperature);

const gas = (quantity: q.Quantity, figure: (point: PointResult) => number) =>
  column(quantity, figureOf(figure));

export const GAS: readonly Column<PointOutcome>[] = [
  gas(q.EFFICIENCY, (point) => point.volumetricEfficiency),
  gas(q.CLOSING_PRESSURE, (point) => point.pressureAtClosing),
  gas(q.CHARGE_TEMPERATURE, (point) => point.chargeTemperature),
  gas(q.RESIDUAL, (point) => point.residualFraction),
  gas(q.BACK_FLOW, (point) => point.backflow),
  gas(q.MOUTH_OUTFLOW, (point) => point.mouthOutflow),
  gas(q.TORQUE, (point) => point.indicatedTorque),
  gas(q.MESH_ERROR, (point) => point.meshError),
];

/** A column of words on what stands out; its head is told on pages only. */
export const REMARK = { name: 'remark', only: 'people' } as const;

export const STATE: readonly Column<PointOutcome>[] = [
  words('settled', '', (one) => !isFailure(one) && one.settled, { only: 'files' }),
  gas(q.CYCLES, (point) => point.cycles),
  words('failure', '', (one) => (isFailure(one) ? one.failure : undefined), {
    list: 'failures',
    only: 'files',
  }),
  words('remark', '', remarkOf, REMARK),
];

/** What tells the point of a row and the engine that it is of, on which friction hangs. */
export interface PointOf<Row> {
  point(row: Row): PointOutcome;
  engine(row: Row): EngineSpecification;
  /** Units that people read; files have both. */
  unit: LengthUnit;
  /** Whether cylinders differ in any row. */
  unlike: boolean;
}

/** What a dyno at the flywheel would read (decision/brakeTorque.ts). */
function brakeColumns<Row>({ point, engine, unit }: PointOf<Row>): Column<Row>[] {
  const of = (figure: (brake: Brake) => number) => (row: Row) => {
    const outcome = point(row);
    return isFailure(outcome) ? undefined : figure(brakeTorque(outcome, engine(row)));
  };
  return (['mm', 'in'] as const).flatMap((one) => {
    const only = one === unit ? {} : ({ only: 'files' } as const);
    return [
      column<Row>(
        q.FLYWHEEL_TORQUE[one],
        of(({ torque }) => torque),
        only,
      ),
      column<Row>(
        q.FLYWHEEL_POWER[one],
        of(({ power }) => power),
        only,
      ),
    ];
  });
}

/** Every figure of a point, the speed first. */
export function pointColumns<Row>(of: PointOf<Row>): Column<Row>[] {
  return [
    column<Row>(q.SPEED, (row) => of.point(row).speed),
    ...within(GAS, of.point),
    ...(of.unlike ? [column<Row>(q.FILLING_SPREAD, (row) => spreadOf(of.point(row)))] : []),
    ...brakeColumns(of),
    ...within(STATE, of.point),
  ];
}

/** What stands out about a point; empty where nothing does. */
export function remarkOf(outcome: PointOutcome): string {
  if (isFailure(outcome)) return 'failed';
  if (!outcome.settled) return 'not settled';
  return outcome.careful ? 'small steps' : '';
}

/** The same of curves side by side, each under its name. */
export function remarksOf(named: Readonly<Record<string, PointOutcome>>): string {
  return Object.entries(named)
    .flatMap(([name, outcome]) => {
      const said = remarkOf(outcome);
      return said === '' ? [] : [`${name} ${said}`];
    })
    .join(', ');
}

/** What the short heads mean. */
export const POINT_NOTES = [
  'VE: volumetric efficiency against ambient air. p, T closing: in the cylinder at intake closing. ' +
    'Back flow: out of the cylinder into the port; blown out: of the mouth. Torque: indicated, before ' +
    'friction. Brake, power: at the flywheel, less friction by a correlation that engines scatter about ' +
    'by a fifth of it; to compare only. Mesh error: what a finer mesh is estimated to change VE by.',
];
