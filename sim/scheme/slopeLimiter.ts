/**
 * Slope limiters: from the differences to both neighbours to the slope within a cell. All return 0
 * at an extremum and the common value where both differences agree.
 * Source: LeVeque (2002), Finite Volume Methods for Hyperbolic Problems, sec. 6.9-6.11 (from memory).
 */
export type SlopeLimiter = (a: number, b: number) => number;

/** The smaller of the two. */
export const minmod: SlopeLimiter = (a, b) => (a * b <= 0 ? 0 : Math.abs(a) < Math.abs(b) ? a : b);

/** The harmonic mean: smooth, and sharper than minmod. */
export const vanLeer: SlopeLimiter = (a, b) => (a * b <= 0 ? 0 : (2 * a * b) / (a + b));

/** Monotonised central: the mean, but at most twice either difference. */
export const monotonisedCentral: SlopeLimiter = (a, b) => {
  if (a * b <= 0) return 0;
  const mean = 0.5 * (a + b);
  const bound = 2 * (Math.abs(a) < Math.abs(b) ? a : b);
  return Math.abs(mean) < Math.abs(bound) ? mean : bound;
};

/** Scenario keyword to limiter. */
export const LIMITERS: Readonly<Record<string, SlopeLimiter>> = {
  minmod,
  'van-leer': vanLeer,
  'monotonised-central': monotonisedCentral,
};
