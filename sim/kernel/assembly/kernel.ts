/**
 * The sweep over the cells of one duct in AssemblyScript, two cells at a time in f64x2 lanes: what
 * sim/scheme (slopes, predict, update), sim/flux/hllc.ts and sim/gas/gas.ts do for the van Leer
 * limiter and the HLLC flux, operation by operation in the same order, so that results are the same
 * to the last bit (tests/consistency/kernel.test.ts). The equations and their sources stand there.
 *
 * An odd number of cells ends in a pair that overlaps the one before it, or, where a cell must be
 * touched once only, in a cell that fills both lanes. Built by `npm run kernel` into ../bytes.ts.
 */
import {
  BURNED, C, ENERGY, FACE_AREA, FANNING, FIRST, FLUX_BURNED, FLUX_ENERGY, FLUX_FUEL, FLUX_MASS,
  FLUX_MOMENTUM, FUEL, GAMMA, HIGH_RATIO, INTERVALS, KNOT, LEFT_BURNED, LEFT_C, LEFT_E, LEFT_FUEL,
  LEFT_P, LEFT_RHO, LEFT_U, LOSS_PER_LENGTH, LOW_RATIO, MEAN_AREA, MOMENTUM, P, PER_DIAMETER,
  PER_VOLUME, R, RHO, RHO_BURNED, RHO_FUEL, RIGHT_BURNED, RIGHT_C, RIGHT_E, RIGHT_FUEL, RIGHT_P,
  RIGHT_RHO, RIGHT_U, ROW, T, TOTAL_PRESSURE, TO_HIGH, TO_LOW, U, VOLUME, WALL_FORCE, WALL_HEAT,
  WALL_TEMPERATURE, WEIGHT_HIGH, WEIGHT_LOW,
} from '../fields';

/** The block at work: its address and the length of its rows. */
let base: usize = 0;
let stride: i32 = 0;
/** The gas: address of its table, gas constants of air, and of burned and fuel less that of air. */
let table: usize = 0;
let rAir: f64 = 0;
let rBurned: f64 = 0;
let rFuel: f64 = 0;

export function useGas(at: usize, air: f64, burned: f64, fuel: f64): void {
  table = at;
  rAir = air;
  rBurned = burned;
  rFuel = fuel;
}

// @ts-ignore: decorator
@inline function at(field: i32, i: i32): usize { return base + (<usize>(field * stride + i) << 3); }
// @ts-ignore: decorator
@inline function get(field: i32, i: i32): v128 { return v128.load(at(field, i)); }
// @ts-ignore: decorator
@inline function set(field: i32, i: i32, v: v128): void { v128.store(at(field, i), v); }
// @ts-ignore: decorator
@inline function k(x: f64): v128 { return f64x2.splat(x); }
// @ts-ignore: decorator
@inline function add(a: v128, b: v128): v128 { return f64x2.add(a, b); }
// @ts-ignore: decorator
@inline function sub(a: v128, b: v128): v128 { return f64x2.sub(a, b); }
// @ts-ignore: decorator
@inline function mul(a: v128, b: v128): v128 { return f64x2.mul(a, b); }
// @ts-ignore: decorator
@inline function div(a: v128, b: v128): v128 { return f64x2.div(a, b); }
// @ts-ignore: decorator
@inline function pick(a: v128, b: v128, mask: v128): v128 { return v128.bitselect(a, b, mask); }

/** Start of the pair at i that ends before `end`. */
// @ts-ignore: decorator
@inline function pairAt(i: i32, end: i32): i32 { return i + 1 < end ? i : end - 2; }

// sim/scheme/slopes.ts
// @ts-ignore: decorator
@inline function steadyShare(machSquared: v128): v128 {
  return f64x2.pmin(k(1), f64x2.pmax(k(0), mul(k(2), sub(k(1), machSquared))));
}

// sim/scheme/slopeLimiter.ts
// @ts-ignore: decorator
@inline function vanLeer(a: v128, b: v128): v128 {
  return v128.andnot(div(mul(mul(k(2), a), b), add(a, b)), f64x2.le(mul(a, b), k(0)));
}

// sim/gas/gas.ts
// @ts-ignore: decorator
@inline function interval(temperature: f64): i32 {
  const i = <i32>(temperature / KNOT);
  return i < 0 ? 0 : i < INTERVALS ? i : INTERVALS - 1;
}

/** A column of the table at two intervals. */
// @ts-ignore: decorator
@inline function column(j: i32, a: i32, b: i32): v128 {
  const first = v128.load64_zero(table + (<usize>(a * ROW + j) << 3));
  return v128.load64_lane(table + (<usize>(b * ROW + j) << 3), first, 1);
}

/** Three columns of the table mixed by composition. */
// @ts-ignore: decorator
@inline function mixed(j: i32, a: i32, b: i32, burned: v128, fuel: v128): v128 {
  return add(
    add(column(j, a, b), mul(burned, column(j + 3, a, b))),
    mul(fuel, column(j + 6, a, b)),
  );
}

// @ts-ignore: decorator
@inline function knots(a: i32, b: i32): v128 { return f64x2(<f64>(KNOT * a), <f64>(KNOT * b)); }

