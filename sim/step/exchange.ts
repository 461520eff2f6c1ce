/**
 * Flow between a duct end and gas at rest through a throat: open ends, valves, pipes into volumes.
 *
 * Out of the duct: the gas accelerates from the end's own stagnation state to the reservoir's pressure
 * in the throat, or to the speed of sound there; continuity between end and throat,
 *
 *   v X = phi D sqrt(2/(gamma - 1) (c0^2 - B c^2)),   X = rho'/rho,   c0^2 = c'^2 + (gamma - 1)/2 v^2,
 *   B = (p_res / p)^((gamma - 1)/gamma),   D = (p_res / p)^(1/gamma).
 *
 * Into the duct: the gas accelerates from the reservoir to the throat, whose pressure is that of the
 * duct's end (no recovery behind the throat), or chokes; then A rho v = m, h + v^2/2 = h_res, at most
 * at the speed of sound,
 *
 *   v = w y,   y = 1 - v^2/V^2,   w^2 = phi^2 V^2 (1 - tau)/tau^2,   V^2 = 2 h-like = 2 gamma R T/(gamma - 1),
 *   tau = (p'/p_res)^((gamma - 1)/gamma).
 *
 * phi: effective throat area over the end's. Both are closed by the wave that runs into the duct
 * (ends.ts) and solved for v by Newton's method from the last step's v. Whatever is left of the search,
 * what leaves one side comes to the other.
 * Source: Benson (1982), The Thermodynamics and Gas Dynamics of Internal-Combustion Engines, vol. 1,
 * ch. 4 (from memory).
 */

import { endArea, writeEnd, writeOut } from './ends.ts';
import {
  all,
  any,
  type B,
  exp2,
  type I,
  log2,
  max,
  min,
  N,
  type R,
  sqrt,
  type V,
  X,
} from './lanes.ts';
import {
  A_C,
  A_GAMMA,
  A_P,
  A_V,
  E_X,
  ITERATIONS,
  Q_BURNED,
  Q_FUEL,
  Q_GAMMA,
  Q_H,
  Q_P,
  Q_RT,
} from './layout.ts';

/** A throat this close to the end's area is no throat; one below the other share is shut. */
const FULL: R = 1e-6;
const SHUT: R = 1e-9;

/**
 * Solves an end against the reservoir at `q`; `root` keeps the velocities found over the share, out and in.
 * `shareIn`, `shareOut`: throat over end area for flow into and out of the duct; above 1 they count as 1.
 */
export function exchange(end: I, q: I, root: I, shareIn: V, shareOut: V): void {
  const a: I = N[end + E_X];
  const open: B = max(shareIn, shareOut) > SHUT;
  const c: V = X[a + A_C];
  const h: V = 0.5 * (X[a + A_GAMMA] - 1);
  if (!any(open)) {
    shutEnd(end, root);
    return;
  }
  // Rest sound speed over c, and the one at which the end would have the reservoir's pressure.
  const rest: V = 1 + (h * X[a + A_V]) / c;
  const ratio: V = log2(X[q + Q_P] / X[a + A_P]);
  const level: V = exp2((h / X[a + A_GAMMA]) * ratio);
  const out: B = level < rest || !open;
  if (any(out)) flowOut(end, root, min(shareOut, 1), rest, ratio, level, out);
  if (!all(out)) flowIn(end, q, root + 1, min(shareIn, 1), rest, ratio, level, !out);
  X[root] = open ? X[root] : 0;
  X[root + 1] = open ? X[root + 1] : 0;
}

/** Brings the arriving gas to rest; the next opening starts its search anew. */
export function shutEnd(end: I, root: I): void {
  const none: V = 0 * X[root];
  writeOut(end, none === 0, none);
  X[root] = none;
  X[root + 1] = none;
}

/** Speed out of the throat's law and its slope by v, as squares: F(v) = (v X)^2 - (throat)^2. */
let outF: V = 0;
let outSlope: V = 0;

function flowOut(end: I, root: I, share: V, rest: V, ratio: V, level: V, where: B): void {
  const a: I = N[end + E_X];
  const c: V = X[a + A_C];
  const gamma: V = X[a + A_GAMMA];
  const h: V = 0.5 * (gamma - 1);
  const free: V = ((rest - level) * c) / h;
  const sonic: V = (2 / (gamma + 1)) * c * rest;
  const top: V = max(min(free, sonic), 0);
  let v: V = top;
  const full: B = share > 1 - FULL;
  if (!all(full)) {
    const d: V = exp2(ratio / gamma);
    const k: V = (share * share * d * d) / h;
    const back: V = level * level * c * c;
    let guess: V = X[root] * max(share, SHUT);
    if (any(guess <= 0)) {
      outLaw(end, 0 * guess, share, k, back);
      guess = guess > 0 ? guess : sqrt(max(-outF, 0)) / (rest > 0.1 ? exp2(log2(rest) / h) : 1e-5);
    }
    guess = min(max(guess, 1e-12 * top), top);
    for (let i: I = 0; i < N[ITERATIONS]; i++) {
      outLaw(end, guess, share, k, back);
      guess = min(max(guess - outF / outSlope, 0.1 * guess), top);
    }
    v = full ? top : guess;
  }
  X[root] = where ? v / max(share, SHUT) : X[root];
  // Faster than sound nothing outside is felt.
  v = X[a + A_V] >= c ? X[a + A_V] : v;
  v = share > SHUT ? v : 0;
  writeOut(end, where, v);
}

