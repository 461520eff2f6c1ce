/** Slopes and face values half a step ahead: as sim/scheme/slopes.ts and predict.ts. */
import {
  RHO, U, P, T, GAMMA, R, C, BURNED, FUEL, LEFT_RHO, LEFT_U, LEFT_P, LEFT_BURNED, LEFT_FUEL,
  RIGHT_RHO, RIGHT_U, RIGHT_P, RIGHT_BURNED, RIGHT_FUEL, TOTAL_PRESSURE, WALL_FORCE, WALL_HEAT,
  FANNING, LOSS_PER_LENGTH, WALL_TEMPERATURE, LOW_RATIO, HIGH_RATIO, TO_LOW, TO_HIGH,
  PER_DIAMETER, PER_VOLUME, FACE_AREA, MEAN_AREA, WEIGHT_LOW, WEIGHT_HIGH, FIRST,
} from '../fields';
import { energyAndSound } from './gas';
import { get, set, k, add, sub, mul, div, pick, pairAt, useBlock } from './lanes';

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

/** sim/scheme/predict.ts for the n cells of the block at `block`. */
export function predict(
  block: usize, rowLength: i32, n: i32, dx: f64, dt: f64, colburn: f64,
): void {
  useBlock(block, rowLength);
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