// @ts-ignore: decorator
@inline function gasConstant(burned: v128, fuel: v128): v128 {
  return add(add(k(rAir), mul(burned, k(rBurned))), mul(fuel, k(rFuel)));
}

/** Energy and sound speed at faces, whose seven fields begin at `side`. */
function energyAndSound(side: i32, from: i32, to: i32): void {
  for (let place = from; place < to; place += 2) {
    const i = pairAt(place, to);
    const burned = get(side + 5, i);
    const fuel = get(side + 6, i);
    const constant = gasConstant(burned, fuel);
    const t = div(get(side + 2, i), mul(get(side, i), constant));
    const a = interval(f64x2.extract_lane(t, 0));
    const b = interval(f64x2.extract_lane(t, 1));
    const d = sub(t, knots(a, b));
    const cv = mixed(1, a, b, burned, fuel);
    const hd = mul(d, mixed(2, a, b, burned, fuel));
    set(side + 3, i, add(mixed(0, a, b, burned, fuel), mul(d, add(cv, hd))));
    const gamma = add(k(1), div(constant, add(cv, mul(k(2), hd))));
    set(side + 4, i, f64x2.sqrt(mul(mul(gamma, constant), t)));
  }
}

/** sim/scheme/predict.ts for the n cells of the block at `block`. */
export function predict(
  block: usize, rowLength: i32, n: i32, dx: f64, dt: f64, colburn: f64,
): void {
  base = block;
  stride = rowLength;
  const end = FIRST + n;
  const half = k(-(0.5 * dt));
  const perDx = k(1 / dx);
  const advancePerU = k((0.5 * dt) / dx);
  const one = k(1);
  const zero = k(0);
  for (let place = FIRST; place < end; place += 2) {
    const i = pairAt(place, end);
    const r0 = get(RHO, i);
    const u0 = get(U, i);
    const p0 = get(P, i);
    const c0 = get(C, i);
    const b0 = get(BURNED, i);
    const f0 = get(FUEL, i);
    const low = get(WEIGHT_LOW, i);
    const high = get(WEIGHT_HIGH, i);

    // Slopes.
    const perC = div(one, mul(c0, c0));
    const share = steadyShare(mul(mul(u0, u0), perC));
    const rl = get(RHO, i - 1);
    const ul = get(U, i - 1);
    const al = get(LOW_RATIO, i);
    const riseLow = mul(
      mul(mul(mul(mul(k(0.5), share), rl), ul), ul), sub(one, mul(al, al)));
    const rlHere = add(rl, mul(riseLow, perC));
    const rh = get(RHO, i + 1);
    const uh = get(U, i + 1);
    const ah = get(HIGH_RATIO, i);
    const riseHigh = mul(
      mul(mul(mul(mul(k(0.5), share), rh), uh), uh), sub(one, mul(ah, ah)));
    const rhHere = add(rh, mul(riseHigh, perC));
    const slopeR = vanLeer(mul(low, sub(r0, rlHere)), mul(high, sub(rhHere, r0)));
    const ulHere = mul(ul, add(one, mul(share, sub(div(mul(al, rl), rlHere), one))));
    const uhHere = mul(uh, add(one, mul(share, sub(div(mul(ah, rh), rhHere), one))));
    const slopeU = vanLeer(mul(low, sub(u0, ulHere)), mul(high, sub(uhHere, u0)));
    const slopeP = vanLeer(
      mul(low, sub(sub(p0, get(P, i - 1)), riseLow)),
      mul(high, sub(add(get(P, i + 1), riseHigh), p0)));
    const slopeB = vanLeer(
      mul(low, sub(b0, get(BURNED, i - 1))), mul(high, sub(get(BURNED, i + 1), b0)));
    const slopeF = vanLeer(
      mul(low, sub(f0, get(FUEL, i - 1))), mul(high, sub(get(FUEL, i + 1), f0)));

    // Face values: steady flow from the cell's area to the face's, and half a slope.
    const gamma = get(GAMMA, i);
    const constant = get(R, i);
    const perRho = div(one, r0);
    const perSound = div(r0, mul(gamma, p0));
    const aL = get(TO_LOW, i);
    const aR = get(TO_HIGH, i);
    const steady = steadyShare(mul(mul(u0, u0), perSound));
    const head = mul(mul(mul(mul(k(0.5), steady), r0), u0), u0);
    const riseL = mul(head, sub(one, mul(aL, aL)));
    const riseR = mul(head, sub(one, mul(aR, aR)));
    const rSteadyL = add(r0, mul(riseL, perSound));
    const rSteadyR = add(r0, mul(riseR, perSound));
    const halfR = mul(k(0.5), slopeR);
    const halfU = mul(k(0.5), slopeU);
    const halfP = mul(k(0.5), slopeP);
    const rL = sub(rSteadyL, halfR);
    const rR = add(rSteadyR, halfR);
    const uL = sub(mul(u0, add(one, mul(steady, sub(div(mul(aL, r0), rSteadyL), one)))), halfU);
    const uR = add(mul(u0, add(one, mul(steady, sub(div(mul(aR, r0), rSteadyR), one)))), halfU);
    const pL = sub(add(p0, riseL), halfP);
    const pR = add(add(p0, riseR), halfP);

    // The wall.
    const speed = f64x2.abs(u0);
    const rub = mul(get(FANNING, i), get(PER_DIAMETER, i));
    const drag = add(mul(k(2), rub), mul(k(0.5), get(LOSS_PER_LENGTH, i)));
    const wall = get(WALL_TEMPERATURE, i);
    const perKelvin = mul(
      mul(mul(r0, speed), rub),
      mul(mul(k(2 * colburn), div(gamma, sub(gamma, one))), constant));
    const toGas = v128.and(perKelvin, f64x2.gt(wall, zero));

    // Half a step.
    const perVolume = get(PER_VOLUME, i);
    const qL = mul(get(FACE_AREA, i), uL);
    const qR = mul(get(FACE_AREA, i + 1), uR);
    const pull = mul(mul(drag, u0), speed);
    const dr = mul(mul(half, perVolume), sub(mul(rR, qR), mul(rL, qL)));
    const squares = mul(k(0.5), sub(mul(uR, uR), mul(uL, uL)));
    const du = mul(half, add(mul(perDx, add(squares, mul(sub(pR, pL), perRho))), pull));
    const warming = add(
      mul(mul(r0, pull), u0), mul(toGas, sub(wall, get(T, i))));
    const dp = mul(half, sub(
      add(
        mul(mul(perDx, u0), sub(pR, pL)),
        mul(mul(mul(perVolume, gamma), p0), sub(qR, qL))),
      mul(sub(gamma, one), warming)));
    const leastR = sub(mul(k(0.1), r0), f64x2.pmin(dr, zero));
    const leastP = sub(mul(k(0.1), p0), f64x2.pmin(dp, zero));
    const soundR = v128.and(v128.and(f64x2.gt(rL, leastR), f64x2.gt(rR, leastR)), f64x2.gt(r0, leastR));
    const soundP = v128.and(v128.and(f64x2.gt(pL, leastP), f64x2.gt(pR, leastP)), f64x2.gt(p0, leastP));
    const sound = v128.and(soundR, soundP);
    const rMid = pick(add(r0, dr), r0, sound);
    const uMid = pick(add(u0, du), u0, sound);
    const pMid = pick(add(p0, dp), p0, sound);
    const rightR = pick(add(rL, dr), r0, sound);
    const leftR = pick(add(rR, dr), r0, sound);
    set(RIGHT_RHO, i, rightR);
    set(RIGHT_U, i, pick(add(uL, du), u0, sound));
    set(RIGHT_P, i, pick(add(pL, dp), p0, sound));
    set(LEFT_RHO, i + 1, leftR);
    set(LEFT_U, i + 1, pick(add(uR, du), u0, sound));
    set(LEFT_P, i + 1, pick(add(pR, dp), p0, sound));
    const headMid = mul(mul(mul(mul(k(0.5), steady), rMid), uMid), uMid);
    set(TOTAL_PRESSURE, i, add(pMid, headMid));
    set(WALL_FORCE, i, sub(
      mul(mul(mul(headMid, perVolume), get(MEAN_AREA, i)), sub(aR, aL)),
      mul(mul(mul(rMid, drag), uMid), f64x2.abs(uMid))));
    set(WALL_HEAT, i, mul(toGas, sub(wall, div(pMid, mul(rMid, constant)))));

    // Mass fractions.
    const skew = div(sub(leftR, rightR), add(leftR, rightR));
    const part = div(k(0.5), add(one, f64x2.abs(skew)));
    const advance = mul(advancePerU, u0);
    const onLow = add(mul(part, add(one, skew)), advance);
    const onHigh = sub(mul(part, sub(one, skew)), advance);
    set(RIGHT_BURNED, i, sub(b0, mul(onLow, slopeB)));
    set(LEFT_BURNED, i + 1, add(b0, mul(onHigh, slopeB)));
    set(RIGHT_FUEL, i, sub(f0, mul(onLow, slopeF)));
    set(LEFT_FUEL, i + 1, add(f0, mul(onHigh, slopeF)));
  }
  energyAndSound(RIGHT_RHO, FIRST, end);
  energyAndSound(LEFT_RHO, FIRST + 1, end + 1);
}

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

/** A pair of cells, or one cell in both lanes. */
// @ts-ignore: decorator
@inline function take(field: i32, i: i32, alone: bool): v128 {
  return alone ? v128.load64_splat(at(field, i)) : get(field, i);
}
// @ts-ignore: decorator
@inline function put(field: i32, i: i32, v: v128, alone: bool): void {
  if (alone) v128.store64_lane(at(field, i), v, 0);
  else set(field, i, v);
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
  base = block;
  stride = rowLength;
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
  base = block;
  stride = rowLength;
  let sum: f64 = 0;
  for (let i = FIRST; i < FIRST + n; i++) sum += load<f64>(at(WALL_HEAT, i)) * load<f64>(at(VOLUME, i));
  return sum;
}
