/** Quantiles of Student's t against a printed table and a library. */
import { expect, test } from 'vitest';
import { studentT } from '../../sim/decision/studentT.ts';

/** Freedom, t for 95 %, t for 99 %. Source: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.2. */
const PRINTED = [
  [1, 12.706, 63.657],
  [2, 4.303, 9.925],
  [3, 3.182, 5.841],
  [4, 2.776, 4.604],
  [5, 2.571, 4.032],
  [10, 2.228, 3.169],
  [20, 2.086, 2.845],
  [30, 2.042, 2.75],
  [100, 1.984, 2.626],
] as const;

test.each(PRINTED)('freedom %i as printed', (freedom, at95, at99) => {
  expect(Math.abs(studentT(0.95, freedom) - at95)).toBeLessThan(0.5001e-3);
  expect(Math.abs(studentT(0.99, freedom) - at99)).toBeLessThan(0.5001e-3);
});

/** Source: mpmath 1.3.0, root of the regularised incomplete beta function. */
const LIBRARY = [
  [1, 12.706204736174705],
  [2, 4.302652729749464],
  [3, 3.1824463052837095],
  [5, 2.5705818356363155],
  [10, 2.228138851986275],
  [30, 2.042272456301238],
  [120, 1.979930405082441],
] as const;

// The rounding of the squared cosine counts n / 2 times, and the tail is flat.
test.each(LIBRARY)('freedom %i as a library gives it', (freedom, t) => {
  expect(Math.abs(studentT(0.95, freedom) / t - 1)).toBeLessThan(1e-13);
});
