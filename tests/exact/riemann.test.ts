/**
 * How the scheme converges on Riemann problems. Their sources and star values are in
 * tests/prove/cases/shockTube.ts, checked in tests/prove/gasDynamics.ts.
 */
import { describe, expect, it } from 'vitest';
import { densityError, SHOCK_TUBES } from '../prove/cases/shockTube.ts';

const SOD = SHOCK_TUBES[0]!;

describe('MUSCL-Hancock with HLLC', () => {
  it('solves Sod at 100 cells within an L1 density error of 4.5e-3', () => {
    expect(densityError(SOD, 100)).toBeLessThan(4.5e-3);
  });

  it('converges on Sod at the order of a captured contact, between 0.75 and 1', () => {
    const errors = [100, 200, 400].map((cells) => densityError(SOD, cells));
    for (const [i, j] of [
      [0, 1],
      [1, 2],
    ] as const) {
      const order = Math.log2(errors[i]! / errors[j]!);
      expect(order).toBeGreaterThan(0.75);
      expect(order).toBeLessThan(1.05);
    }
    console.info(`Sod L1(rho) at 100, 200, 400 cells: ${errors.map((e) => e.toExponential(2))}`);
  });

  for (const tube of SHOCK_TUBES) {
    it(`halves its error on ${tube.name} at least as fast as first order in a contact`, () => {
      const coarse = densityError(tube, 100);
      const fine = densityError(tube, 400);
      expect(fine).toBeLessThan(coarse / 2);
    });
  }
});
