/**
 * Root of a monotone function in a bracket, by secant steps from a good guess that fall back to
 * bisection. Boundaries call it a few times each time step, so it makes no objects.
 */

/** Relative width at which a root counts as found. */
const TOLERANCE = 1e-12;
const MOST_STEPS = 100;

/**
 * The x in [low, high] where f changes from `f(low) >= 0` to `f(high) <= 0` or the other way round
 * (`falling` says which); `guess` is tried first.
 */
export function findRoot(
  f: (x: number) => number,
  low: number,
  high: number,
  guess: number,
  falling: boolean,
): number {
  const sign = falling ? 1 : -1;
  let a = low;
  let b = high;
  let x = guess > a && guess < b ? guess : 0.5 * (a + b);
  let y = sign * f(x);
  if (y === 0) return x;
  if (y > 0) a = x;
  else b = x;
  let x0 = x;
  let y0 = y;
  x = x + 1e-6 * (b - a > 0 ? (y > 0 ? b - x : a - x) : 0);
  if (x === x0) return x;
  for (let i = 0; i < MOST_STEPS; i++) {
    y = sign * f(x);
    if (y === 0) return x;
    if (y > 0) a = Math.max(a, x);
    else b = Math.min(b, x);
    let next = y === y0 ? Number.NaN : x - (y * (x - x0)) / (y - y0);
    const settled = Math.abs(next - x) <= TOLERANCE * Math.abs(x);
    if (!(next > a && next < b)) {
      if (settled) return x;
      next = 0.5 * (a + b);
    }
    x0 = x;
    y0 = y;
    x = next;
    if (settled || b - a <= TOLERANCE * b) return x;
  }
  return x;
}
