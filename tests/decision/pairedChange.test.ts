/** Mean of paired differences and its interval, by hand and against a worked example. */
import { expect, test } from 'vitest';
import { pairedChange } from '../../sim/decision/pairedChange.ts';

test('four differences by hand: mean 2, deviation sqrt(10 / 3), t = 3.182', () => {
  const { mean, open } = pairedChange([0, 1, 3, 4], 1e-6)!;
  expect(mean).toBe(2);
  expect(Math.abs(open - (3.182 * Math.sqrt(10 / 3)) / 2)).toBeLessThan(5e-4);
});

test('the sleep of ten patients under two drugs: 1.58 h more, between 0.70 and 2.46 h', () => {
  // Source: Student (W. S. Gosset), Biometrika 6 (1908) 1, as R's data set `sleep` holds it; interval from memory of its help page.
  const more = [1.2, 2.4, 1.3, 1.3, 0, 1, 1.8, 0.8, 4.6, 1.4];
  const { mean, open } = pairedChange(more, 1e-6)!;
  expect(mean).toBeCloseTo(1.58, 10);
  expect(mean - open).toBeCloseTo(0.7001142, 6);
  expect(mean + open).toBeCloseTo(2.4598858, 6);
});

test('differences that happen to be alike are no surer than single points are', () => {
  const { mean, open } = pairedChange([1, 1, 1, 1], 0.2)!;
  expect(mean).toBe(1);
  expect(Math.abs(open - (3.182 * 0.2 * Math.SQRT2) / 2)).toBeLessThan(1e-4);
});

test('speeds that failed are left out, and of a single one nothing is said', () => {
  expect(pairedChange([0, undefined, 1, 3, 4], 1e-6)!.mean).toBe(2);
  expect(pairedChange([2, undefined], 1e-6)).toBeUndefined();
});
