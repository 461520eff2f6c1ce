/**
 * Sine, cosine, tangent and their inverses of the same bits wherever the program runs (powers.ts says why).
 *   sin r = r - r3/3! + ..., cos r = 1 - r2/2! + ..., |r| <= pi/4 after quarter turns are taken off
 *   atan x = x - x3/3 + ..., after atan x = 2 atan(x / (1 + sqrt(1 + x2))), twice
 * Errors stay below 1e-15 of one, and near zero of the result.
 * Source: the power series, any table of functions; quarter turns in two parts after Cody, W. J. and
 * Waite, W., Software Manual for the Elementary Functions, Prentice-Hall 1980.
 */

/** pi/2 to 24 bits, whose multiples are exact, and the rest. */
const QUARTER = 1.5707963705062866;
const QUARTER_REST = -4.371139000186243e-8;

export function sin(x: number): number {
  return turned(x, 0);
}

export function cos(x: number): number {
  return turned(x, 1);
}

export function tan(x: number): number {
  return sin(x) / cos(x);
}

/** sin of x and so many quarter turns, |x| < 1e6. */
function turned(x: number, more: number): number {
  const turns = Math.round(x / (Math.PI / 2));
  const r = x - turns * QUARTER - turns * QUARTER_REST;
  const quarter = (((turns + more) % 4) + 4) % 4;
  const value = quarter % 2 === 0 ? sine(r) : cosine(r);
  return quarter < 2 ? value : -value;
}

/** Factors of the series from the last: each term is the one before times r2 / divisor, sign changed. */
const SINE = [272, 210, 156, 110, 72, 42, 20, 6];
const COSINE = [306, 240, 182, 132, 90, 56, 30, 12, 2];

const sine = (r: number) => r * alternating(SINE, r * r);
const cosine = (r: number) => alternating(COSINE, r * r);

function alternating(divisors: readonly number[], square: number): number {
  let sum = 1;
  for (const divisor of divisors) sum = 1 - (square / divisor) * sum;
  return sum;
}

export function atan(x: number): number {
  if (Math.abs(x) > 1) return Math.sign(x) * (Math.PI / 2) - atan(1 / x);
  return 4 * arc(halved(halved(x)));
}

const halved = (x: number) => x / (1 + Math.sqrt(1 + x * x));

/** |x| < 0.2. */
function arc(x: number): number {
  let sum = 0;
  for (let odd = 23; odd >= 1; odd -= 2) sum = 1 / odd - x * x * sum;
  return x * sum;
}

/** Angle of the point (x, y) from the x axis, -pi to pi. */
export function atan2(y: number, x: number): number {
  if (x > 0) return atan(y / x);
  if (x < 0) return atan(y / x) + (y < 0 ? -Math.PI : Math.PI);
  return Math.sign(y) * (Math.PI / 2);
}

export function asin(x: number): number {
  return atan2(x, Math.sqrt((1 - x) * (1 + x)));
}

export function acos(x: number): number {
  return atan2(Math.sqrt((1 - x) * (1 + x)), x);
}
