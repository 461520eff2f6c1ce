/** Waves that leave a boundary into a pipe; gamma 1.4. */
import { DuctEnd } from '../../../sim/boundary/ductEnd.ts';
import { closedEnd } from '../../../sim/boundary/node.ts';
import { behind, behindP, readEnd } from '../../../sim/step/ends.ts';
import { FIRST_END, NODES_AT } from '../../../sim/step/layout.ts';
import { AIR_GAMMA, AIR_R, perfectAir } from '../../gases.ts';
import { network, oneDuct, pipe, runFor } from '../../network.ts';

const gas = perfectAir();
const STILL = { pressure: 1e5, temperature: 300 };
const SOUND = Math.sqrt(AIR_GAMMA * AIR_R * STILL.temperature);

/** Pressure over that of still gas behind a wave that brings it to a velocity over its speed of sound. */
export function behindWave(u: number): number {
  const duct = pipe(1, 0.05, 4);
  duct.fill(gas, STILL);
  const ends = (['low', 'high'] as const).map((side) => new DuctEnd(duct, side));
  const net = network([duct], ends.map(closedEnd), { gas });
  net.step({ crankAngle: 0, crankStep: 0, dt: 1e-6 });
  const { N } = net.layout;
  const low = N[N[N[NODES_AT]!]! + FIRST_END]!;
  readEnd(low);
  // Velocities at an end count positive out of the duct.
  behind(low, -u * SOUND);
  return behindP / STILL.pressure;
}

/** Pressure and density over those of gas that a shut end stops by a shock of this Mach number. */
export function stoppedGas(mach: number): { pressure: number; density: number } {
  const velocity = (2 / (AIR_GAMMA + 1)) * (mach - 1 / mach) * SOUND;
  const cells = 400;
  const duct = pipe(1, 0.05, cells);
  duct.fill(gas, { ...STILL, velocity });
  // The fan from the other end and the shock, which runs at M a - u, are to be apart still.
  const shock = mach * SOUND - velocity;
  runFor(oneDuct(duct, { gas }), 0.15 / shock);
  // Half-way between the end and the shock.
  const i = Math.floor((1 - 0.075) * cells);
  return {
    pressure: duct.prim.p.at(i) / STILL.pressure,
    density: (duct.cells.rho.at(i) * AIR_R * STILL.temperature) / STILL.pressure,
  };
}
