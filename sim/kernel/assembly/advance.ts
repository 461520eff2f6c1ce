/** Fluxes through the inner faces and the update: as sim/flux/hllc.ts and sim/scheme/update.ts. */
import {
  RHO, MOMENTUM, ENERGY, RHO_BURNED, RHO_FUEL, U, P, T, GAMMA, R, C, BURNED, FUEL, LEFT_RHO,
  LEFT_U, LEFT_P, LEFT_E, LEFT_C, LEFT_BURNED, LEFT_FUEL, RIGHT_RHO, RIGHT_U, RIGHT_P, RIGHT_E,
  RIGHT_C, RIGHT_BURNED, RIGHT_FUEL, FLUX_MASS, FLUX_MOMENTUM, FLUX_ENERGY, FLUX_BURNED,
  FLUX_FUEL, TOTAL_PRESSURE, WALL_FORCE, WALL_HEAT, FACE_AREA, VOLUME, FIRST, KNOT, INTERVALS,
} from '../fields';
import { interval, mixed, knots, gasConstant } from './gas';
import { at, get, set, k, add, sub, mul, div, pick, pairAt, take, put, useBlock } from './lanes';

// sim/flux/hllc.ts
// @ts-ignore: decorator
@inline function waveFactor(estimate: v128, p: v128, rho: v128, c: v128): v128 {
  const gammaP = mul(mul(rho, c), c);
  const over = mul(mul(k(0.5), add(div(gammaP, p), k(1))), sub(estimate, p));
  return pick(f64x2.sqrt(add(k(1), div(over, gammaP))), k(1), f64x2.gt(estimate, p));
}

/** Fluxes through the inner faces. */
function flux(end: i32): void {
  for (let place = FIRST + 1; place < end; place += 2) {
    const i = pairAt(place, end);
    const rhoL = get(LEFT_RHO, i);
    const uL = get(LEFT_U, i);
    const pL = get(LEFT_P, i);
    const cL = get(LEFT_C, i);
    const rhoR = get(RIGHT_RHO, i);
    const uR = get(RIGHT_U, i);
    const pR = get(RIGHT_P, i);
    const cR = get(RIGHT_C, i);
    const estimate = sub(
      mul(k(0.5), add(pL, pR)),
      mul(mul(mul(k(0.125), sub(uR, uL)), add(rhoL, rhoR)), add(cL, cR)));
    const sL = sub(uL, mul(cL, waveFactor(estimate, pL, rhoL, cL)));
    const sR = add(uR, mul(cR, waveFactor(estimate, pR, rhoR, cR)));
    const massL = mul(rhoL, sub(sL, uL));
    const massR = mul(rhoR, sub(sR, uR));
    const sStar = div(sub(add(sub(pR, pL), mul(uL, massL)), mul(uR, massR)), sub(massL, massR));

    const fromLeft = f64x2.ge(sStar, k(0));
    const rho = pick(rhoL, rhoR, fromLeft);
    const u = pick(uL, uR, fromLeft);
    const p = pick(pL, pR, fromLeft);
    const e = pick(get(LEFT_E, i), get(RIGHT_E, i), fromLeft);
    const energy = mul(rho, add(e, mul(mul(k(0.5), u), u)));
    const beyond = pick(f64x2.ge(sL, k(0)), f64x2.le(sR, k(0)), fromLeft);
    const s = pick(sL, sR, fromLeft);
    const gap = sub(s, sStar);
    const pStar = add(p, mul(mul(rho, sub(s, u)), sub(sStar, u)));
    const mass = pick(mul(rho, u), mul(div(mul(rho, sub(s, u)), gap), sStar), beyond);
    set(FLUX_MASS, i, mass);
    set(FLUX_MOMENTUM, i, pick(add(mul(mass, u), p), add(mul(mass, sStar), pStar), beyond));
    const inStar = add(sub(mul(sub(s, u), energy), mul(p, u)), mul(pStar, sStar));
    set(FLUX_ENERGY, i, pick(
      mul(u, add(energy, p)), mul(sStar, add(div(inStar, gap), pStar)), beyond));
    set(FLUX_BURNED, i, mul(mass, pick(get(LEFT_BURNED, i), get(RIGHT_BURNED, i), fromLeft)));
    set(FLUX_FUEL, i, mul(mass, pick(get(LEFT_FUEL, i), get(RIGHT_FUEL, i), fromLeft)));
  }
}

/** A conserved quantity with what came in through both faces. */
// @ts-ignore: decorator
@inline function moved(field: i32, through: i32, aL: v128, aR: v128, i: i32, alone: bool): v128 {
  return add(
    take(field, i, alone),
    sub(mul(aL, take(through, i, alone)), mul(aR, take(through, i + 1, alone))));
}

