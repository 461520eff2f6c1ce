/**
 * Isentropic flow from rest through a throat:
 *
 *   m / A = p0 / sqrt(R T0) psi,   psi = sqrt(2 gamma/(gamma-1) (r^(2/gamma) - r^((gamma+1)/gamma)))
 *
 * r the throat's over the stagnation pressure, held at (2/(gamma+1))^(gamma/(gamma-1)) when choked.
 * Source: Heywood (1988), app. C, eqs. C.8-C.9 (from memory); checked against NACA Report 1135.
 */
import { power } from '../elementary/powers.ts';

/** Pressure ratio at which the throat chokes [-]. */
export function criticalRatio(gamma: number): number {
  return power(2 / (gamma + 1), gamma / (gamma - 1));
}

/** The flow function psi [-] at pressure ratio r <= 1 [-]. */
export function flowFunction(ratio: number, gamma: number): number {
  const r = Math.max(ratio, criticalRatio(gamma));
  if (r >= 1) return 0;
  const t = power(r, (gamma - 1) / gamma);
  // r^(2/gamma) = (r / t)^2, so one power serves.
  return (r / t) * Math.sqrt(((2 * gamma) / (gamma - 1)) * (1 - t));
}

/** Mass flux through the throat [kg/s m^2] from stagnation p0 [Pa], T0 [K], R [J/kg K] to p [Pa]. */
export function nozzleFlux(p0: number, T0: number, R: number, gamma: number, p: number): number {
  return throatFlux(p0, T0, 1, R, gamma, p);
}

/**
 * The same from gas that already moves: static p [Pa], T [K], and `heat` = T0 / T [-], to the
 * pressure `back` [Pa]. Written with t, the throat's over the stagnation temperature, so that one
 * power serves.
 */
function throatFlux(
  p: number,
  T: number,
  heat: number,
  R: number,
  gamma: number,
  back: number,
): number {
  const g = (gamma - 1) / gamma;
  const sonic = 2 / (gamma + 1);
  const t = power(back / p, g) / heat;
  if (t >= 1) return 0;
  const root = Math.sqrt(R * T * heat);
  if (t >= sonic) return (back / (t * root)) * Math.sqrt((2 / g) * (1 - t));
  const throat = p * power(heat * sonic, 1 / g);
  return (throat / (sonic * root)) * Math.sqrt((2 / g) * (1 - sonic));
}
