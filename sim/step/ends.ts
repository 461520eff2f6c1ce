/**
 * One end of a duct as a node sees it: the gas that arrives there half a step ahead, velocities
 * counted positive out of the duct, whichever end it is; and the wave that the node sends back.
 *
 * Behind a simple wave that brings the arriving gas (rho, v, p, c) to velocity v' (or sound speed c'):
 *
 *   c' = c + (gamma - 1)/2 (v - v'),   rho' = rho (c'/c)^(2/(gamma - 1)),   p' = p (c'/c)^(2 gamma/(gamma - 1))
 *
 * with gamma frozen at the arriving gas. Source: Riemann invariants, Toro (2009), sec. 3.1.3 (from
 * memory). A compression that is a shock differs from it in the third order of its strength, and
 * within a step an end's pressure changes by a per cent: 1e-8 of volumetric efficiency.
 */

import {
  abs,
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
  A_BURNED,
  A_C,
  A_E,
  A_FUEL,
  A_GAMMA,
  A_P,
  A_RHO,
  A_V,
  BURNED,
  D_VAPOUR,
  DT,
  E_CELL,
  E_FACE,
  E_GHOST,
  E_K,
  E_SIDE,
  E_SUMS,
  E_X,
  F_BURNED,
  F_ENERGY,
  F_FUEL,
  F_MASS,
  FLUX,
  FUEL,
  GAMMA,
  LEFT,
  P,
  RHO,
  SUM_FUEL,
  SUM_IN,
  SUM_OUT,
  SUM_PRESSURE,
  U,
} from './layout.ts';

/** Area of an end [m2]. */
export function endArea(end: I): R {
  return K[N[end + E_K]];
}

/** Takes the arriving gas from the prediction. */
export function readEnd(end: I): void {
  const face: I = N[end + E_FACE];
  // The end of no duct is an echo's, which reads its own record.
  if (face < 0) return;
  const a: I = N[end + E_X];
  const side: I = N[end + E_SIDE];
  const outward: R = side === LEFT ? 1 : -1;
  const at: I = face + side;
  X[a + A_RHO] = X[at];
  X[a + A_V] = outward * X[at + 1];
  X[a + A_P] = X[at + 2];
  X[a + A_E] = X[at + 3];
  X[a + A_BURNED] = X[at + 4];
  X[a + A_FUEL] = X[at + 5];
  const gamma: V = X[N[end + E_CELL] + GAMMA];
  X[a + A_GAMMA] = gamma;
  X[a + A_C] = sqrt((gamma * X[at + 2]) / X[at]);
}

/**
 * Where the mask is set, writes what was found: state (rho, v out of the duct, p, fractions) and
 * energy flow out of the duct [W].
 */
export function writeEnd(
  end: I,
  where: B,
  rho: V,
  v: V,
  p: V,
  burned: V,
  fuel: V,
  energy: V,
): void {
  const a: I = N[end + E_X];
  const area: R = K[N[end + E_K]];
  const flux: V = rho * v;
  const mass: V = flux * area;
  X[a + F_MASS] = where ? mass : X[a + F_MASS];
  X[a + F_ENERGY] = where ? energy : X[a + F_ENERGY];
  X[a + F_BURNED] = where ? mass * burned : X[a + F_BURNED];
  X[a + F_FUEL] = where ? mass * fuel : X[a + F_FUEL];
  const f: I = N[end + E_FACE];
  if (f >= 0) {
    const outward: R = N[end + E_SIDE] === LEFT ? 1 : -1;
    X[f + FLUX] = where ? outward * flux : X[f + FLUX];
    X[f + FLUX + 1] = where ? flux * v + p : X[f + FLUX + 1];
    X[f + FLUX + 2] = where ? outward * energy * K[N[end + E_K] + 1] : X[f + FLUX + 2];
    X[f + FLUX + 3] = where ? outward * flux * burned : X[f + FLUX + 3];
    X[f + FLUX + 4] = where ? outward * flux * fuel : X[f + FLUX + 4];
    const g: I = N[end + E_GHOST];
    X[g + RHO] = where ? rho : X[g + RHO];
    X[g + U] = where ? outward * v : X[g + U];
    X[g + P] = where ? p : X[g + P];
    X[g + BURNED] = where ? burned : X[g + BURNED];
    X[g + FUEL] = where ? fuel : X[g + FUEL];
    const vapour: I = N[end + E_SUMS] + D_VAPOUR;
    X[vapour] = where ? max(X[vapour], abs(fuel)) : X[vapour];
  }
}

/** Adds this step's flow to the end's sums. */
export function tallyEnd(end: I): void {
  const a: I = N[end + E_X];
  const mass: V = X[a + F_MASS] * X[DT];
  X[a + SUM_OUT] += max(mass, 0);
  X[a + SUM_IN] -= min(mass, 0);
  X[a + SUM_FUEL] += X[a + F_FUEL] * X[DT];
  if (N[end + E_FACE] >= 0) X[a + SUM_PRESSURE] += X[N[end + E_GHOST] + P] * X[DT];
}

/** Lowest sound speed behind a wave, over that before it: gas pulled away faster leaves a void. */
const VOID: R = 0.1;

/** Sound speed [m/s] of the gas once brought to velocity v [m/s]. */
export function soundBehind(end: I, v: V): V {
  const a: I = N[end + E_X];
  const c: V = X[a + A_C];
  return max(c + 0.5 * (X[a + A_GAMMA] - 1) * (X[a + A_V] - v), VOID * c);
}

/** Density over that of the arriving gas, at sound speed c [m/s]. */
export function densityRatio(end: I, c: V): V {
  const a: I = N[end + E_X];
  return exp2((2 / (X[a + A_GAMMA] - 1)) * log2(c / X[a + A_C]));
}

/** Pressure [Pa] at which the arriving gas comes to rest: a shut end. */
export function restPressure(end: I): V {
  const a: I = N[end + E_X];
  const ratio: V = soundBehind(end, 0 * X[a + A_V]) / X[a + A_C];
  return X[a + A_P] * exp2(((2 * X[a + A_GAMMA]) / (X[a + A_GAMMA] - 1)) * log2(ratio));
}

/** What `behind` found: density [kg/m3], pressure [Pa], enthalpy [J/kg], p / rho. */
export let behindRho: V = 0;
export let behindP: V = 0;
export let behindH: V = 0;
export let behindPv: V = 0;

/** Enthalpy of the arriving gas once at p / rho = pv, with its own cv. */
export function enthalpyAt(end: I, pv: V): V {
  const a: I = N[end + E_X];
  const perGap: V = 1 / (X[a + A_GAMMA] - 1);
  return X[a + A_E] + (pv - X[a + A_P] / X[a + A_RHO]) * perGap + pv;
}

/** State of the arriving gas behind the wave that brings it to velocity v. */
export function behind(end: I, v: V): void {
  const a: I = N[end + E_X];
  const c: V = soundBehind(end, v);
  const k: V = c / X[a + A_C];
  const x: V = densityRatio(end, c);
  behindRho = X[a + A_RHO] * x;
  behindP = X[a + A_P] * x * k * k;
  behindPv = behindP / behindRho;
  behindH = enthalpyAt(end, behindPv);
}

/** Where the mask is set, lets the arriving gas leave at velocity v. */
export function writeOut(end: I, where: B, v: V): void {
  const a: I = N[end + E_X];
  behind(end, v);
  const energy: V = behindRho * v * K[N[end + E_K]] * (behindH + 0.5 * v * v);
  writeEnd(end, where, behindRho, v, behindP, X[a + A_BURNED], X[a + A_FUEL], energy);
}
