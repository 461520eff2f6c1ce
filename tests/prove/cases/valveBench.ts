/** A valve on a pipe between two bodies of still gas, run to the steady state; gamma 1.4. */
import type { DuctEnd } from '../../../sim/boundary/ductEnd.ts';
import { openEnd, valve } from '../../../sim/boundary/node.ts';
import { OpenAir } from '../../../sim/boundary/reservoir.ts';
import { Duct } from '../../../sim/duct/duct.ts';
import { profileOf } from '../../../sim/duct/profile.ts';
import { perfectAir } from '../../gases.ts';
import { massFluxes, oneDuct, runFor } from '../../network.ts';

const gas = perfectAir();

export interface Bench {
  duct: Duct;
  /** Pressure [Pa] and temperature [K] where the gas comes from, and pressure where it goes. */
  from: { pressure: number; temperature: number };
  to: number;
  /** Effective area of the valve [m^2]. */
  area: number;
  /** Into a cylinder the valve comes last, out of it first. */
  into: boolean;
}

/** Steady mass flow [kg/s]. */
export function steadyFlow({ duct, from, to, area, into }: Bench, time: number): number {
  const source = new OpenAir(gas, from);
  const sink = new OpenAir(gas, { pressure: to, temperature: from.temperature });
  const open = (end: DuctEnd) => openEnd(end, into ? source : sink);
  const throttled = (end: DuctEnd) => valve(end, into ? sink : source, () => area);
  duct.fill(gas, { pressure: into ? from.pressure : to, temperature: from.temperature });
  const net = oneDuct(
    duct,
    { gas },
    into ? { low: open, high: throttled } : { low: throttled, high: open },
  );
  runFor(net, time);
  const flows = massFluxes(duct).map((flux, i) => flux * duct.mesh.faceArea[i]!);
  return flows.reduce((sum, flow) => sum + flow, 0) / flows.length;
}

/** A short pipe so wide that it takes nothing. */
export const wide = () =>
  new Duct(profileOf([{ length: 0.1, outerDiameter: 0.08, innerDiameter: 0.08 }]), {
    name: 'wide',
    largestCell: 0.01,
  });
