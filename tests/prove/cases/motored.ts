/** A cylinder turned with its valves shut. */
import { cylinderVolume } from '../../../sim/cylinder/crank.ts';
import { Cylinder } from '../../../sim/cylinder/cylinder.ts';
import type { Gas } from '../../../sim/gas/gas.ts';

export const MOTORED_CRANK = {
  bore: 0.086,
  stroke: 0.086,
  rodLength: 0.143,
  compressionRatio: 12.4,
};
const SPEED = 6000;

export interface Seen {
  angle: number;
  pressure: number;
  temperature: number;
}

/** Turns a shut adiabatic cylinder from bottom to top and back in steps [deg] of the engine's usual size. */
export function motor(gas: Gas, stepDegrees: number): Seen[] {
  const cylinder = new Cylinder(
    { name: 'cylinder', crank: MOTORED_CRANK, speed: SPEED, shut: { from: 540, to: 180 } },
    540,
  );
  cylinder.fill(gas, { pressure: 1e5, temperature: 330, burned: 0.05 });
  const seen: Seen[] = [];
  const dt = stepDegrees / (6 * SPEED);
  for (let turned = 0; turned < 360 - 1e-9; turned += stepDegrees) {
    const middle = (540 + turned + 0.5 * stepDegrees) % 720;
    const moment = { crankAngle: middle, crankStep: stepDegrees, dt };
    cylinder.predict(gas, moment);
    cylinder.advance(moment);
    const end = (540 + turned + stepDegrees) % 720;
    const { mass, energy } = cylinder.contents;
    const temperature = gas.temperature(energy / mass, 0.05, 0, cylinder.temperature);
    const pressure =
      (mass * gas.gasConstant(0.05, 0) * temperature) / cylinderVolume(MOTORED_CRANK, end);
    seen.push({ angle: end, pressure, temperature });
  }
  return seen;
}
