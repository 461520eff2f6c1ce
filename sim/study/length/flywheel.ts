/** What a length gives at the flywheel: torque less friction in the bands, and the greatest power. */
import { brakeTorque } from '../../decision/brakeTorque.ts';
import { smoothAt } from '../../decision/smooth.ts';
import { targetMean } from '../../decision/target.ts';
import { isFailure } from '../../sweep/runner.ts';
import { allPoints, type LengthCurve } from '../../sweep/sweep.ts';
import type { LengthQuestion } from './compute.ts';

export interface Flywheel {
  /** Mean brake torque over the bands, weighted as the target says [N m]; NaN where a point failed. */
  meanTorque: number;
  /** Greatest brake power [W], and at which speed [rpm]. */
  power: number;
  powerSpeed: number;
}

/** @param at speeds at which the curve is known [rpm], rising */
export function flywheel(
  { engine, target }: Pick<LengthQuestion, 'engine' | 'target'>,
  curve: LengthCurve,
  at: readonly number[],
): Flywheel {
  const points = allPoints(curve);
  const speeds = points.map(({ speed }) => speed);
  const brakes = points.map((point) => (isFailure(point) ? undefined : brakeTorque(point, engine)));
  const torque = smoothAt(
    speeds,
    brakes.map((brake) => brake?.torque ?? Number.NaN),
    at,
  );
  const power = smoothAt(
    speeds,
    brakes.map((brake) => brake?.power ?? Number.NaN),
    at,
  );
  const most = power.reduce(
    (best, p, i) => (p > power[best]! || Number.isNaN(power[best]!) ? i : best),
    0,
  );
  return { meanTorque: targetMean(at, torque, target), power: power[most]!, powerSpeed: at[most]! };
}
