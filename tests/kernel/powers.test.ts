/**
 * log2 and exp2 of a step against the platform's own, and the cubic of the coarse logarithm against
 * the best one that Remez' exchange finds (least greatest error; the error at its five extremes is
 * then equal and of changing sign).
 */
import { Matrix, solve } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { exp2, log2, log2Quick, rounded } from '../../sim/step/lanes.ts';

const SAMPLES = 200_000;
const LOW = Math.SQRT1_2;
const HIGH = Math.SQRT2;

/** Evenly spaced numbers. */
const between = (low: number, high: number, count = SAMPLES) =>
  Array.from({ length: count + 1 }, (_, i) => low + ((high - low) * i) / count);

const greatest = (values: readonly number[]) => values.reduce((a, b) => Math.max(a, b), 0);

describe('powers to base two', () => {
  it('log2 is right to 2e-16 + 4e-16 |log2 x|', () => {
    const errors = between(-60, 60).map((y) => {
      const exact = Math.log2(2 ** y);
      return Math.abs(log2(2 ** y) - exact) / (2e-16 + 4e-16 * Math.abs(exact));
    });
    expect(greatest(errors)).toBeLessThan(1);
    expect([1, 2, 0.25, 2 ** 900].map(log2)).toEqual([0, 1, -2, 900]);
  });

  it('exp2 is right to 6e-16 of itself', () => {
    const errors = between(-60, 60).map((y) => Math.abs(exp2(y) / 2 ** y - 1));
    expect(greatest(errors)).toBeLessThan(6e-16);
    expect([0, 1, -3, 900, -900].map(exp2)).toEqual([1, 2, 0.125, 2 ** 900, 2 ** -900]);
  });

  it('rounds halves to even', () => {
    expect([0.5, 1.5, -2.5, 2.4999].map(rounded)).toEqual([0, 2, -2, 2]);
  });

  it('the coarse logarithm is the best cubic', () => {
    const { coefficients, error } = bestCubic();
    const cubic = (x: number) => coefficients.reduceRight((sum, c) => sum * x + c, 0);
    const mantissas = between(LOW, HIGH - 1e-5, 1000);
    expect(greatest(mantissas.map((x) => Math.abs(log2Quick(x) - cubic(x))))).toBeLessThan(1e-12);
    expect(error).toBeLessThan(6.4e-4);
    const errors = between(-30, 30).map((y) => Math.abs(log2Quick(2 ** y) - y));
    expect(greatest(errors)).toBeLessThan(6.4e-4);
    expect(greatest(errors)).toBeGreaterThan(0.99 * error);
  });
});

/** Remez' exchange from Chebyshev's extremes. */
function bestCubic(): { coefficients: number[]; error: number } {
  const places = between(LOW, HIGH);
  const middle = 0.5 * (LOW + HIGH);
  let extremes = [4, 3, 2, 1, 0].map((i) => middle + (HIGH - middle) * Math.cos((Math.PI * i) / 4));
  for (let round = 0; ; round++) {
    const rows = extremes.map((x, i) => [1, x, x * x, x ** 3, (-1) ** i]);
    const found = solve(new Matrix(rows), Matrix.columnVector(extremes.map(Math.log2))).to1DArray();
    const coefficients = found.slice(0, 4);
    const off = (x: number) => coefficients.reduceRight((sum, c) => sum * x + c, 0) - Math.log2(x);
    if (round === 8) return { coefficients, error: Math.abs(found[4]!) };
    const errors = places.map(off);
    extremes = places.filter((_, i) => {
      const [a, b, c] = [errors[i - 1], errors[i]!, errors[i + 1]];
      return a === undefined || c === undefined || (b - a) * (c - b) < 0;
    });
  }
}
