/** Where an engine idles in a table of load: torque less friction is nothing at the lowest speed. */
import { sweptVolume } from '../../cylinder/crank.ts';
import { brakeTorque } from '../../decision/brakeTorque.ts';
import { isFailure } from '../../sweep/runner.ts';
import { airMass } from './cell.ts';
import type { LoadStudy } from './compute.ts';

export interface Idle {
  /** Plate [deg]. */
  angle: number;
  /** Air of the engine per swept volume [kg/s m^3], which is g/s a litre. */
  flow: number;
}

/** Straight between the rows about it; undefined where no two rows have it between them. */
export function idleOf({ question, angles, speeds, outcomes }: LoadStudy): Idle | undefined {
  const { engine } = question.scenario;
  const rows = outcomes.flatMap(([outcome], i) => {
    if (isFailure(outcome!)) return [];
    const air = airMass(engine, outcome!)!;
    return [{ angle: angles[i]!, air, torque: brakeTorque(outcome!, engine).torque }];
  });
  const at = rows.findIndex(({ torque }, i) => torque >= 0 && i > 0 && rows[i - 1]!.torque < 0);
  if (at < 0) return undefined;
  const [below, above] = [rows[at - 1]!, rows[at]!];
  const part = -below.torque / (above.torque - below.torque);
  const air = below.air + part * (above.air - below.air);
  return {
    angle: below.angle + part * (above.angle - below.angle),
    flow: (air * speeds[0]!) / (120 * sweptVolume(engine.cylinder)),
  };
}
