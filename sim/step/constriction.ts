/**
 * Two duct ends with a throat between them: a throttle plate, an orifice, a step of area.
 *
 * Upstream the gas accelerates from its own stagnation state to the throat of effective area Ae;
 * downstream the duct's end has the throat's pressure (no recovery), or the throat chokes:
 *
 *   v X = k Q sqrt(2/(gamma - 1) (c0^2 - (p2/p1)^((gamma - 1)/gamma) c1^2)),   k = Ae / A1,  Q = (p2/p1)^(1/gamma)
 *   A1 rho1 v1 = A2 rho2 v2,   h01 = h02,
 *
 * p2 by the wave that the incoming gas sends down the second duct. For slow flow that is a loss of
 * (A2/Ae)^2 - 1 dynamic heads of the downstream duct, so a stated loss K is met by Ae = A2/sqrt(1 + K).
 * One Newton step on v1 a time step; the density behind, which the wave needs, is the last step's.
 * Where Ae grows with the expansion (loss/throttlePlate.ts), a table says how; it is read at the last
 * step's, too.
 * Source: as exchange.ts.
 */

import {
  behindP,
  behindPv,
  densityRatio,
  endArea,
  restPressure,
  soundBehind,
  writeEnd,
  writeOut,
} from './ends.ts';
import {
  abs,
  all,
  any,
  type B,
  exp2,
  type I,
  log2,
  lookup,
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
  A_FUEL,
  A_GAMMA,
  A_P,
  A_RHO,
  A_V,
  E_X,
  F_ENERGY,
  ITERATIONS,
  T_AREA,
  T_DENSITY,
  T_LEVEL,
  T_ROOT,
} from './layout.ts';

/** Steps of a table of growth; loss/throttlePlate.ts lays it out so. */
export const LEVELS: R = 128;
/** A throat below this share of the end's area is shut. */
const SHUT: R = 1e-9;
/** Rest pressures this close [relative] differ by round-off. */
const STILL: R = 1e-13;

/** Solves both ends; `slots` hold the throat's areas and what was found last; `growth`: table or -1. */
export function constriction(first: I, second: I, slots: I, growth: I): void {
  const p1: V = restPressure(first);
  const p2: V = restPressure(second);
  const forward: B = p1 >= p2;
  const still: B = abs(p1 - p2) <= STILL * p1;
  if (any(forward)) passage(first, second, slots, growth, p1, p2, forward, still);
  if (!all(forward)) passage(second, first, slots + 1, growth, p2, p1, !forward, still);
}

let throatF: V = 0;
let throatSlope: V = 0;
/** Pressure behind the throat [Pa]. */
let pDown: V = 0;
/** Squared speeds of sound [m2/s2] after the expansion and of the stagnant gas. */
let expanded: V = 0;
let stagnant: V = 0;

function passage(
  up: I,
  down: I,
  slots: I,
  growth: I,
  restUp: V,
  restDown: V,
  where: B,
  still: B,
): void {
  const a: I = N[up + E_X];
  const b: I = N[down + E_X];
  let area: V = X[slots + T_AREA];
  if (growth >= 0) area = area * lookup(growth, X[slots + T_LEVEL] * LEVELS);
  const share: V = area * (1 / endArea(up));
  const shut: B = still || share < SHUT;
  // Velocity at which waves alone would level the pressures: the scale of the answer.
  const perArea: R = endArea(up) / endArea(down);
  const level: V =
    max(restUp - restDown, 0) / (X[a + A_RHO] * X[a + A_C] + X[b + A_RHO] * X[b + A_C] * perArea);
  const density: V = X[slots + T_DENSITY] > 0 ? X[slots + T_DENSITY] : X[b + A_RHO];
  const some: V = max(share, SHUT);
  let v: V = X[slots + T_ROOT] * some;
  if (any(v <= 0)) {
    throat(up, down, 0 * v, share, density, perArea);
    v = v > 0 ? v : min(level, sqrt(max(-throatF, 0)));
  }
  const top: V = 0.99 * X[a + A_C];
  v = min(max(v, 1e-9 * level), min(top, 4 * level));
  for (let i: I = 0; i < N[ITERATIONS]; i++) {
    throat(up, down, v, share, density, perArea);
    v = min(max(v - throatF / throatSlope, 0.1 * v), top);
  }
  v = shut ? 0 : v;
  throat(up, down, v, share, density, perArea);
  X[slots + T_ROOT] = where ? v / some : X[slots + T_ROOT];
  X[slots + T_LEVEL] = where ? min(expanded / stagnant, 1) : X[slots + T_LEVEL];
  writeOut(up, where, v);
  arrive(up, down, slots, v, perArea, where);
}