function outLaw(end: I, v: V, share: V, k: V, back: V): void {
  const a: I = N[end + E_X];
  const gamma: V = X[a + A_GAMMA];
  const c: V = X[a + A_C];
  const g: V = gamma - 1;
  const ce: V = max(c + 0.5 * g * (X[a + A_V] - v), 0.1 * c);
  const x: V = exp2((2 / g) * log2(ce / c));
  const c0: V = ce * ce + 0.5 * g * v * v;
  const flow: V = v * v * x * x;
  const flowSlope: V = 2 * v * x * x * (1 - v / ce);
  outF = flow - k * (c0 - back);
  outSlope = flowSlope + k * g * (ce - v);
  const s: V = 2 / (gamma + 1);
  const choked: B = back < s * c0;
  if (any(choked)) {
    const throat: V = share * share * exp2((2 / g) * log2((s * c0) / (c * c))) * s;
    const most: V = throat * c0;
    outF = choked ? flow - most : outF;
    outSlope = choked ? flowSlope + throat * (1 + 2 / g) * g * (ce - v) : outSlope;
  }
}

/** F(v) = v^2 - w^2 y^2 and its slope. */
export let inF: V = 0;
export let inSlope: V = 0;

function flowIn(end: I, q: I, root: I, share: V, rest: V, ratio: V, level: V, where: B): void {
  const a: I = N[end + E_X];
  const c: V = X[a + A_C];
  const gamma: V = X[a + A_GAMMA];
  const h: V = 0.5 * (gamma - 1);
  const gammaQ: V = X[q + Q_GAMMA];
  const g: V = (gammaQ - 1) / gammaQ;
  const square: V = (2 * X[q + Q_RT]) / g;
  const free: V = max(((level - rest) * c) / h, 0);
  const top: V = min(free, sqrt((square * (gammaQ - 1)) / (gammaQ + 1)));
  const some: V = max(share, SHUT);
  let v: V = X[root] * some;
  if (any(v <= 0)) {
    inLaw(end, q, 0 * v, share, ratio, square, g, 0);
    v = v > 0 ? v : sqrt(max(-inF, 0));
  }
  v = min(max(v, 1e-12 * top), top);
  for (let i: I = 0; i < N[ITERATIONS]; i++) {
    inLaw(end, q, v, share, ratio, square, g, 0);
    v = min(max(v - inF / inSlope, 0.1 * v), top);
  }
  X[root] = where ? v / some : X[root];
  writeIn(end, q, where, share > SHUT ? v : 0);
}

/** Where the mask is set, lets gas of the reservoir in at velocity v. */
export function writeIn(end: I, q: I, where: B, v: V): void {
  const a: I = N[end + E_X];
  const c: V = X[a + A_C];
  const gamma: V = X[a + A_GAMMA];
  const h: V = 0.5 * (gamma - 1);
  const g: V = (X[q + Q_GAMMA] - 1) / X[q + Q_GAMMA];
  const ce: V = c + h * (X[a + A_V] + v);
  const p: V = X[a + A_P] * exp2((gamma / h) * log2(ce / c));
  const rho: V = p / (X[q + Q_RT] - 0.5 * v * v * g);
  const energy: V = -rho * v * endArea(end) * X[q + Q_H];
  writeEnd(end, where, rho, -v, p, X[q + Q_BURNED], X[q + Q_FUEL], energy);
}

/**
 * Finds inF and inSlope. `ratio`: log2 of the reservoir's pressure over the arriving gas's; `fall`: how
 * much ln of the reservoir's pressure falls by v [s/m].
 */
export function inLaw(end: I, q: I, v: V, share: V, ratio: V, square: V, g: V, fall: V): void {
  const a: I = N[end + E_X];
  const c: V = X[a + A_C];
  const gamma: V = X[a + A_GAMMA];
  const gammaQ: V = X[q + Q_GAMMA];
  const h: V = 0.5 * (gamma - 1);
  const ce: V = max(c + h * (X[a + A_V] + v), 0.1 * c);
  const k: V = (g * gamma) / h;
  const tau: V = exp2(k * log2(ce / c) - g * ratio);
  const sonic: V = 2 / (gammaQ + 1);
  const at: V = max(tau, sonic);
  const per: V = 1 / (at * at);
  const s2: V = share * share * square;
  let w: V = s2 * (1 - at) * per;
  const rise: V = (k * h) / ce + g * fall;
  let wSlope: V = -s2 * (2 - at) * per * rise;
  const choked: B = tau < sonic;
  if (any(choked)) {
    // The throat keeps its flow while the end's density falls on.
    const thinner: V = exp2((2 / g) * log2(sonic / tau));
    w = choked ? w * thinner : w;
    wSlope = choked ? (-2 / g) * rise * w : wSlope;
  }
  const y: V = 1 - (v * v) / square;
  inF = v * v - w * y * y;
  inSlope = 2 * v + (4 * w * y * v) / square - y * y * wSlope;
}
