/**
 * Gas at rest stays at rest in any taper, whatever its temperature and composition do along the
 * way: no source, an exact property of a well-balanced scheme.
 */
import { describe, expect, it } from 'vitest';
import { DuctEnd } from '../../sim/boundary/ductEnd.ts';
import {
  closedEnd,
  constriction,
  junction,
  type Node,
  openEnd,
  valve,
} from '../../sim/boundary/node.ts';
import { OpenAir, Volume } from '../../sim/boundary/reservoir.ts';
import { Duct } from '../../sim/duct/duct.ts';
import { type Profile, profileOf } from '../../sim/duct/profile.ts';
import type { Network } from '../../sim/engine/network.ts';
import { bellmouthProfile } from '../bellmouth.ts';
import { airAndProducts } from '../gases.ts';
import { network, oneDuct } from '../network.ts';
import { joinProfiles } from '../profiles.ts';

const STEPS = 10_000;
const PRESSURE = 98_765.4;
const gas = airAndProducts();

const taper = profileOf([{ length: 0.3, outerDiameter: 0.08, innerDiameter: 0.03 }]);
const trumpet = joinProfiles(
  bellmouthProfile(0.045, 0.012, 0.012),
  profileOf([{ length: 0.2, outerDiameter: 0.045, innerDiameter: 0.041 }]),
);

/** Still gas at one pressure, cold fresh air meeting hot burned gas half-way. */
function still(profile: Profile, contact: boolean): Duct {
  const duct = new Duct(profile, { name: 'still', largestCell: 0.01, roughness: 1e-5 });
  const half = duct.mesh.length / 2;
  duct.fillEach(gas, (x) => ({
    pressure: PRESSURE,
    temperature: contact && x > half ? 1100 : 293.15,
    burned: contact && x > half ? 1 : 0,
  }));
  return duct;
}

function fastestAfter(net: Network): number {
  let worst = 0;
  for (let i = 0; i < STEPS; i++) net.step({ crankAngle: 0, crankStep: 0, dt: 8e-6 });
  for (const duct of net.ducts) for (const u of duct.prim.u) worst = Math.max(worst, Math.abs(u));
  return worst;
}

const air = new OpenAir(gas, { pressure: PRESSURE, temperature: 293.15 });
const ENDS: Record<string, (end: DuctEnd) => Node> = {
  closed: closedEnd,
  open: (end) => openEnd(end, air, 0.4),
};

describe.each([
  ['taper', taper],
  ['bellmouth', trumpet],
] as const)('still gas in a %s', (_name, profile) => {
  it.each([
    ['closed', false],
    ['closed', true],
    ['open', false],
    ['open', true],
  ] as const)('rests with %s ends; contact within: %s', (ends, contact) => {
    const net = oneDuct(still(profile, contact), { gas }, { low: ENDS[ends]!, high: ENDS[ends]! });
    expect(fastestAfter(net)).toBeLessThan(1e-10);
  });
});

it('rests in a network of tapers, a throttle, a junction, a volume and an open end', () => {
  const ducts = [still(trumpet, false), still(taper, true), still(taper, true)];
  const [a, b, c] = ducts as [Duct, Duct, Duct];
  const box = new Volume('box', 1e-3);
  box.fill(gas, { pressure: PRESSURE, temperature: 700, burned: 0.5 });
  const tail = still(taper, false);
  const plate = { forward: 5e-4, backward: 6e-4 };
  const net = network(
    [...ducts, tail],
    [
      openEnd(new DuctEnd(a, 'low'), air, 0.1),
      constriction(new DuctEnd(a, 'high'), new DuctEnd(b, 'low'), plate),
      junction([new DuctEnd(b, 'high'), new DuctEnd(c, 'high'), new DuctEnd(tail, 'low')]),
      valve(new DuctEnd(c, 'low'), box, () => 3e-4),
      closedEnd(new DuctEnd(tail, 'high')),
    ],
    { gas, volumes: [box] },
  );
  expect(fastestAfter(net)).toBeLessThan(1e-10);
});
