/** A cylinder turned with its valves shut. */
import type { RestState } from '../../../sim/boundary/reservoir.ts';
import { cylinderVolume, meanPistonSpeed } from '../../../sim/cylinder/crank.ts';
import { Cylinder } from '../../../sim/cylinder/cylinder.ts';
import { Network } from '../../../sim/engine/network.ts';
import type { Gas } from '../../../sim/gas/gas.ts';
import { perfectAir } from '../../gases.ts';

export const MOTORED_CRANK = {
  bore: 0.086,
  stroke: 0.086,
  rodLength: 0.143,
  compressionRatio: 12.4,
};
const SPEED = 6000;
/** A crank angle at which valves are open [deg]. */
const EXCHANGE = 400;

export interface Seen {
  angle: number;
  pressure: number;
  temperature: number;
}

/** Turns a shut adiabatic cylinder from bottom to top and back in steps [deg] of the engine's usual size. */
export function motor(gas: Gas, stepDegrees: number): Seen[] {
  const cylinder = new Cylinder(
    { name: 'cylinder', crank: MOTORED_CRANK, shut: { from: 540, to: 180 } },
    540,
  );
  cylinder.fill(gas, { pressure: 1e5, temperature: 330, burned: 0.05 });
  cylinder.setSpeed(SPEED);
  const net = new Network({ gas, ducts: [], nodes: [], volumes: [cylinder] });
  const seen: Seen[] = [];
  const dt = stepDegrees / (6 * SPEED);
  for (let turned = 0; turned < 360 - 1e-9; turned += stepDegrees) {
    const middle = (540 + turned + 0.5 * stepDegrees) % 720;
    net.step({ crankAngle: middle, crankStep: stepDegrees, dt });
    const end = (540 + turned + stepDegrees) % 720;
    const { mass, energy } = cylinder.contents;
    const temperature = gas.temperature(energy / mass, 0.05, 0, cylinder.temperature);
    const pressure =
      (mass * gas.gasConstant(0.05, 0) * temperature) / cylinderVolume(MOTORED_CRANK, end);
    seen.push({ angle: end, pressure, temperature });
  }
  return seen;
}

/** Coefficient of heat to the wall [W/m2 K] in gas exchange, from the heat of one short step. */
export function wallCoefficient(bore: number, state: RestState, gasSpeed: number): number {
  const crank = { ...MOTORED_CRANK, bore };
  const wallTemperature = 0.5 * state.temperature;
  const shut = { from: 540, to: 180 };
  const cylinder = new Cylinder({ name: 'cylinder', crank, wallTemperature, shut }, EXCHANGE);
  const gas = perfectAir();
  // Woschni's gas speed in gas exchange is 6.18 times the mean piston speed.
  cylinder.setSpeed(gasSpeed / 6.18 / meanPistonSpeed(crank, 1));
  cylinder.fill(gas, state);
  const net = new Network({ gas, ducts: [], nodes: [], volumes: [cylinder] });
  const dt = 1e-6;
  net.step({ crankAngle: EXCHANGE, crankStep: 0, dt });
  // Crown, flat head and open liner.
  const piston = (Math.PI * crank.bore ** 2) / 4;
  const height = cylinderVolume(crank, EXCHANGE) / piston;
  const surface = 2 * piston + Math.PI * crank.bore * height;
  return cylinder.ledger.wallHeat / (dt * surface * (state.temperature - wallTemperature));
}
