/**
 * What lines want of complex numbers beyond sums, products and quotients, which complex.js has in plain
 * arithmetic; its own functions call those of the runtime, whose last bit is free.
 *   cosh(x + i y) = cosh x cos y + i sinh x sin y,  sinh(x + i y) = sinh x cos y + i cosh x sin y
 *   sqrt(z) = (a + i y / (2 a)),  a = sqrt((|z| + x) / 2)
 * Source: any table of functions.
 */
import Complex from 'complex.js';
import { cos, sin } from '../elementary/angles.ts';
import { exp, expm1, hypot } from '../elementary/powers.ts';

export const ONE = new Complex(1, 0);
export const ZERO = new Complex(0, 0);

export const real = (x: number): Complex => new Complex(x, 0);
export const imaginary = (y: number): Complex => new Complex(0, y);

/** e^(i phase). */
export function turn(phase: number): Complex {
  return new Complex(cos(phase), sin(phase));
}

/** Magnitude. */
export function magnitude({ re, im }: Complex): number {
  return hypot(re, im);
}

/** Hyperbolic cosine and sine at once. */
export function coshSinh({ re, im }: Complex): [cosh: Complex, sinh: Complex] {
  const [c, s] = [cos(im), sin(im)];
  const grown = exp(Math.abs(re));
  const cosh = (grown + 1 / grown) / 2;
  // e^x - e^-x = (e^x - 1) (1 + e^-x), without loss of digits near zero.
  const sinh = (Math.sign(re) * expm1(Math.abs(re)) * (1 + 1 / grown)) / 2;
  return [new Complex(cosh * c, sinh * s), new Complex(sinh * c, cosh * s)];
}

/** The square root whose real part is not negative. */
export function squareRoot(z: Complex): Complex {
  const size = magnitude(z);
  const larger = Math.sqrt((size + Math.abs(z.re)) / 2);
  if (larger === 0) return ZERO;
  const smaller = Math.abs(z.im) / (2 * larger);
  const sign = z.im < 0 ? -1 : 1;
  return z.re >= 0 ? new Complex(larger, sign * smaller) : new Complex(smaller, sign * larger);
}
