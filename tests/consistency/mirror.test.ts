/**
 * A duct and its mirror image give mirrored results: nothing in the scheme or at the ends prefers a
 * direction. Every operation has its mirror image in floating point, but sums may be taken in the
 * other order, so round-off is allowed for.
 */
import { expect, it } from 'vitest';
import { closedEnd, openEnd, valve } from '../../sim/boundary/node.ts';
import { OpenAir } from '../../sim/boundary/reservoir.ts';
import { Duct, type InitialState } from '../../sim/duct/duct.ts';
import { lengthOf, type Profile } from '../../sim/duct/profile.ts';
import { airAndProducts } from '../gases.ts';
import { oneDuct, TAPERED } from '../network.ts';

const LENGTH = lengthOf(TAPERED);
const mirrored: Profile = [...TAPERED]
  .reverse()
  .map(({ x, diameter }) => ({ x: LENGTH - x, diameter }));

const start = (x: number): InitialState => ({
  pressure: x < 0.2 ? 1e5 : 1.6e5,
  temperature: x < 0.3 ? 300 : 700,
  velocity: 60 * Math.sin(12 * x),
  burned: x < 0.3 ? 0 : 0.8,
  fuel: x < 0.1 ? 0.03 : 0,
});

function run(isMirrored: boolean, withEnds: boolean) {
  const gas = airAndProducts();
  const duct = new Duct(isMirrored ? mirrored : TAPERED, {
    name: 'duct',
    largestCell: 0.01,
    roughness: 1e-5,
    wallTemperature: (x) => (isMirrored ? 400 - 100 * (LENGTH - x) : 400 - 100 * x),
  });
  duct.fillEach(gas, (x) => {
    const state = start(isMirrored ? LENGTH - x : x);
    return { ...state, velocity: (isMirrored ? -1 : 1) * state.velocity! };
  });
  const outside = new OpenAir(gas, { pressure: 1e5, temperature: 290 });
  const box = new OpenAir(gas, { pressure: 2.2e5, temperature: 900, burned: 1 });
  const mouth = withEnds
    ? (end: Parameters<typeof closedEnd>[0]) => openEnd(end, outside, 0.3)
    : closedEnd;
  const port = withEnds
    ? (end: Parameters<typeof closedEnd>[0]) => valve(end, box, () => 3e-4)
    : closedEnd;
  const net = oneDuct(
    duct,
    { gas },
    isMirrored ? { low: port, high: mouth } : { low: mouth, high: port },
  );
  for (let i = 0; i < 400; i++) net.step({ crankAngle: 0, crankStep: 0, dt: 6e-6 });
  return duct;
}

it.each([false, true])('mirrors a duct; with open end and valve: %s', (withEnds) => {
  const duct = run(false, withEnds);
  const image = run(true, withEnds);
  const n = duct.mesh.cells;
  let worst = 0;
  for (let i = 0; i < n; i++) {
    const j = n - 1 - i;
    worst = Math.max(
      worst,
      Math.abs(duct.prim.p.at(i) / image.prim.p.at(j) - 1),
      Math.abs(duct.cells.rho.at(i) / image.cells.rho.at(j) - 1),
      Math.abs(duct.prim.u.at(i) + image.prim.u.at(j)) / 300,
      Math.abs(duct.prim.burned.at(i) - image.prim.burned.at(j)),
    );
  }
  // Flow has reversed and shocks have crossed by then: the state is far from where it started.
  expect(Math.max(...duct.prim.u.map(Math.abs))).toBeGreaterThan(30);
  expect(worst).toBeLessThan(1e-9);
});
