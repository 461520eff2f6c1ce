/** What is told of a point, wherever it is told. */
import type { PointResult } from '../engine/point.ts';
import * as q from '../report/quantities.ts';
import { type Column, column, words } from '../report/table.ts';
import { isFailure, type PointOutcome } from '../sweep/runner.ts';

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

/** Every figure of a point, the speed first. */
export const POINT: readonly Column<PointOutcome>[] = [
  column(q.SPEED, ({ speed }) => speed),
  ...GAS,
  ...STATE,
];

/** What stands out about a point; empty where nothing does. */
export function remarkOf(outcome: PointOutcome): string {
  if (isFailure(outcome)) return 'failed';
  return outcome.settled ? '' : 'not settled';
}

/** What the short heads mean. */
export const POINT_NOTES = [
  'VE: volumetric efficiency against ambient air. p, T closing: in the cylinder at intake closing. ' +
    'Back flow: out of the cylinder into the port; blown out: of the mouth. Torque: indicated, before ' +
    'friction; to compare only. Mesh error: what a finer mesh is estimated to change VE by.',
];
