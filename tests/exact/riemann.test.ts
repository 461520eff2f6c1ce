/**
 * Riemann problems against the exact solution.
 * Sources: Sod (1978), J. Comput. Phys. 27:1; Toro (2009), tables 4.1-4.3 and sec. 6.4 (initial data
 * from memory); star values computed from the closed form.
 */
import { describe, expect, it } from 'vitest';
import type { DuctEnd } from '../../sim/boundary/ductEnd.ts';
import { exactRiemann, type RiemannState } from '../../sim/flux/exactRiemann.ts';
import { perfectGas } from '../../sim/gas/gas.ts';
import { monotonisedCentral, type SlopeLimiter, vanLeer } from '../../sim/scheme/slopeLimiter.ts';
import { oneDuct, pipe, runFor } from '../network.ts';

const GAMMA = 1.4;
const gas = perfectGas(GAMMA, 1);

interface Case {
  left: RiemannState;
  right: RiemannState;
  diaphragm: number;
  time: number;
  star: [pStar: number, uStar: number, rhoLeft: number, rhoRight: number];
}

const state = (rho: number, u: number, p: number): RiemannState => ({ rho, u, p });

const CASES: Record<string, Case> = {
  sod: {
    left: state(1, 0, 1),
    right: state(0.125, 0, 0.1),
    diaphragm: 0.5,
    time: 0.2,
    star: [0.30313018, 0.92745262, 0.42631943, 0.26557371],
  },
  'toro 1, sonic point': {
    left: state(1, 0.75, 1),
    right: state(0.125, 0, 0.1),
    diaphragm: 0.3,
    time: 0.2,
    star: [0.46629357, 1.3609055, 0.57986669, 0.33970023],
  },
  'toro 2, near vacuum': {
    left: state(1, -2, 0.4),
    right: state(1, 2, 0.4),
    diaphragm: 0.5,
    time: 0.15,
    star: [0.0018938734, 0, 0.021852118, 0.021852118],
  },
  'toro 3, blast': {
    left: state(1, 0, 1000),
    right: state(1, 0, 0.01),
    diaphragm: 0.5,
    time: 0.012,
    star: [460.89379, 19.597451, 0.5750623, 5.9992407],
  },
  'toro 4, collision': {
    left: state(5.99924, 19.5975, 460.894),
    right: state(5.99242, -6.19633, 46.095),
    diaphragm: 0.4,
    time: 0.035,
    star: [1691.64, 8.68975, 14.2823, 31.0426],
  },
  'toro 5, slow contact': {
    left: state(1, -19.59745, 1000),
    right: state(1, -19.59745, 0.01),
    diaphragm: 0.8,
    time: 0.012,
    star: [460.89379, 1.39e-6, 0.5750623, 5.9992407],
  },
};

describe('exact Riemann solver', () => {
  for (const [name, { left, right, star }] of Object.entries(CASES)) {
    it(`finds the star states of ${name}`, () => {
      const digits = name.startsWith('toro 4') ? 5e-6 : 2e-7;
      const solution = exactRiemann(left, right, GAMMA);
      const [pStar, uStar, rhoLeft, rhoRight] = star;
      expect(Math.abs(solution.pStar / pStar - 1)).toBeLessThan(digits);
      const scale = Math.max(Math.abs(uStar), 1);
      expect(Math.abs(solution.uStar - uStar)).toBeLessThan(digits * scale);
      expect(Math.abs(solution.rhoStarLeft / rhoLeft - 1)).toBeLessThan(digits);
      expect(Math.abs(solution.rhoStarRight / rhoRight - 1)).toBeLessThan(digits);
    });
  }
});

/** L1 error of density over a pipe of length 1. */
function densityError(c: Case, cells: number, limiter: SlopeLimiter = vanLeer): number {
  const duct = pipe(1, 1, cells);
  duct.fillEach(gas, (x) => {
    const s = x < c.diaphragm ? c.left : c.right;
    return { pressure: s.p, temperature: s.p / s.rho, velocity: s.u };
  });
  const transmissive = (side: 'low' | 'high') => (end: DuctEnd) => ({
    ends: [end],
    exchange: () => {
      const s = side === 'low' ? c.left : c.right;
      const outward = side === 'low' ? -1 : 1;
      const energy = s.rho * (gas.enthalpy(s.p / s.rho, 0, 0) + 0.5 * s.u * s.u);
      end.write(s.rho, outward * s.u, s.p, 0, 0, outward * s.u * energy * end.area);
    },
  });
  const net = oneDuct(
    duct,
    { gas, limiter },
    { low: transmissive('low'), high: transmissive('high') },
  );
  runFor(net, c.time);
  const exact = exactRiemann(c.left, c.right, GAMMA);
  let error = 0;
  for (let i = 0; i < cells; i++) {
    const x = (i + 0.5) / cells;
    error += Math.abs(duct.cells.rho[i]! - exact.sample((x - c.diaphragm) / c.time).rho) / cells;
  }
  return error;
}

describe('MUSCL-Hancock with HLLC', () => {
  it('solves Sod at 100 cells within an L1 density error of 4.5e-3', () => {
    expect(densityError(CASES.sod!, 100)).toBeLessThan(4.5e-3);
    expect(densityError(CASES.sod!, 100, monotonisedCentral)).toBeLessThan(4.5e-3);
  });

  it('converges on Sod at the order of a captured contact, between 0.75 and 1', () => {
    const errors = [100, 200, 400].map((cells) => densityError(CASES.sod!, cells));
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

  for (const [name, c] of Object.entries(CASES)) {
    it(`halves its error on ${name} at least as fast as first order in a contact`, () => {
      const coarse = densityError(c, 100);
      const fine = densityError(c, 400);
      expect(fine).toBeLessThan(coarse / 2);
    });
  }
});
