/** A volume far smaller than the cell beside it follows the wave and does not swing of itself. */
import { expect, it } from 'vitest';
import { valve } from '../../sim/boundary/node.ts';
import { Volume } from '../../sim/boundary/reservoir.ts';
import { perfectGas } from '../../sim/gas/gas.ts';
import { oneDuct, pipe, runFor } from '../network.ts';

const gas = perfectGas(1.4, 287);

it('stays between the pressures of the pulse that it is given', () => {
  const duct = pipe(0.6, 0.04, 20);
  const volume = new Volume('clearance', 5e-6);
  volume.fill(gas, { pressure: 1e5, temperature: 300 });
  duct.fillEach(gas, (x) => {
    const pressure = 1e5 * (1 + 0.1 * Math.exp(-(((x - 0.3) / 0.1) ** 2)));
    return { pressure, temperature: 300 };
  });
  const net = oneDuct(
    duct,
    { gas, volumes: [volume] },
    { high: (end) => valve(end, volume, () => 0.5 * end.area) },
  );
  let lowest = Number.POSITIVE_INFINITY;
  let highest = 0;
  runFor(net, 0.02, () => {
    lowest = Math.min(lowest, volume.pressure);
    highest = Math.max(highest, volume.pressure);
  });
  expect(lowest).toBeGreaterThan(0.99e5);
  expect(highest).toBeLessThan(1.11e5);
});
