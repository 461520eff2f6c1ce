/**
 * Elementary functions that are the same everywhere, against those of the runtime, which are good to a
 * unit or two of the last place.
 */
import { describe, expect, test } from 'vitest';
import * as angles from '../../sim/elementary/angles.ts';
import * as powers from '../../sim/elementary/powers.ts';

const between = (from: number, to: number) =>
  Array.from({ length: 2001 }, (_, i) => from + ((to - from) * i) / 2000);
const decades = (from: number, to: number) => between(from, to).map((x) => 10 ** x);

/** Name, ours, the runtime's, where, and what the error may be [1e-16], of the value unless `absolute`. */
const ONE: [string, (x: number) => number, (x: number) => number, number[], number][] = [
  ['exp', powers.exp, Math.exp, between(-3, 3), 15],
  ['log', powers.log, Math.log, [...decades(-8, -0.3), ...decades(0.3, 8)], 10],
  ['log10', powers.log10, Math.log10, [...decades(-8, -0.3), ...decades(0.3, 8)], 10],
  ['tenTo', powers.tenTo, (x) => 10 ** x, between(-1, 1), 15],
  ['expm1', powers.expm1, Math.expm1, [...decades(-18, 0.5), ...between(-3, -0.01)], 25],
  ['log1p', powers.log1p, Math.log1p, [...decades(-18, 3), ...between(-0.9, -0.01)], 15],
  ['cubeRoot', powers.cubeRoot, Math.cbrt, decades(-20, 20), 5],
];

test.each(ONE)('%s', (_, ours, own, places, most) => {
  for (const x of places) {
    expect(Math.abs(ours(x) / own(x) - 1), `at ${x}`).toBeLessThan(most * 1e-16);
  }
});

const ROUND: [string, (x: number) => number, (x: number) => number, number[]][] = [
  ['sin', angles.sin, Math.sin, between(-20, 20)],
  ['cos', angles.cos, Math.cos, between(-20, 20)],
  ['tan', angles.tan, Math.tan, between(-0.78, 0.78)],
  ['atan', angles.atan, Math.atan, [...between(-3, 3), ...decades(-9, 9)]],
  ['asin', angles.asin, Math.asin, between(-1, 1)],
  ['acos', angles.acos, Math.acos, between(-1, 1)],
];

test.each(ROUND)('%s', (_, ours, own, places) => {
  for (const x of places) expect(Math.abs(ours(x) - own(x)), `at ${x}`).toBeLessThan(9e-16);
});

test.each(ROUND.filter(([name]) => !/cos/.test(name)))('%s, small', (_, ours, own) => {
  for (const x of decades(-12, -2)) expect(Math.abs(ours(x) / own(x) - 1)).toBeLessThan(9e-16);
});

test('atan2 in every quadrant', () => {
  for (const y of [-2, -0.1, 0, 0.1, 2])
    for (const x of [-3, -0.2, 0, 0.2, 3]) {
      expect(angles.atan2(y, x)).toBeCloseTo(Math.atan2(y, x), 14);
    }
});

test('power', () => {
  for (const x of decades(-4, 4))
    for (const y of [-2, -0.8, -0.2, 0.3, 1.11, 1.75, 2.4]) {
      expect(Math.abs(powers.power(x, y) / x ** y - 1)).toBeLessThan(5e-15);
    }
});

describe('at the ends', () => {
  test.each([
    ['power of zero', powers.power(0, 1.11), 0],
    ['power of less', powers.power(-1, 0.5), Number.NaN],
    ['exp of much', powers.exp(1e4), Number.POSITIVE_INFINITY],
    ['exp of minus much', powers.exp(-1e4), 0],
    ['exp of no number', powers.exp(Number.NaN), Number.NaN],
    ['expm1 of minus much', powers.expm1(-1e4), -1],
    ['log of zero', powers.log(0), Number.NEGATIVE_INFINITY],
    ['log of no number', powers.log(Number.NaN), Number.NaN],
    ['cube root of zero', powers.cubeRoot(0), 0],
    ['hypot', powers.hypot(3, 4), 5],
    ['hypot of three', powers.hypot(2, 3, 6), 7],
    ['sin of zero', angles.sin(0), 0],
    ['atan2 of nothing', angles.atan2(0, 0), 0],
  ])('%s', (_, found, expected) => expect(found).toBe(expected));
});
