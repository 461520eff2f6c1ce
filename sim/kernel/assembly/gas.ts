/** The gas in lanes: as sim/gas/gas.ts. */
import {
  KNOT, INTERVALS, ROW,
} from '../fields';
import { get, set, k, add, sub, mul, div, pairAt } from './lanes';

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
@inline export function interval(temperature: f64): i32 {
  const i = <i32>(temperature / KNOT);
  return i < 0 ? 0 : i < INTERVALS ? i : INTERVALS - 1;
}

/** A column of the table at two intervals. */
// @ts-ignore: decorator
@inline export function column(j: i32, a: i32, b: i32): v128 {
  const first = v128.load64_zero(table + (<usize>(a * ROW + j) << 3));
  return v128.load64_lane(table + (<usize>(b * ROW + j) << 3), first, 1);
}

/** Three columns of the table mixed by composition. */
// @ts-ignore: decorator
@inline export function mixed(j: i32, a: i32, b: i32, burned: v128, fuel: v128): v128 {
  return add(
    add(column(j, a, b), mul(burned, column(j + 3, a, b))),
    mul(fuel, column(j + 6, a, b)),
  );
}

// @ts-ignore: decorator
@inline export function knots(a: i32, b: i32): v128 { return f64x2(<f64>(KNOT * a), <f64>(KNOT * b)); }

// @ts-ignore: decorator
@inline export function gasConstant(burned: v128, fuel: v128): v128 {
  return add(add(k(rAir), mul(burned, k(rBurned))), mul(fuel, k(rFuel)));
}

/** Energy and sound speed at faces, whose seven fields begin at `side`. */
export function energyAndSound(side: i32, from: i32, to: i32): void {
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
