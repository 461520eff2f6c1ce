/**
 * Powers, exponentials and logarithms of the same bits wherever the program runs. A language leaves the
 * last bit of its own to whoever builds it, and that has changed between versions of one runtime; the
 * series of a step (step/powers.ts) want nothing but sums, products and quotients.
 *   x^y = 2^(y log2 x), e^x = 2^(x / ln 2), ln x = ln 2 log2 x
 * Relative errors stay below 1e-15 (1 + |logarithm of the result|).
 * Source of expm1 and log1p: Higham, N. J., Accuracy and Stability of Numerical Algorithms, 2nd ed.,
 * SIAM 2002, section 1.14.1: the errors of numerator and denominator cancel.
 */
import { exp2, log2 } from '../step/powers.ts';

const LOG10_2 = Math.LN2 * Math.LOG10E;

/** Beyond this 2^y is zero, or no number that is computed with. */
const MOST = 1020;

export const square = (x: number): number => x * x;

export const cube = (x: number): number => x * x * x;

/** x to the power y, x >= 0. */
export function power(x: number, y: number): number {
  return twoTo(y * logTwo(x));
}

export function exp(x: number): number {
  return twoTo(x * Math.LOG2E);
}

/** Ten to the power x. */
export function tenTo(x: number): number {
  return twoTo(x / LOG10_2);
}

/** Natural logarithm of x > 0. */
export function log(x: number): number {
  return Math.LN2 * logTwo(x);
}

export function log10(x: number): number {
  return LOG10_2 * logTwo(x);
}

/** e^x - 1, to all digits near zero too. */
export function expm1(x: number): number {
  const e = exp(x);
  if (e === 1) return x;
  return e < 1e-300 ? -1 : ((e - 1) * x) / log(e);
}

/** ln(1 + x), x > -1, to all digits near zero too. */
export function log1p(x: number): number {
  const whole = 1 + x;
  return whole === 1 ? x : (log(whole) * x) / (whole - 1);
}

/** Cube root of x >= 0, by a step of Newton's from the power. */
export function cubeRoot(x: number): number {
  if (x === 0) return 0;
  const near = twoTo(log2(x) / 3);
  return near - (cube(near) - x) / (3 * near * near);
}

/** Length of what has these parts at right angles. */
export function hypot(x: number, y: number, z = 0): number {
  return Math.sqrt(x * x + y * y + z * z);
}

/** Logarithm to base two; of zero and below, as a language's own has it. */
function logTwo(x: number): number {
  if (x > 0) return log2(x);
  return x === 0 ? Number.NEGATIVE_INFINITY : Number.NaN;
}

function twoTo(y: number): number {
  if (Math.abs(y) < MOST) return exp2(y);
  return y < 0 ? 0 : y * Number.MAX_VALUE;
}
