/** A straight pipe that draws still air through its mouth with an entry loss. */
import { openEnd, valve } from '../../../sim/boundary/node.ts';
import { OpenAir } from '../../../sim/boundary/reservoir.ts';
import { AIR_R, perfectAir } from '../../gases.ts';
import { oneDuct, pipe, runFor } from '../../network.ts';

const gas = perfectAir();
const AIR = { pressure: 1e5, temperature: 300 };

/**
 * Flow through the mouth over A sqrt(2 rho (p0 - p)), p the pressure within: slow flow, so that the
 * incompressible definition of the coefficient holds to 0.1 %.
 */
export function mouthDischarge(loss: number): number {
  const duct = pipe(0.2, 0.05, 20);
  duct.fill(gas, AIR);
  const still = new OpenAir(gas, AIR);
  const sink = new OpenAir(gas, { ...AIR, pressure: 0.97e5 });
  const area = (Math.PI / 4) * 0.05 ** 2;
  const net = oneDuct(
    duct,
    { gas },
    {
      low: (end) => openEnd(end, still, loss),
      // A narrow way out keeps the flow slow and damps the pipe.
      high: (end) => valve(end, sink, () => 0.3 * area),
    },
  );
  runFor(net, 0.1);
  const [rho, u, p] = duct.endState('low');
  const density = AIR.pressure / (AIR_R * AIR.temperature);
  return (rho! * u!) / Math.sqrt(2 * density * (AIR.pressure - p!));
}
