/**
 * A sudden step of area: what it loses in steady flow (Borda-Carnot; contraction 0.5 (1 - A1/A2);
 * Idelchik, diagrams 4-1 and 4-9, from memory) and what it reflects of a small wave,
 * (A1 - A2)/(A1 + A2) (continuity of pressure and volume flow, any text on acoustics).
 */

import { expect, it } from 'vitest';
import { DuctEnd } from '../../sim/boundary/ductEnd.ts';
import { areaStep, nonReflecting, openEnd } from '../../sim/boundary/node.ts';
import { OpenAir } from '../../sim/boundary/reservoir.ts';
import type { Duct } from '../../sim/duct/duct.ts';
import type { Field } from '../../sim/duct/field.ts';
import { circleArea } from '../../sim/duct/profile.ts';
import { perfectGas } from '../../sim/gas/gas.ts';
import { network, pipe, runFor } from '../network.ts';

const gas = perfectGas(1.4, 287);
const P = 1e5;
const T = 300;
const WIDE = 0.06;
const NARROW = 0.04;

/** Total pressure in the middle of a duct, slow flow [Pa], and dynamic head there [Pa]. */
function middle(duct: Duct): { total: number; head: number } {
  const i = duct.mesh.cells >> 1;
  const head = 0.5 * duct.cells.rho.at(i) * duct.prim.u.at(i) ** 2;
  return { total: duct.prim.p.at(i) + head, head };
}

it.each([
  ['widening', NARROW, WIDE],
  ['narrowing', WIDE, NARROW],
] as const)('%s, steady flow loses the handbook heads within 3 %%', (_name, d1, d2) => {
  const ducts = [pipe(0.3, d1, 15), pipe(0.3, d2, 15)] as const;
  for (const duct of ducts) duct.fill(gas, { pressure: P, temperature: T });
  const before = new OpenAir(gas, { pressure: P, temperature: T });
  const behind = new OpenAir(gas, { pressure: P - 600, temperature: T });
  const net = network(
    [...ducts],
    [
      openEnd(new DuctEnd(ducts[0], 'low'), before),
      areaStep(new DuctEnd(ducts[0], 'high'), new DuctEnd(ducts[1], 'low')),
      openEnd(new DuctEnd(ducts[1], 'high'), behind),
    ],
    { gas },
  );
  runFor(net, 0.6);
  const [a, b] = ducts.map(middle) as [ReturnType<typeof middle>, ReturnType<typeof middle>];
  const narrowHead = d1 < d2 ? a.head : b.head;
  const ratio = circleArea(NARROW) / circleArea(WIDE);
  const expected = d1 < d2 ? (1 - ratio) ** 2 : 0.5 * (1 - ratio);
  expect(narrowHead).toBeGreaterThan(100);
  expect(Math.abs((a.total - b.total) / narrowHead / expected - 1)).toBeLessThan(0.03);
});

it('reflects (A1 - A2)/(A1 + A2) of a small wave within 1 %', () => {
  const ducts = [pipe(1, NARROW, 200), pipe(1, WIDE, 200)] as const;
  const pulse = (x: number) => 10 * Math.exp(-(((x - 0.5) / 0.05) ** 2));
  const impedance = (P / (287 * T)) * Math.sqrt(1.4 * 287 * T);
  ducts[0].fillEach(gas, (x) => ({
    pressure: P + pulse(x),
    temperature: T * (1 + (pulse(x) / P) * (0.4 / 1.4)),
    velocity: pulse(x) / impedance,
  }));
  ducts[1].fill(gas, { pressure: P, temperature: T });
  const outside = new OpenAir(gas, { pressure: P, temperature: T });
  const net = network(
    [...ducts],
    [
      nonReflecting(new DuctEnd(ducts[0], 'low'), outside),
      areaStep(new DuctEnd(ducts[0], 'high'), new DuctEnd(ducts[1], 'low')),
      nonReflecting(new DuctEnd(ducts[1], 'high'), outside),
    ],
    { gas },
  );
  runFor(net, 0.9 / Math.sqrt(1.4 * 287 * T));
  const furthest = (field: Field) =>
    field.values().reduce((most, p) => (Math.abs(p - P) > Math.abs(most) ? p - P : most), 0);
  const a1 = circleArea(NARROW);
  const a2 = circleArea(WIDE);
  // The wave's own peak after the run, from the part let through.
  const reflected = furthest(ducts[0].prim.p);
  const through = furthest(ducts[1].prim.p);
  expect(Math.abs(reflected / through / ((a1 - a2) / (2 * a1)) - 1)).toBeLessThan(0.01);
});
