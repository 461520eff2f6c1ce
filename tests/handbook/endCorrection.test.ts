/**
 * Levine & Schwinger's integrals (1948), computed here by quadrature with library Bessel functions,
 * against their tabulated values and against the constants and fits of `acoustics/endCorrection`.
 */
import { besseli, besselj, besselk, bessely } from 'bessel';
import { describe, expect, it } from 'vitest';
import {
  END_CORRECTION_FLANGED,
  END_CORRECTION_UNFLANGED,
  reflectionFlanged,
  reflectionUnflanged,
} from '../../sim/acoustics/endCorrection.ts';

/** Midpoint rule: the integrands are smooth, and none can be evaluated at its ends. */
function integrate(f: (x: number) => number, from: number, to: number, steps: number): number {
  const h = (to - from) / steps;
  let sum = 0;
  for (let i = 0; i < steps; i++) sum += f(from + (i + 0.5) * h);
  return sum * h;
}

/** ln(1 / (2 I1 K1)): series below 0.02, where the product cancels; asymptote above 50. */
function logModified(x: number): number {
  const euler = 0.5772156649015329;
  if (x < 0.02) return -Math.log1p(((x * x) / 2) * (Math.log(x / 2) + euler - 0.25));
  if (x > 50) return Math.log(x) - Math.log1p(-3 / (8 * x * x));
  return -Math.log(2 * besseli(x, 1) * besselk(x, 1));
}

function magnitudeLevineSchwinger(ka: number): number {
  const integrand = (t: number) => {
    const x = ka * Math.sin(t);
    return Math.atan2(besselj(x, 1), -bessely(x, 1)) / Math.sin(t);
  };
  return Math.exp((-2 / Math.PI) * integrate(integrand, 0, Math.PI / 2, 2000));
}

function correctionLevineSchwinger(ka: number): number {
  const near = (t: number) => {
    const x = ka * Math.sin(t);
    const j = besselj(x, 1);
    return Math.log(Math.PI * j * Math.hypot(j, bessely(x, 1))) / x;
  };
  // x = exp(s) spreads the half line evenly.
  const far = (s: number) => logModified(Math.exp(s)) / Math.hypot(Math.exp(s), ka);
  const farPart = integrate(far, -20, 30, 8000);
  return ((ka > 0 ? integrate(near, 0, Math.PI / 2, 2000) : 0) + farPart) / Math.PI;
}

/** ka, |R|, l/a of an unflanged end: Levine & Schwinger's integrals, by two quadratures. */
const TABLE: [number, number, number][] = [
  [0.05, 0.99875, 0.61226],
  [0.1, 0.99507, 0.61099],
  [0.2, 0.98086, 0.60638],
  [0.3, 0.95868, 0.59961],
  [0.4, 0.93004, 0.59127],
  [0.5, 0.89644, 0.58184],
  [0.6, 0.85924, 0.57164],
  [0.8, 0.77853, 0.54993],
  [1.0, 0.6951, 0.52743],
  [1.25, 0.59391, 0.49917],
];

describe('unflanged end', () => {
  it('has the low-frequency limit of the integral, not the printed rounding', () => {
    const limit = correctionLevineSchwinger(0);
    expect(Math.abs(limit - 0.612701)).toBeLessThan(5e-6);
    expect(Math.abs(END_CORRECTION_UNFLANGED - limit)).toBeLessThan(5e-5);
  });

  it.each(TABLE)('integrals at ka = %f give |R| = %f, l/a = %f', (ka, magnitude, correction) => {
    expect(Math.abs(magnitudeLevineSchwinger(ka) - magnitude)).toBeLessThan(1e-5);
    expect(Math.abs(correctionLevineSchwinger(ka) - correction)).toBeLessThan(1e-5);
  });

  it.each(TABLE)('fit at ka = %f lies near |R| = %f, l/a = %f', (ka, magnitude, correction) => {
    const fitted = reflectionUnflanged(ka);
    expect(Math.abs(fitted.magnitude - magnitude)).toBeLessThan(0.0025);
    expect(Math.abs(fitted.correction - correction)).toBeLessThan(0.004);
  });
});

describe('flanged end', () => {
  it('tends to the flanged limit, below the piston in a baffle 8/(3 pi)', () => {
    expect(reflectionFlanged(0).correction).toBeCloseTo(END_CORRECTION_FLANGED, 3);
    expect(END_CORRECTION_FLANGED).toBeLessThan(8 / (3 * Math.PI));
  });

  // Norris & Sheng 1989, fit from memory.
  it.each([
    [0.1, 0.9904, 0.8167],
    [0.5, 0.8204, 0.7058],
    [1.0, 0.5548, 0.486],
  ])('fit at ka = %f gives |R| = %f, l/a = %f', (ka, magnitude, correction) => {
    expect(reflectionFlanged(ka).magnitude).toBeCloseTo(magnitude, 4);
    expect(reflectionFlanged(ka).correction).toBeCloseTo(correction, 4);
  });

  it('radiates as half a sphere at low frequency: |R| = 1 - ka^2', () => {
    const ka = 0.05;
    expect((1 - reflectionFlanged(ka).magnitude) / ka ** 2).toBeCloseTo(1, 1);
  });
});

it.each([-0.1, 1.6, Number.NaN])('refuses ka = %f', (ka) => {
  expect(() => reflectionUnflanged(ka)).toThrow(RangeError);
  expect(() => reflectionFlanged(ka)).toThrow(RangeError);
});
