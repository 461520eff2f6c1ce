/** Every construct of the language of a step once, for the tests of its translation. */
import {
  abs,
  all,
  any,
  type B,
  DOUBLE,
  exp2,
  type I,
  K,
  log2,
  log2Quick,
  lookup,
  lookupLane,
  max,
  min,
  N,
  type R,
  real,
  scatterLane,
  sqrt,
  truncated,
  type V,
  X,
} from '../../sim/step/lanes.ts';

const FIRST: I = 4;
const ROWS: I = 2 * FIRST + 1;
const HALF: R = 1 / 2;
const SLOPE: R = HALF * Math.PI;

let total: R = 0;
let quotient: V = 0;
let calls: I = 0;
let busy: B = false;
let started: boolean = false;

function limited(a: V, b: V): V {
  const c = HALF * (a + b);
  const m = 2 * min(abs(a), abs(b));
  return a * b > 0 ? (abs(c) < m ? c : c < 0 ? -m : m) : 0;
}

/** Two results: the root returned, the quotient in a variable. */
function divided(a: V, b: V): V {
  quotient = a / b;
  return sqrt(abs(quotient));
}

function early(a: V, common: R): V {
  if (common < 0) return -a;
  if (common < 1) return a - common;
  return common * a;
}

/** Powers to base two: places 72 and 73. */
export function powers(): void {
  X[72] = log2(X[0]);
  X[73] = exp2(X[1]);
}

/** Where lanes speak to each other: places 70 and 71. */
export function joined(): void {
  const negative: B = X[0] < 0;
  X[70] = any(negative) ? 1 : -1;
  if (all(negative)) X[71] = 2;
  else X[71] = 0;
}

/** Powers, logarithms, tables, masks: place 40 on from places 0 to 3. */
export function choices(): void {
  const a: V = X[0];
  const b: V = X[1];
  const x: V = abs(X[2]) + 0.001;
  X[40] = limited(a, b);
  X[41] = exp2(0.7 * log2(x));
  X[42] = log2Quick(x);
  const share: V = min(abs(X[3]), 6.5);
  X[43] = lookup(K[0] > 0 ? 8 : 9, share);
  X[44] = lookupLane(FIRST, 2, share);
  busy = (a < b && !(b > 1)) || a === b;
  X[45] = busy ? max(a, -b) : (a > 0 && b > 0 ? 1 : 0) - HALF;
  scatterLane(50, 3, share, a + b, busy || a > 0.3);
  X[46] = busy && a > 0 ? 1 : 0;
  X[47] = early(divided(a, b), K[1]);
  X[48] = quotient;
}

/** Loops, integers, reals of all lanes, variables: places 80 on and N, K. */
export function counts(rows: I): R {
  total = 0;
  calls += 1;
  for (let i: I = 0; i < rows; i++) {
    if (i === 3) continue;
    const at = 80 + i;
    X[at] = X[i] * real(i) + SLOPE;
    X[at] -= i > 5 ? K[1] : HALF;
    X[at + 1 - FIRST + 4] *= 0.25;
    K[100 + i] = sqrt(abs(K[i])) + min(K[i], 0.5) - max(K[i], 0.25);
    total += K[100 + i] / 3;
    N[i] = truncated(K[i] * 100) & 255;
    N[i] += (i << 2) | (i >> 1);
  }
  let k: I = rows;
  while (true) {
    k -= 2;
    if (k < FIRST || !(k !== 5)) break;
  }
  for (let i: I = k; i >= 0; i -= 2) N[20 + ROWS + i] = -i * 3;
  started = !started && DOUBLE;
  N[64] = started ? calls : -calls;
  let same: V = 1;
  for (let i: I = 2; i >= 0; i--) same += X[i] * X[i + 1];
  X[79] = same;
  return total;
}
