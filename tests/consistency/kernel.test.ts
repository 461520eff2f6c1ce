/**
 * The WebAssembly kernel does what the TypeScript scheme does, to the last bit, for odd and even
 * numbers of cells, hot and cold gas, shocks and flow above the speed of sound; and it is the one
 * that its source builds.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { openEnd } from '../../sim/boundary/openEnd.ts';
import { OpenAir } from '../../sim/boundary/reservoir.ts';
import { valve } from '../../sim/boundary/valve.ts';
import { Duct } from '../../sim/duct/duct.ts';
import { lengthOf } from '../../sim/duct/profile.ts';
import { NonPhysicalStateError } from '../../sim/errors.ts';
import { airAndProducts } from '../gases.ts';
import { kernelFile } from '../kernelBytes.ts';
import { type Options, oneDuct, TAPERED } from '../network.ts';

const LENGTH = lengthOf(TAPERED);
const gas = airAndProducts();

/** A tube of hot products at high pressure behind cold air, between an open end and a valve. */
function tube(cells: number, options: Partial<Options>, pressure = 9e5) {
  const duct = new Duct(TAPERED, {
    name: 'tube',
    largestCell: LENGTH / cells,
    roughness: 1e-5,
    wallTemperature: (x) => (x < 0.2 ? 350 : 0),
    lossPerLength: (x) => (x < 0.1 ? 3 : 0),
  });
  duct.fillEach(gas, (x) => ({
    pressure: x < 0.2 ? 1e5 : pressure,
    temperature: x < 0.2 ? 300 : 2350,
    velocity: 60 * Math.sin(12 * x),
    burned: x < 0.3 ? 0 : 0.9,
    fuel: x < 0.1 ? 0.03 : 0,
  }));
  const air = new OpenAir(gas, { pressure: 1e5, temperature: 290 });
  const box = new OpenAir(gas, { pressure: 2.2e5, temperature: 900, burned: 1 });
  const net = oneDuct(
    duct,
    { gas, ...options },
    { low: (end) => openEnd(end, air, 0.3), high: (end) => valve(end, box, () => 3e-4) },
  );
  return { duct, net };
}

function figures({ cells, prim, left, right, flux, heatTaken, fastest }: Duct): number[] {
  const fields = [cells, prim, flux].flatMap((group) => Object.values(group) as Float64Array[]);
  const faces = [left.rho, left.c, right.e, right.burned].map((field) => field.slice(1, -1));
  return [...[...fields, ...faces].flatMap((field) => [...field]), heatTaken, fastest];
}

describe('the kernel', () => {
  it.each([3, 4, 17, 18, 61])('repeats the scheme on %i cells', (cells) => {
    const [fast, plain] = [tube(cells, {}), tube(cells, { plain: true })];
    expect(fast.duct.mesh.cells).toBe(cells);
    expect(fast.duct.block.arena).toBeDefined();
    for (let step = 0; step < 600; step++) {
      const dt = 0.8 * plain.net.longestStep();
      fast.net.step({ crankAngle: 0, crankStep: 0, dt });
      plain.net.step({ crankAngle: 0, crankStep: 0, dt });
      if (step % 50 === 0) expect(figures(fast.duct)).toEqual(figures(plain.duct));
    }
    expect(figures(fast.duct)).toEqual(figures(plain.duct));
    // The scheme leaves slopes behind, the kernel does not: each did its own work.
    expect(plain.duct.slope.rho.some((slope) => slope !== 0)).toBe(true);
    expect(fast.duct.slope.rho.every((slope) => slope === 0)).toBe(true);
  });

  it('says the same of a state that makes no sense', () => {
    const failure = (options: Partial<Options>) => {
      const { net } = tube(40, options, 5e7);
      try {
        for (let step = 0; step < 50; step++) net.step({ crankAngle: 0, crankStep: 0, dt: 4e-5 });
      } catch (error) {
        if (error instanceof NonPhysicalStateError) return error.state;
        throw error;
      }
      return undefined;
    };
    expect(failure({})).toBeDefined();
    expect(failure({})).toEqual(failure({ plain: true }));
  });

  it('is what its source builds', () => {
    expect(readFileSync('sim/kernel/bytes.ts', 'utf8')).toBe(kernelFile());
  });
});
