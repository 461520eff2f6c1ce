/** What every target gives the step: types, memory, choices by lane, bits of a real. Here: one lane. */

/** Integer. */
export type I = number;
/** Real common to all lanes. */
export type R = number;
/** Real of a lane. */
export type V = number;
/** Truth of a lane. */
export type B = boolean;

/** Integers of the plan: places, counts, kinds. */
export let N = new Int32Array(0);
/** Reals common to all lanes: geometry, tables, limits. */
export let K = new Float64Array(0);
/** Reals of a lane: states, flows, sums. */
export let X = new Float64Array(0);

export interface Memory {
  N: Int32Array<ArrayBuffer>;
  K: Float64Array<ArrayBuffer>;
  X: Float64Array<ArrayBuffer>;
}

/** Makes this memory the one every step works in. */
export function use(memory: Memory): void {
  N = memory.N;
  K = memory.K;
  X = memory.X;
}

/** Whether reals have 53 bits (f64) and not 24 (f32): shorter series do in the latter. */
export const DOUBLE: boolean = true;

export const sqrt = Math.sqrt;
export const abs = Math.abs;

/** The second if it is less, else the first, also where one is not a number. */
export function min(a: number, b: number): number {
  // biome-ignore lint/complexity/useMathMinMax: the lanes choose so, and the bits are to be theirs.
  return b < a ? b : a;
}

/** The second if it is greater, else the first, also where one is not a number. */
export function max(a: number, b: number): number {
  // biome-ignore lint/complexity/useMathMinMax: the lanes choose so, and the bits are to be theirs.
  return a < b ? b : a;
}

export function any(b: B): boolean {
  return b;
}

export function all(b: B): boolean {
  return b;
}

export function real(i: I): R {
  return i;
}

/** Toward zero; below 2^31. */
export function truncated(x: R): I {
  return x | 0;
}

/** Linear between the entries of a table in K; x >= 0 in steps of the table from `base`. */
export function lookup(base: I, x: V): V {
  const i = x | 0;
  const low = K[base + i]!;
  return low + (x - i) * (K[base + i + 1]! - low);
}

/** The same in a lane's own table in X, whose entries are `stride` apart. */
export function lookupLane(base: I, stride: I, x: V): V {
  const i = x | 0;
  const low = X[base + i * stride]!;
  return low + (x - i) * (X[base + (i + 1) * stride]! - low);
}

/** Where the mask is set: X[base + floor(at) stride] of that lane becomes the value. */
export function scatterLane(base: I, stride: I, at: V, value: V, where: B): void {
  if (where) X[base + (at | 0) * stride] = value;
}

const one = new Float64Array(1);
const words = new Int32Array(one.buffer);
/** High word of sqrt(1/2): mantissas then lie about one, where logarithms are exact and small. */
const ROOT_HALF = 0x3fe6a09e;
/** 1.5 x 2^52: added and taken away again it rounds to an integer. */
const ROUNDER = 6755399441055744;
const MOST = 1023;
const POWERS = new Float64Array(2 * MOST + 1);
POWERS[MOST] = 1;
for (let e = 1; e <= MOST; e++) {
  POWERS[MOST + e] = 2 * POWERS[MOST + e - 1]!;
  POWERS[MOST - e] = 0.5 * POWERS[MOST - e + 1]!;
}

/** e of x = m 2^e with m in [sqrt(1/2), sqrt(2)), to 2^-20; x normal and > 0. */
export function exponent(x: V): V {
  one[0] = x;
  return (words[1]! - ROOT_HALF) >> 20;
}

/** m of x = m 2^e as above. */
export function mantissa(x: V): V {
  return scaled(x, -exponent(x));
}

/** To the nearest integer, halves to the even one; |x| < 2^51 (f32: 2^22). */
export function rounded(x: V): V {
  return x + ROUNDER - ROUNDER;
}

/** x 2^e for an integer e, |e| <= 1023 (f32: 126); argument and result normal. */
export function scaled(x: V, e: V): V {
  return x * POWERS[MOST + e]!;
}
