/** A pipe whose mouth is opened to air at a slightly higher pressure: when its shut end feels it. */
import { DuctEnd } from '../../../sim/boundary/ductEnd.ts';
import { closedEnd, openEnd } from '../../../sim/boundary/node.ts';
import { OpenAir } from '../../../sim/boundary/reservoir.ts';
import { Duct } from '../../../sim/duct/duct.ts';
import { profileOf } from '../../../sim/duct/profile.ts';
import { perfectGas } from '../../../sim/gas/gas.ts';
import { network } from '../../network.ts';

const REST = { pressure: 101325, temperature: 293.15 };
/** [Pa]; weak enough for a sound. */
const STEP = 10;
const CELLS = 200;

/** Time until the shut end has half of what it gets, twice the step [s]; `sound` in m/s. */
export function arrival(length: number, sound: number): number {
  const gas = perfectGas(1.4, sound ** 2 / (1.4 * REST.temperature));
  const pieces = [{ length, outerDiameter: 0.04, innerDiameter: 0.04 }];
  const pipe = new Duct(profileOf(pieces), { name: 'pipe', largestCell: length / CELLS });
  pipe.fill(gas, REST);
  const outside = new OpenAir(gas, { ...REST, pressure: REST.pressure + STEP });
  const nodes = [openEnd(new DuctEnd(pipe, 'low'), outside), closedEnd(new DuctEnd(pipe, 'high'))];
  const net = network([pipe], nodes, { gas });
  let time = 0;
  while (pipe.prim.p.at(pipe.mesh.cells - 1) < REST.pressure + STEP) {
    const dt = 0.9 * net.longestStep();
    net.step({ crankAngle: 0, crankStep: 0, dt });
    time += dt;
  }
  return time;
}
