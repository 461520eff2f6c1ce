/** The block of one duct, and pairs of its numbers in f64x2 lanes. */

/** The block at work: its address and the length of its rows. */
let base: usize = 0;
let stride: i32 = 0;

export function useBlock(address: usize, rowLength: i32): void {
  base = address;
  stride = rowLength;
}

// @ts-ignore: decorator
@inline export function at(field: i32, i: i32): usize { return base + (<usize>(field * stride + i) << 3); }
// @ts-ignore: decorator
@inline export function get(field: i32, i: i32): v128 { return v128.load(at(field, i)); }
// @ts-ignore: decorator
@inline export function set(field: i32, i: i32, v: v128): void { v128.store(at(field, i), v); }
// @ts-ignore: decorator
@inline export function k(x: f64): v128 { return f64x2.splat(x); }
// @ts-ignore: decorator
@inline export function add(a: v128, b: v128): v128 { return f64x2.add(a, b); }
// @ts-ignore: decorator
@inline export function sub(a: v128, b: v128): v128 { return f64x2.sub(a, b); }
// @ts-ignore: decorator
@inline export function mul(a: v128, b: v128): v128 { return f64x2.mul(a, b); }
// @ts-ignore: decorator
@inline export function div(a: v128, b: v128): v128 { return f64x2.div(a, b); }
// @ts-ignore: decorator
@inline export function pick(a: v128, b: v128, mask: v128): v128 { return v128.bitselect(a, b, mask); }

/** Start of the pair at i that ends before `end`. */
// @ts-ignore: decorator
@inline export function pairAt(i: i32, end: i32): i32 { return i + 1 < end ? i : end - 2; }

/** A pair of cells, or one cell in both lanes. */
// @ts-ignore: decorator
@inline export function take(field: i32, i: i32, alone: bool): v128 {
  return alone ? v128.load64_splat(at(field, i)) : get(field, i);
}
// @ts-ignore: decorator
@inline export function put(field: i32, i: i32, v: v128, alone: bool): void {
  if (alone) v128.store64_lane(at(field, i), v, 0);
  else set(field, i, v);
}
