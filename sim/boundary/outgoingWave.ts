/**
 * The wave that leaves a boundary into a duct: given the pressure p that the boundary sets, the
 * gas arriving with state (rho_a, v_a, p_a), v counted out of the duct, comes to
 *
 *   p > p_a, shock:   v = v_a - (p - p_a) sqrt(A / (p + B)),  A = 2/((gamma+1) rho_a),
 *                                                             B = p_a (gamma-1)/(gamma+1)
 *   p < p_a, fan:     v = v_a + 2 c_a/(gamma-1) (1 - (p/p_a)^((gamma-1)/2 gamma))
 *
 * with gamma frozen at the arriving gas. Source: Toro (2009), sec. 4.2-4.3, eqs. 4.6-4.7 (from
 * memory). Exact for any strength, and the third-order match of fan and shock makes it smooth.
 */
import type { ArrivingGas } from './ductEnd.ts';

/** Velocity out of the duct [m/s] behind the wave when the end is held at pressure p [Pa]. */
export function velocityBehind(a: ArrivingGas, p: number): number {
  const { gamma } = a;
  if (p > a.p) {
    const k = (gamma - 1) / (gamma + 1);
    return a.v - (p - a.p) * Math.sqrt(2 / ((gamma + 1) * a.rho * (p + k * a.p)));
  }
  if (p === a.p) return a.v;
  const g = gamma - 1;
  return a.v + ((2 * a.c) / g) * (1 - (p / a.p) ** (g / (2 * gamma)));
}

/** Gas behind the wave: velocity out of the duct [m/s] and density [kg/m^3]. */
export interface GasBehind {
  v: number;
  rho: number;
}

/** Both at once: with t = (p/p_a)^((gamma-1)/2 gamma) the fan has rho = rho_a (p/p_a) / t^2. */
export function gasBehind(a: ArrivingGas, p: number, into: GasBehind): void {
  const { gamma } = a;
  const g = gamma - 1;
  const ratio = p / a.p;
  if (ratio > 1) {
    const k = g / (gamma + 1);
    into.v = a.v - (p - a.p) * Math.sqrt(2 / ((gamma + 1) * a.rho * (p + k * a.p)));
    into.rho = (a.rho * (ratio + k)) / (k * ratio + 1);
    return;
  }
  const t = ratio ** (g / (2 * gamma));
  into.v = a.v + ((2 * a.c) / g) * (1 - t);
  into.rho = (a.rho * ratio) / (t * t);
}

/** Pressure [Pa] at which the arriving gas comes to rest: a shut end. */
export function stagnantPressure(a: ArrivingGas): number {
  const { gamma, v } = a;
  if (v === 0) return a.p;
  if (v < 0) {
    const g = gamma - 1;
    const base = 1 + (0.5 * g * v) / a.c;
    return base <= 0 ? 0 : a.p * base ** ((2 * gamma) / g);
  }
  // Shock: (p - pa)^2 A = v^2 (p + B), a quadratic in the jump p - pa.
  const A = 2 / ((gamma + 1) * a.rho);
  const B = ((gamma - 1) / (gamma + 1)) * a.p;
  const half = (0.5 * v * v) / A;
  return a.p + half + Math.sqrt(half * half + 2 * half * (a.p + B));
}

/** Pressure [Pa] at which the arriving gas reaches the speed of sound out of the duct. */
export function sonicPressure(a: ArrivingGas): number {
  const { gamma } = a;
  const g = gamma - 1;
  const ratio = (2 / (gamma + 1)) * (1 + (0.5 * g * a.v) / a.c);
  return ratio <= 0 ? 0 : a.p * Math.min(ratio, 1) ** ((2 * gamma) / g);
}
