/**
 * Several duct ends that meet at one static pressure, without volume. Gas flowing in mixes; every duct
 * that takes gas takes the mixture, at the mixture's total enthalpy:
 *
 *   sum m = 0,   h0 = sum_in m h0 / sum_in m,   Y = sum_in m Y / sum_in m.
 *
 * One Newton step on the pressure a time step; what is left of the balance the takers share, so that
 * nothing is lost.
 * Source: the constant-pressure model of Benson (1982), vol. 1, ch. 6 (from memory). It knows no
 * angles between pipes and no junction losses.
 */

import { endArea, enthalpyAt, writeEnd } from './ends.ts';
import { gasConstant } from './gas.ts';
import { type B, exp2, type I, log2, max, min, N, type R, type V, X } from './lanes.ts';
import {
  A_BURNED,
  A_C,
  A_FUEL,
  A_GAMMA,
  A_P,
  A_RHO,
  A_V,
  COUNT,
  E_X,
  F_BURNED,
  F_ENERGY,
  F_FUEL,
  F_MASS,
  FIRST_END,
  ITERATIONS,
  W_FALL,
  W_RHO,
  W_V,
} from './layout.ts';

/** Largest change of the pressure in one Newton step [-]. */
const LARGEST_STEP: R = 0.2;
const NONE: R = 1e-30;

/** Inflow [kg/s], its heat by frozen cp [W], sums of m cp and m R [W/K], balance and slope by p. */
let mass: V = 0;
let heat: V = 0;
let capacity: V = 0;
let constant: V = 0;
let balance: V = 0;
let slope: V = 0;
/** What flows in: mass [kg/s], energy [W], burned gas and fuel [kg/s]. */
let sum: V = 0;
let energy: V = 0;
let burned: V = 0;
let fuel: V = 0;

export function junction(node: I, root: I): void {
  const ends: I = N[node + COUNT];
  const first: I = N[node + FIRST_END];
  let p: V = X[root] > 0 ? X[root] : X[N[first + E_X] + A_P];
  for (let i: I = 0; i < N[ITERATIONS]; i++) {
    mix(node, ends, p);
    p = p + max(-LARGEST_STEP * p, min(LARGEST_STEP * p, -balance / slope));
  }
  X[root] = p;
  mix(node, ends, p);
  const taken: V = mass - balance;
  const flows: B = mass > NONE && taken > NONE;
  gather(node, ends, p, flows);
  spread(node, ends, p, flows, flows ? mass / max(taken, NONE) : 0);
}

/** Writes the ends that give, and sums what they do. */
function gather(node: I, ends: I, p: V, flows: B): void {
  sum = 0 * p;
  energy = sum;
  burned = sum;
  fuel = sum;
  for (let i: I = 0; i < ends; i++) {
    const end: I = N[node + FIRST_END + i];
    const a: I = N[end + E_X];
    const gives: B = X[a + W_V] >= 0;
    const v: V = flows ? X[a + W_V] : 0;
    const rho: V = X[a + W_RHO];
    const flow: V = rho * v * endArea(end);
    const h: V = enthalpyAt(end, p / rho);
    writeEnd(end, gives, rho, v, p, X[a + A_BURNED], X[a + A_FUEL], flow * (h + 0.5 * v * v));
    sum = sum + (gives ? X[a + F_MASS] : 0);
    energy = energy + (gives ? X[a + F_ENERGY] : 0);
    burned = burned + (gives ? X[a + F_BURNED] : 0);
    fuel = fuel + (gives ? X[a + F_FUEL] : 0);
  }
}

/** Writes the ends that take: the mixture, and of their own flow a share that balances. */
function spread(node: I, ends: I, p: V, flows: B, share: V): void {
  const perSum: V = 1 / max(sum, NONE);
  for (let i: I = 0; i < ends; i++) {
    const end: I = N[node + FIRST_END + i];
    const a: I = N[end + E_X];
    const takes: B = X[a + W_V] < 0;
    const v: V = share * X[a + W_V];
    const rho: V = density(a, p);
    const flow: V = rho * v * endArea(end);
    const yb: V = flows ? burned * perSum : X[a + A_BURNED];
    const yf: V = flows ? fuel * perSum : X[a + A_FUEL];
    writeEnd(end, takes, rho, v, p, yb, yf, flow * energy * perSum);
  }
}

/** What flows at pressure p [Pa]: each end's state behind its wave, the mixture, balance and slope. */
function mix(node: I, ends: I, p: V): void {
  blend(node, ends, p);
  balance = mass;
  const perP: V = 1 / p;
  for (let i: I = 0; i < ends; i++) {
    const end: I = N[node + FIRST_END + i];
    const a: I = N[end + E_X];
    const v: V = X[a + W_V];
    const takes: B = v < 0;
    const flux: V = density(a, p) * endArea(end);
    balance = balance + (takes ? v * flux : 0);
    slope = slope + (takes ? flux * (v * perP - X[a + W_FALL]) : 0);
  }
}

/** Each end's state behind its wave, the mixture of what flows in, and its slope by p. */
function blend(node: I, ends: I, p: V): void {
  mass = 0 * p;
  heat = mass;
  capacity = mass;
  constant = mass;
  slope = mass;
  for (let i: I = 0; i < ends; i++) {
    const end: I = N[node + FIRST_END + i];
    const a: I = N[end + E_X];
    const gamma: V = X[a + A_GAMMA];
    const g: V = gamma - 1;
    const per: V = 1 / (gamma * g);
    const perG: V = gamma * per;
    const r: V = p / X[a + A_P];
    const t: V = exp2(0.5 * g * g * per * log2(r));
    const v: V = X[a + A_V] + 2 * X[a + A_C] * perG * (1 - t);
    const c: V = X[a + A_C] * t;
    const perT: V = 1 / t;
    const rho: V = X[a + A_RHO] * r * perT * perT;
    const fall: V = 1 / (rho * c);
    const perC: V = rho * fall;
    X[a + W_V] = v;
    X[a + W_RHO] = rho;
    X[a + W_FALL] = fall;
    const gives: B = v >= 0;
    const area: R = endArea(end);
    const flow: V = gives ? rho * v * area : 0;
    const gas: V = gasConstant(X[a + A_BURNED], X[a + A_FUEL]);
    mass = mass + flow;
    // cp T = c^2 / (gamma - 1), cp = gamma R / (gamma - 1).
    heat = heat + flow * (c * c * perG + 0.5 * v * v);
    capacity = capacity + flow * gamma * gas * perG;
    constant = constant + flow * gas;
    slope = slope + (gives ? area * perC * (v * perC - 1) : 0);
  }
}

/** Density of the mixture where it enters an end [kg/m3]; the end's own where nothing flows in. */
function density(a: I, p: V): V {
  const v: V = X[a + W_V];
  const warmth: V = constant * (heat - 0.5 * mass * v * v);
  return mass > NONE ? (p * mass * capacity) / max(warmth, NONE * NONE) : X[a + W_RHO];
}
