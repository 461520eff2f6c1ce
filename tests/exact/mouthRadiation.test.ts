/** The open end's air: reflection and end correction, in frequency and in time; it never gives energy. */
import Complex from 'complex.js';
import { describe, expect, it } from 'vitest';
import { flareLength, mouthLength } from '../../sim/loss/mouthLength.ts';
import {
  MOUTH_COMPLIANCE,
  type MouthImpedance,
  mouthImpedance,
  RADIATION_SPREAD,
} from '../../sim/loss/mouthRadiation.ts';
import {
  correctionLevineSchwinger,
  magnitudeLevineSchwinger,
} from '../prove/cases/levineSchwinger.ts';
import { advanceMouth, mouthResponse } from './mouthCircuit.ts';

const KA = [0.1, 0.2, 0.3, 0.5, 0.75, 1, 1.25, 1.5];
const ONE = new Complex(1, 0);
/** Bore radius, density and speed of sound 1: frequency is ka, impedance in rho c. */
const AIR = { density: 1, soundSpeed: 1 };
const plain = mouthImpedance(2, 0.6127, AIR);

const reflectionOf = (z: Complex) => z.sub(1).div(z.add(1));
const impedanceOf = (R: Complex) => ONE.add(R).div(ONE.sub(R));

function impedance({ inertance, resistance, compliance }: MouthImpedance, ka: number): Complex {
  return ONE.div(new Complex(1 / resistance, compliance * ka - 1 / (inertance * ka)));
}

const correction = (R: Complex, ka: number) => {
  const arg = R.arg();
  return (Math.PI - (arg < 0 ? arg + 2 * Math.PI : arg)) / (2 * ka);
};

const exact = (ka: number) =>
  new Complex({
    abs: magnitudeLevineSchwinger(ka),
    arg: Math.PI - 2 * ka * correctionLevineSchwinger(ka),
  });

/** The reflection of a wave exp(i ka t), stepped through time. */
function steppedReflection(mouth: MouthImpedance, ka: number, dt: number): Complex {
  const state = { pressure: 0, velocity: 0 };
  const periods = 12;
  const steps = Math.round((2 * Math.PI) / ka / dt);
  const step = (2 * Math.PI) / ka / steps;
  let sum = new Complex(0, 0);
  for (let n = 1; n <= periods * steps; n++) {
    const arriving = Math.cos(ka * n * step);
    const { slope, offset } = mouthResponse(mouth, state, step);
    // p = arriving + back, u = arriving - back.
    const u = (2 * arriving - offset) / (1 + slope);
    const p = slope * u + offset;
    advanceMouth(mouth, state, p, step);
    if (n > (periods - 1) * steps) {
      const turn = new Complex({ abs: 2 / steps, arg: -ka * n * step });
      sum = sum.add(turn.mul(p - arriving));
    }
  }
  return sum;
}

describe('a plain end', () => {
  it.each(KA)('at ka %f reflects as Levine & Schwinger (1948)', (ka) => {
    const R = reflectionOf(impedance(plain, ka));
    expect(R.sub(exact(ka)).abs()).toBeLessThan(RADIATION_SPREAD);
    expect(Math.abs(R.abs() - magnitudeLevineSchwinger(ka))).toBeLessThan(RADIATION_SPREAD);
    expect(Math.abs(correction(R, ka) - correctionLevineSchwinger(ka))).toBeLessThan(0.005);
  });

  it('has the compliance whose greatest error to ka 1.5 is least', () => {
    const kas = Array.from({ length: 30 }, (_, i) => 0.05 * (i + 1));
    const curve = kas.map(exact);
    const worst = (compliance: number) =>
      Math.max(
        ...kas.map((ka, i) =>
          reflectionOf(impedance({ ...plain, compliance }, ka))
            .sub(curve[i]!)
            .abs(),
        ),
      );
    const tried = Array.from({ length: 81 }, (_, i) => 0.08 + 0.001 * i);
    const best = tried.reduce((a, b) => (worst(b) < worst(a) ? b : a));
    expect(Math.abs(best - MOUTH_COMPLIANCE)).toBeLessThan(0.0015);
    expect(worst(MOUTH_COMPLIANCE)).toBeLessThan(RADIATION_SPREAD);
  });

  it.each(KA)('at ka %f reflects so in steps of time, too', (ka) => {
    // A third of a radius in sound's way: a cell of 8 mm in a bore of 45 mm.
    const R = steppedReflection(plain, ka, 1 / 3);
    const fine = steppedReflection(plain, ka, 1 / 48);
    const whole = reflectionOf(impedance(plain, ka));
    expect(fine.sub(whole).abs()).toBeLessThan(0.002);
    expect(R.sub(whole).abs()).toBeLessThan(0.03 * ka);
  });

  it('takes energy from whatever moves it and never gives any, whatever the step', () => {
    let seed = 7;
    const chance = () => {
      seed = (seed * 16807) % 2147483647;
      return seed / 2147483647 - 0.5;
    };
    for (const dt of [0.01, 0.3, 3, 100]) {
      const state = { pressure: 0, velocity: 0 };
      let work = 0;
      for (let n = 0; n < 3000; n++) {
        const u = chance();
        const { slope, offset } = mouthResponse(plain, state, dt);
        const p = slope * u + offset;
        advanceMouth(plain, state, p, dt);
        work += p * u * dt;
        expect(work).toBeGreaterThan(-1e-9);
      }
    }
  });
});

describe.each([
  { depth: 12 / 22.5, overhang: 12 / 22.5 },
  { depth: 30 / 22.5, overhang: 20 / 22.5 },
])('a flare of depth $depth and overhang $overhang bore radii', ({ depth, overhang }) => {
  const length = mouthLength({ bore: 2, depth, overhang });
  const mouth = mouthImpedance(2, length, AIR);

  it.each([0.1, 0.2, 0.3, 0.5])('at ka %f: as its rim, behind the rest of its inertance', (ka) => {
    const rim = 1 + overhang;
    const outside = impedanceOf(exact(ka * rim)).div(rim * rim);
    const R = reflectionOf(outside.add(new Complex(0, ka * (length - 0.6127 / rim))));
    const ours = reflectionOf(impedance(mouth, ka));
    expect(Math.abs(ours.abs() - R.abs())).toBeLessThan(0.005);
    expect(Math.abs(correction(ours, ka) - correction(R, ka))).toBeLessThan(0.02);
  });

  it('radiates as a plain end does at low frequency', () => {
    const lost = (one: MouthImpedance) => 1 - reflectionOf(impedance(one, 0.02)).abs();
    expect(Math.abs(lost(mouth) / lost(plain) - 1)).toBeLessThan(0.01);
    expect(length).toBeGreaterThan(flareLength(2, depth, overhang));
  });
});
