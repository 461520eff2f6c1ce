/** Levine & Schwinger's integrals (1948) by quadrature with library Bessel functions. */
import bessel from 'bessel';

const { besseli, besselj, besselk, bessely } = bessel;

/** Midpoint rule: the integrands are smooth, and none can be evaluated at its ends. */
function integrate(f: (x: number) => number, from: number, to: number, steps: number): number {
  const h = (to - from) / steps;
  let sum = 0;
  for (let i = 0; i < steps; i++) sum += f(from + (i + 0.5) * h);
  return sum * h;
}

/** ln(1 / (2 I1 K1)): series below 0.02, where the product cancels; asymptote above 50. */
function logModified(x: number): number {
  const euler = 0.5772156649015329;
  if (x < 0.02) return -Math.log1p(((x * x) / 2) * (Math.log(x / 2) + euler - 0.25));
  if (x > 50) return Math.log(x) - Math.log1p(-3 / (8 * x * x));
  return -Math.log(2 * besseli(x, 1) * besselk(x, 1));
}

/** |R| of an unflanged end. */
export function magnitudeLevineSchwinger(ka: number): number {
  const integrand = (t: number) => {
    const x = ka * Math.sin(t);
    return Math.atan2(besselj(x, 1), -bessely(x, 1)) / Math.sin(t);
  };
  return Math.exp((-2 / Math.PI) * integrate(integrand, 0, Math.PI / 2, 2000));
}

/** End correction of an unflanged end in pipe radii. */
export function correctionLevineSchwinger(ka: number): number {
  const near = (t: number) => {
    const x = ka * Math.sin(t);
    const j = besselj(x, 1);
    return Math.log(Math.PI * j * Math.hypot(j, bessely(x, 1))) / x;
  };
  // x = exp(s) spreads the half line evenly.
  const far = (s: number) => logModified(Math.exp(s)) / Math.hypot(Math.exp(s), ka);
  const farPart = integrate(far, -20, 30, 8000);
  return ((ka > 0 ? integrate(near, 0, Math.PI / 2, 2000) : 0) + farPart) / Math.PI;
}

/** ka, |R|, l/a of an unflanged end: the integrals by two quadratures outside this project. */
export const LEVINE_SCHWINGER: readonly (readonly [ka: number, R: number, l: number])[] = [
  [0.05, 0.99875, 0.61226],
  [0.1, 0.99507, 0.61099],
  [0.2, 0.98086, 0.60638],
  [0.3, 0.95868, 0.59961],
  [0.4, 0.93004, 0.59127],
  [0.5, 0.89644, 0.58184],
  [0.6, 0.85924, 0.57164],
  [0.8, 0.77853, 0.54993],
  [1.0, 0.6951, 0.52743],
  [1.25, 0.59391, 0.49917],
];