/** What leaves one side at velocity v enters the other, at most at the speed of sound. */
function arrive(up: I, down: I, slots: I, v: V, perArea: R, where: B): void {
  const a: I = N[up + E_X];
  const b: I = N[down + E_X];
  const gamma: V = X[a + A_GAMMA];
  const g: V = (gamma - 1) / gamma;
  const total: V = behindPv + 0.5 * v * v * g;
  const flux: V = (behindP / behindPv) * v * perArea;
  const p: V = max(pDown, flux * sqrt((2 * total) / (gamma * (gamma + 1))));
  const pull: V = p / max(flux, 1e-30);
  const speed: V = flux > 1e-30 ? (2 * total) / (pull + sqrt(pull * pull + 2 * total * g)) : 0;
  let rho: V = flux / max(speed, 1e-30);
  if (any(speed <= 0)) {
    const still: V = X[b + A_RHO] * densityRatio(down, soundBehind(down, 0 * v));
    rho = speed > 0 ? rho : still;
  }
  X[slots + T_DENSITY] = where ? rho : X[slots + T_DENSITY];
  const burned: V = speed > 0 ? X[a + A_BURNED] : X[b + A_BURNED];
  const fuel: V = speed > 0 ? X[a + A_FUEL] : X[b + A_FUEL];
  writeEnd(down, where, rho, -speed, p, burned, fuel, -X[a + F_ENERGY]);
}

/** What is left of the throat's law at velocity v before it, and its slope; sets pDown, expanded, stagnant. */
function throat(up: I, down: I, v: V, share: V, density: V, perArea: R): void {
  const a: I = N[up + E_X];
  const b: I = N[down + E_X];
  const gamma: V = X[a + A_GAMMA];
  const g: V = gamma - 1;
  const c: V = X[a + A_C];
  const ce: V = soundBehind(up, v);
  const x: V = densityRatio(up, ce);
  const gamma2: V = X[b + A_GAMMA];
  const h2: V = 0.5 * (gamma2 - 1);
  const ar: V = perArea / density;
  const c2: V = max(X[b + A_C] + h2 * (X[b + A_V] + X[a + A_RHO] * x * v * ar), 0.2 * X[b + A_C]);
  const rise: V = (gamma2 / h2) * log2(c2 / X[b + A_C]);
  pDown = X[b + A_P] * exp2(rise);
  const ratio: V = log2(X[b + A_P] / X[a + A_P]) + rise;
  const level: V = exp2((g / gamma) * ratio);
  const d: V = exp2(ratio / gamma);
  const c0: V = ce * ce + 0.5 * g * v * v;
  expanded = level * c * c;
  stagnant = c0;
  const gap: V = c0 - expanded;
  const k: V = ((2 * share * share) / g) * d * d;
  const flow: V = v * v * x * x;
  const flowSlope: V = 2 * v * x * x * (1 - v / ce);
  // Slope of ln p2 by v.
  const lift: V = (gamma2 * ar * X[a + A_RHO] * x * (1 - v / ce)) / c2;
  throatF = flow - k * gap;
  throatSlope =
    flowSlope + k * (g * (ce - v) + expanded * (g / gamma) * lift) - k * gap * (2 / gamma) * lift;
  const s: V = 2 / (gamma + 1);
  const choked: B = expanded < s * c0;
  if (any(choked)) {
    const most: V = share * share * exp2((2 / g) * log2((s * c0) / (c * c))) * s;
    throatF = choked ? flow - most * c0 : throatF;
    throatSlope = choked ? flowSlope + most * (1 + 2 / g) * g * (ce - v) : throatSlope;
  }
}
