/**
 * The open end of a pipe with the air in front of it: flare and outside air move as one inertance and
 * radiate, so that the pressure that the bore's end meets is not the still air's but
 *
 *   p_m = p_0 + p,   u = w + p / r + C dp/dt,   rho_0 l dw/dt = p   (loss/mouthRadiation.ts)
 *
 * u: velocity out of the bore at the still air's density. A step of time links both by a straight line,
 * p = slope u + offset (backward difference of C, trapezoidal rule of w), so it is passive at any step.
 * Out of the bore the gas blows a jet of the bore’s area at p_m (bounds: tests/handbook/mouthJet.ts); into
 * it the still air accelerates from p_m as through a throat of the entry’s effective area (exchange.ts).
 * Solved by Newton's method on the velocity, as exchange.ts. Source: of the impedance that of
 * loss/mouthRadiation.ts, of the flow that of exchange.ts.
 */

import { soundBehind, writeOut } from './ends.ts';
import { inF, inLaw, inSlope, writeIn } from './exchange.ts';
import {
  all,
  any,
  type B,
  exp2,
  type I,
  K,
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
  A_RHO,
  A_V,
  DT,
  E_X,
  ITERATIONS,
  M_COMPLIANCE,
  M_INERTANCE,
  M_LEAK,
  M_P,
  M_ROOT,
  M_SHARE,
  M_U,
  Q_GAMMA,
  Q_P,
  Q_RT,
} from './layout.ts';

/** Least pressure of a mouth with the bore at rest, over the still air's, that a logarithm is taken of. */
const LEAST: R = 0.01;

/** `slots`: what the mouth remembers; `k`: its constants. */
export function mouth(end: I, q: I, slots: I, k: I): void {
  const a: I = N[end + E_X];
  const dt: V = X[DT];
  const c: V = X[a + A_C];
  const h: V = 0.5 * (X[a + A_GAMMA] - 1);
  const moved: V = 0.5 * dt * (1 / K[k + M_INERTANCE]);
  const stored: V = K[k + M_COMPLIANCE] / dt;
  const stiff: V = 1 / (stored + K[k + M_LEAK] + moved);
  const offset: V = stiff * ((stored - moved) * X[slots + M_P] - X[slots + M_U]);
  // By the bore's own velocity: the outside air's is thinner or denser gas's.
  const slope: V = (stiff * X[a + A_RHO] * X[q + Q_RT]) / X[q + Q_P];
  const still: V = X[q + Q_P] + offset;

  const rest: V = 1 + (h * X[a + A_V]) / c;
  // The pressure it would have with the bore at rest can be below nothing: the air outside runs on.
  const least: V = max(still, LEAST * X[q + Q_P]);
  const level: V = exp2((h / X[a + A_GAMMA]) * log2(least / X[a + A_P]));
  const out: B = level < rest;
  const free: V = ((rest - level) * c) / h;
  let u: V = 0 * rest;
  if (any(out)) {
    const v: V = leaving(end, still, slope, max(free, 0), X[slots + M_ROOT]);
    X[slots + M_ROOT] = out ? v : X[slots + M_ROOT];
    u = out ? v : u;
    writeOut(end, out, v);
  }
  if (!all(out)) {
    const share: V = K[k + M_SHARE] + 0 * rest;
    const v: V = entering(end, q, share, still, slope, max(-free, 0), X[slots + M_ROOT + 1]);
    X[slots + M_ROOT + 1] = out ? X[slots + M_ROOT + 1] : v;
    u = out ? u : -v;
    writeIn(end, q, !out, v);
  }
  const p: V = slope * u + offset;
  X[slots + M_U] += moved * (X[slots + M_P] + p);
  X[slots + M_P] = p;
}

/** Velocity out: the wave's pressure is the mouth's, still + slope v. */
function leaving(end: I, still: V, slope: V, free: V, last: V): V {
  const a: I = N[end + E_X];
  const c: V = X[a + A_C];
  const gamma: V = X[a + A_GAMMA];
  const h: V = 0.5 * (gamma - 1);
  const top: V = min(free, (2 / (gamma + 1)) * (c + h * X[a + A_V]));
  let v: V = min(last, top);
  for (let i: I = 0; i < N[ITERATIONS]; i++) {
    const ce: V = soundBehind(end, v);
    const p: V = X[a + A_P] * exp2((gamma / h) * log2(ce / c));
    v = min(max(v + (p - still - slope * v) / (slope + (gamma * p) / ce), 0), top);
  }
  return v;
}

/** Velocity in. */
function entering(end: I, q: I, share: V, still: V, slope: V, free: V, last: V): V {
  const a: I = N[end + E_X];
  const gammaQ: V = X[q + Q_GAMMA];
  const g: V = (gammaQ - 1) / gammaQ;
  const square: V = (2 * X[q + Q_RT]) / g;
  const top: V = min(free, sqrt((square * (gammaQ - 1)) / (gammaQ + 1)));
  let v: V = min(max(last, 0.01 * top), top);
  for (let i: I = 0; i < N[ITERATIONS]; i++) {
    const p: V = still - slope * v;
    inLaw(end, q, v, share, log2(p / X[a + A_P]), square, g, slope / p);
    v = min(max(v - inF / inSlope, 0.1 * v), top);
  }
  return v;
}
