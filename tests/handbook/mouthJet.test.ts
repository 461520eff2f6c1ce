/** Quasi-steady losses of a mouth: momentum, energy, and published reflections in a mean flow. */
import { describe, expect, it } from 'vitest';
import { entryLossProjecting, entryLossRounded } from '../../sim/loss/entryLoss.ts';
import {
  contractionLoss,
  END_CORRECTION_JET,
  exitLoss,
  exitLossSpread,
  type MouthLosses,
  outflowLengthSpread,
  quasiSteadyPressure,
  sineResistance,
} from './mouthJet.ts';

const RHO = 1.2;
const SOUND = 343;
const HILL_CLIMB = { bore: 0.045, depth: 0.012, overhang: 0.012 };

describe('gas that enters', () => {
  it('through a thin projecting end: half the area, K = 1, from momentum (Borda)', () => {
    // The pipe's wall bears no axial force: rho u^2 A = (p0 - p) A.
    const losses = { entryLoss: contractionLoss(0.5), exitLoss: 1 };
    expect(losses.entryLoss).toBe(entryLossProjecting(0));
    expect(quasiSteadyPressure(-30, RHO, losses)).toBeCloseTo(-RHO * 30 ** 2, 9);
  });

  it('through a flush sharp edge: Kirchhoff 1869, pi / (pi + 2), within 0.1 of the handbook', () => {
    // Handbook: 0.5 (Idelchik, diagram 3-3), wall friction of the first diameters counted.
    const loss = contractionLoss(Math.PI / (Math.PI + 2));
    expect(loss).toBeCloseTo(0.405, 3);
    expect(Math.abs(loss - entryLossRounded(0))).toBeLessThan(0.1);
  });

  it.each([0.05, 0.1, 0.2])('at Mach %f reflects as Davies (1987) within 4.1 per cent', (mach) => {
    // |R| = ((1 - M) / (1 + M))^0.9 without loss, J. Sound Vib. 115:560, from memory.
    const losses = { entryLoss: 0, exitLoss: 1 };
    const du = 1e-3;
    const at = (u: number) => quasiSteadyPressure(u, RHO, losses);
    const u = -mach * SOUND;
    const z = (at(u + du) - at(u - du)) / (2 * du) / (RHO * SOUND);
    const R = Math.abs((z - 1) / (z + 1));
    expect(R).toBeCloseTo((1 - mach) / (1 + mach), 6);
    expect(Math.abs(R / ((1 - mach) / (1 + mach)) ** 0.9 - 1)).toBeLessThan(0.041);
  });
});

describe('gas that leaves', () => {
  it('a plain end keeps the still air’s pressure and loses its whole head', () => {
    const loss = exitLoss({ bore: 0.045, depth: 0, overhang: 0 });
    expect(loss).toBe(1);
    expect(Math.abs(quasiSteadyPressure(50, RHO, { entryLoss: 1, exitLoss: loss }))).toBe(0);
  });

  it('a round lip gives back little: the flow parts near its foot', () => {
    // 12 (1 - cos 10 deg) = 0.1823 mm beyond a bore of 22.5 mm.
    expect(exitLoss(HILL_CLIMB)).toBeCloseTo((22.5 / 22.6823) ** 4, 5);
    const { low, high } = exitLossSpread(HILL_CLIMB);
    expect(low).toBeGreaterThan((22.5 / 34.5) ** 4);
    expect(low).toBeLessThan(exitLoss(HILL_CLIMB));
    expect(high).toBeGreaterThan(exitLoss(HILL_CLIMB));
    expect(high).toBeLessThan(1);
  });

  it('a slender flare gives back more than a steep one', () => {
    const slender = { bore: 0.045, depth: 0.09, overhang: 0.012 };
    expect(exitLoss(slender)).toBeLessThan(exitLoss(HILL_CLIMB));
  });

  it('has an inertial length between a steady jet and potential flow', () => {
    const { low, high } = outflowLengthSpread(HILL_CLIMB);
    expect(low).toBeCloseTo(0.2554 * 0.0225, 9);
    expect(high).toBeCloseTo(0.0234, 3);
    const plain = outflowLengthSpread({ bore: 0.045, depth: 0, overhang: 0 });
    expect(plain.low / plain.high).toBeCloseTo(END_CORRECTION_JET / 0.6127, 4);
  });
});

it.each([
  { entryLoss: 1, exitLoss: 1 },
  { entryLoss: 0.03, exitLoss: 0.97 },
])(
  'a sine loses what its resistance takes, $entryLoss in and $exitLoss out',
  (losses: MouthLosses) => {
    const peak = 40;
    const steps = 2000;
    let power = 0;
    for (let i = 0; i < steps; i++) {
      const u = peak * Math.sin((2 * Math.PI * (i + 0.5)) / steps);
      power += (quasiSteadyPressure(u, RHO, losses) * u) / steps;
    }
    const resistance = sineResistance(losses, peak / SOUND) * RHO * SOUND;
    expect(power / ((resistance * peak ** 2) / 2)).toBeCloseTo(1, 5);
  },
);
