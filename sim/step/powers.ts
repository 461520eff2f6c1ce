/**
 * Powers and logarithms to base two by series; x = m 2^e, m about one.
 *   log2 x = e + (2 / ln 2) atanh s, s = (m - 1) / (m + 1)
 *   2^y = 2^k e^f, k the nearest integer, f = (y - k) ln 2
 * The series are summed in pairs and fours, which a processor works out side by side.
 * Source: the power series of atanh and exp, any table of functions.
 */
import { DOUBLE, exponent, mantissa, type R, rounded, scaled, type V } from './builtins.ts';

const LN2: R = Math.LN2;
const TWO_BY_LN2: R = 2 / LN2;

/**
 * Logarithm to base two of x > 0, normal. Absolute error < 2e-16 + 4e-16 |log2 x|
 * (f32: 2e-7 + 2e-7 |log2 x|).
 */
export function log2(x: V): V {
  const m = mantissa(x);
  const s = (m - 1) / (m + 1);
  const q = s * s;
  const q2 = q * q;
  const q4 = q2 * q2;
  const low = 1 + q * (1 / 3) + q2 * (1 / 5 + q * (1 / 7));
  const high = 1 / 9 + q * (1 / 11) + q2 * (1 / 13 + q * (1 / 15)) + q4 * (1 / 17 + q * (1 / 19));
  const series: V = DOUBLE ? low + q4 * high : low;
  return exponent(x) + TWO_BY_LN2 * s * series;
}

/** Two to the power y, |y| < 1020 (f32: 125). Relative error < 6e-16 (f32: 3e-7). */
export function exp2(y: V): V {
  const k = rounded(y);
  const f = (y - k) * LN2;
  const f2 = f * f;
  const f4 = f2 * f2;
  const first = 1 + f + f2 * (1 / 2 + f * (1 / 6));
  const second = 1 / 24 + f * (1 / 120) + f2 * (1 / 720 + f * (1 / 5040));
  const third = 1 / 40320 + f * (1 / 362880) + f2 * (1 / 3628800 + f * (1 / 39916800));
  const last: V = DOUBLE ? third + f4 * (1 / 479001600) : 0;
  return scaled(first + f4 * (second + f4 * last), k);
}

/** Best cubic (least greatest error) for log2 on [sqrt(1/2), sqrt(2)]; tests/kernel fits it anew. */
const C0: R = -2.6536207104980596;
const C1: R = 4.310359097095394;
const C2: R = -2.1037500434503804;
const C3: R = 0.447594922918136;

/** Coarse logarithm to base two of x > 0 for friction: |error| < 6.4e-4. */
export function log2Quick(x: V): V {
  const m = mantissa(x);
  return exponent(x) + (C0 + m * (C1 + m * (C2 + m * C3)));
}
