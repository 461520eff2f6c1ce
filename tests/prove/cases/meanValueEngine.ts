/**
 * An engine of the literature as fits: what its throttle passes, what its cylinders draw from the manifold.
 *
 *   m = f(theta) g(p),  f = 2.821 - 0.05231 theta + 0.10299 theta^2 - 0.00063 theta^3,  g = 1 up to 0.5, then 2 sqrt(p - p^2)
 *   m = -0.366 + 0.08979 N p - 0.0337 N p^2 + 0.0001 N^2 p,   dp/dt = 0.41328 (m_in - m_out)
 *
 *   theta  [deg]   p  manifold over ambient [bar]   N  [rad/s]   m  [g/s]
 *
 * Source: Crossley & Cook 1991, coefficients as a general-purpose library of models prints them; 0.00063 is
 * 0.0063 in the paper, which would make the flow of the open throttle negative.
 */
const [C0, C1, C2, C3] = [2.821, -0.05231, 0.10299, -0.00063];

/** Air past the choked throttle [g/s]. */
export const chokedThrottle = (theta: number) => C0 + theta * (C1 + theta * (C2 + theta * C3));

/** Share of it at a pressure ratio [-]. */
export const throttled = (p: number) => (p <= 0.5 ? 1 : 2 * Math.sqrt(p - p * p));

/** Air that the cylinders draw [g/s]. */
export const pumped = (p: number, n: number) =>
  -0.366 + 0.08979 * n * p - 0.0337 * n * p * p + 0.0001 * n * n * p;

/** By how much that grows with the pressure [g/(s bar)]. */
export const pumpedSlope = (p: number, n: number) => 0.08979 * n - 0.0674 * n * p + 0.0001 * n * n;

/** Pressure at which as much comes as goes [bar], `passed` falling with it. */
export function steady(passed: (p: number) => number, n: number): number {
  let [low, high] = [0.1, 1];
  for (let i = 0; i < 50; i++) {
    const middle = 0.5 * (low + high);
    if (passed(middle) > pumped(middle, n)) low = middle;
    else high = middle;
  }
  return low;
}
