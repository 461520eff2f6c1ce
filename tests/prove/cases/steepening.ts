/** How far a sine wave of finite amplitude runs before it breaks. */
import { DuctEnd } from '../../../sim/boundary/ductEnd.ts';
import { junction } from '../../../sim/boundary/node.ts';
import type { Duct } from '../../../sim/duct/duct.ts';
import { perfectGas } from '../../../sim/gas/gas.ts';
import { network, pipe, runFor } from '../../network.ts';

const GAMMA = 1.4;
export const SOUND = 343.232;
export const PRESSURE = 101325;
export const TEMPERATURE = 293.15;
export const waveGas = perfectGas(GAMMA, SOUND ** 2 / (GAMMA * TEMPERATURE));

/** State of a simple wave that runs into still gas towards rising x, at velocity u. */
export function simpleWave(u: number) {
  const sound = 1 + (0.5 * (GAMMA - 1) * u) / SOUND;
  return {
    pressure: PRESSURE * sound ** ((2 * GAMMA) / (GAMMA - 1)),
    temperature: TEMPERATURE * sound ** 2,
    velocity: u,
  };
}

/** Steepest fall of velocity per length [1/s]. */
function steepest(duct: Duct): number {
  const { u } = duct.prim;
  let most = 0;
  for (let i = 1; i < u.length; i++) most = Math.max(most, (u.at(i - 1) - u.at(i)) / duct.mesh.dx);
  return most;
}

/**
 * Distance [m] after which a sine of dp/p0 = `amplitude` at `frequency` [Hz] breaks. The slope of a
 * simple wave grows as s0 / (1 - x/x_s): its inverse falls on a straight line to zero. It is read at
 * 30 % and 60 % of the way `expected`, before the front is too steep for cells.
 */
export function breakingDistance(amplitude: number, frequency: number, expected: number): number {
  const length = SOUND / frequency;
  const peak = (amplitude * SOUND) / GAMMA;
  const duct = pipe(length, 0.05, 400);
  duct.fillEach(waveGas, (x) => simpleWave(peak * Math.sin((2 * Math.PI * x) / length)));
  const ring = network([duct], [junction([new DuctEnd(duct, 'low'), new DuctEnd(duct, 'high')])], {
    gas: waveGas,
  });
  const inverseAfter = (distance: number) => {
    runFor(ring, distance / SOUND);
    return 1 / steepest(duct);
  };
  const a = inverseAfter(0.3 * expected);
  const b = inverseAfter(0.3 * expected);
  return expected * (0.3 + (0.3 * a) / (a - b));
}
