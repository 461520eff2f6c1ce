/**
 * Powers and logarithms to base two by series; x = m 2^e, m about one.
 *   log2 x = e + (2 / ln 2) atanh s, s = (m - 1) / (m + 1)
 *   2^y = 2^k e^f, k the nearest integer, f = (y - k) ln 2
 * Source: the power series of atanh and exp, any table of functions.
 */
import { exponent, mantissa, type R, rounded, scaled, type V } from './builtins.ts';

const LN2: R = Math.LN2;
const TWO_BY_LN2: R = 2 / LN2;

/** Logarithm to base two of x > 0, normal. Absolute error < 2e-16 + 4e-16 |log2 x|. */
export function log2(x: V): V {
  const m = mantissa(x);
  const s = (m - 1) / (m + 1);
  const q = s * s;
  const high = 1 / 11 + q * (1 / 13 + q * (1 / 15 + q * (1 / 17 + q * (1 / 19))));
  const series = 1 + q * (1 / 3 + q * (1 / 5 + q * (1 / 7 + q * (1 / 9 + q * high))));
  return exponent(x) + TWO_BY_LN2 * s * series;
}

/** Two to the power y, |y| < 1020 (f32: 125). Relative error < 4e-16. */
export function exp2(y: V): V {
  const k = rounded(y);
  const f = (y - k) * LN2;
  const high =
    1 / 40320 + f * (1 / 362880 + f * (1 / 3628800 + f * (1 / 39916800 + f * (1 / 479001600))));
  const middle = 1 / 24 + f * (1 / 120 + f * (1 / 720 + f * (1 / 5040 + f * high)));
  return scaled(1 + f * (1 + f * (1 / 2 + f * (1 / 6 + f * middle))), k);
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