/** Update and primitive values of a pair of cells; their |u| + c. */
// @ts-ignore: decorator
@inline function updatePair(i: i32, dt: v128, alone: bool): v128 {
  const perVolume = div(dt, take(VOLUME, i, alone));
  const aL = mul(take(FACE_AREA, i, alone), perVolume);
  const aR = mul(take(FACE_AREA, i + 1, alone), perVolume);
  const p = take(TOTAL_PRESSURE, i, alone);
  const rho = moved(RHO, FLUX_MASS, aL, aR, i, alone);
  const push = sub(
    mul(aL, sub(take(FLUX_MOMENTUM, i, alone), p)),
    mul(aR, sub(take(FLUX_MOMENTUM, i + 1, alone), p)));
  const momentum = add(
    take(MOMENTUM, i, alone), add(push, mul(dt, take(WALL_FORCE, i, alone))));
  const work = sub(
    mul(aL, take(FLUX_ENERGY, i, alone)), mul(aR, take(FLUX_ENERGY, i + 1, alone)));
  const energy = add(take(ENERGY, i, alone), add(work, mul(dt, take(WALL_HEAT, i, alone))));
  const rhoBurned = moved(RHO_BURNED, FLUX_BURNED, aL, aR, i, alone);
  const rhoFuel = moved(RHO_FUEL, FLUX_FUEL, aL, aR, i, alone);
  put(RHO, i, rho, alone);
  put(MOMENTUM, i, momentum, alone);
  put(ENERGY, i, energy, alone);
  put(RHO_BURNED, i, rhoBurned, alone);
  put(RHO_FUEL, i, rhoFuel, alone);

  const perRho = div(k(1), rho);
  const u = mul(momentum, perRho);
  const e = sub(mul(energy, perRho), mul(mul(k(0.5), u), u));
  const burned = mul(rhoBurned, perRho);
  const fuel = mul(rhoFuel, perRho);
  put(U, i, u, alone);
  put(BURNED, i, burned, alone);
  put(FUEL, i, fuel, alone);

  let a = interval(load<f64>(at(T, i)));
  let b = alone ? a : interval(load<f64>(at(T, i + 1)));
  let root: v128;
  let d: v128;
  // The guess is the last step's temperature: its interval is nearly always the right one.
  for (let tries = 0; ; tries++) {
    const above = sub(e, mixed(0, a, b, burned, fuel));
    const cv = mixed(1, a, b, burned, fuel);
    const h = mixed(2, a, b, burned, fuel);
    root = f64x2.sqrt(add(mul(cv, cv), mul(mul(k(4), h), above)));
    d = div(mul(k(2), above), add(cv, root));
    const stepA = step(f64x2.extract_lane(above, 0), f64x2.extract_lane(d, 0), a);
    const stepB = step(f64x2.extract_lane(above, 1), f64x2.extract_lane(d, 1), b);
    if ((stepA | stepB) == 0 || tries == 2 * INTERVALS) break;
    a += stepA;
    b += stepB;
  }
  const constant = gasConstant(burned, fuel);
  const temperature = add(knots(a, b), d);
  const gamma = add(k(1), div(constant, root));
  const c = f64x2.sqrt(mul(mul(gamma, constant), temperature));
  put(T, i, temperature, alone);
  put(R, i, constant, alone);
  put(GAMMA, i, gamma, alone);
  put(P, i, mul(mul(rho, constant), temperature), alone);
  put(C, i, c, alone);
  return add(f64x2.abs(u), c);
}

/** To which side of its interval a temperature lies. */
// @ts-ignore: decorator
@inline function step(above: f64, d: f64, interval: i32): i32 {
  if (above < 0) return interval > 0 ? -1 : 0;
  return d > KNOT && interval < INTERVALS - 1 ? 1 : 0;
}

/** sim/flux/hllc.ts and sim/scheme/update.ts; returns the greatest |u| + c, NaN if one is NaN [m/s]. */
export function advance(block: usize, rowLength: i32, n: i32, dt: f64): f64 {
  useBlock(block, rowLength);
  const end = FIRST + n;
  flux(end);
  let fastest = k(0);
  let i = FIRST;
  for (; i + 1 < end; i += 2) fastest = f64x2.max(fastest, updatePair(i, k(dt), false));
  if (i < end) fastest = f64x2.max(fastest, updatePair(i, k(dt), true));
  return Math.max(f64x2.extract_lane(fastest, 0), f64x2.extract_lane(fastest, 1));
}

/** Heat from the wall in a step over its length [W], summed from low to high x. */
export function wallHeat(block: usize, rowLength: i32, n: i32): f64 {
  useBlock(block, rowLength);
  let sum: f64 = 0;
  for (let i = FIRST; i < FIRST + n; i++) sum += load<f64>(at(WALL_HEAT, i)) * load<f64>(at(VOLUME, i));
  return sum;
}
