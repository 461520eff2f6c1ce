/**
 * Root of a monotone function in a bracket, by secant steps from a good guess that fall back to
 * bisection. Boundaries call it a few times each time step, so it makes no objects.
 */

/** Share of the bracket at which the root counts as found: gas all but at rest needs its own scale. */
const TOLERANCE = 1e-10;
/** Relative spacing of floating-point numbers. */
const ROUND_OFF = 2.3e-16;
/** First step, as a share of the way to the bracket's end. */
const FIRST_STEP = 1e-3;
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
  const tolerance = Math.max(TOLERANCE * (high - low), ROUND_OFF * Math.abs(high));
  let a = low;
  let b = high;
  let x0 = guess > a && guess < b ? guess : 0.5 * (a + b);
  let y0 = sign * f(x0);
  if (y0 === 0) return x0;
  if (y0 > 0) a = x0;
  else b = x0;
  let x = x0 + FIRST_STEP * ((y0 > 0 ? b : a) - x0);
  if (x === x0) x = y0 > 0 ? b : a;
  for (let i = 0; i < MOST_STEPS; i++) {
    const y = sign * f(x);
    if (y === 0) return x;
    if (y > 0) a = Math.max(a, x);
    else b = Math.min(b, x);
    const secant = x - (y * (x - x0)) / (y - y0);
    const next = secant > a && secant < b ? secant : 0.5 * (a + b);
    if (Math.abs(next - x) <= tolerance || b - a <= tolerance) return next;
    x0 = x;
    y0 = y;
    x = next;
  }
  return x;
}
