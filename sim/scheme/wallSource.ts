/**
 * Friction and heat at the wall of a duct.
 *
 *   force per volume  = -(2 f / D + K' / 2) rho u |u|      f Fanning factor, K' loss heads per metre
 *   heat per volume   = (4 / D) h (Tw - T)
 *   h = cp rho |u| (f / 2) Pr^(-2/3)                       Reynolds-Colburn analogy
 *   1 / sqrt(f) = -3.6 log10((eps / 3.7 D)^1.11 + 6.9 / Re)  turbulent, Haaland (1983)
 *   f = 16 / Re                                            laminar; the larger of the two is used
 *
 * Sources: Haaland (1983), J. Fluids Eng. 105:89 (within 2 % of Colebrook, Re 4e3 to 1e8); Colburn
 * (1933). Both are steady, fully developed laws used in unsteady flow: common practice.
 */
import type { Duct } from '../duct/duct.ts';
import { PRANDTL, viscosity } from '../gas/viscosity.ts';

/** Pr^(-2/3). */
export const COLBURN = PRANDTL ** (-2 / 3);

/** Reynolds number below which it is held: gas all but at rest. */
const LOWEST_REYNOLDS = 100;

/** Fanning friction factor [-] at a Reynolds number [-] and relative roughness [-]. */
export function fanningFactor(reynolds: number, relativeRoughness: number): number {
  return fanningOf(reynolds, (relativeRoughness / 3.7) ** 1.11);
}

/** The same with the roughness term (eps / 3.7 D)^1.11 worked out beforehand. */
function fanningOf(reynolds: number, roughTerm: number): number {
  const re = Math.max(reynolds, LOWEST_REYNOLDS);
  const log = Math.log(roughTerm + 6.9 / re);
  return Math.max(16 / re, TURBULENT / (log * log));
}

/** 1 / 3.6^2, with the logarithm to base e. */
const TURBULENT = (Math.LN10 / 3.6) ** 2;

/**
 * Refreshes the friction factor of each cell. It is done every step: where flow turns round, the
 * factor runs through two decades within a few, and to refresh it every eighth cost 0.2 % of
 * volumetric efficiency and kept cycles from repeating.
 */
export function refreshFriction(duct: Duct): void {
  if (Number.isNaN(duct.roughness)) return;
  const { fanning, roughTerm } = duct;
  const { momentum } = duct.cells;
  const { T } = duct.prim;
  const { cells, diameter } = duct.mesh;
  for (let i = 0; i < cells; i++) {
    const reynolds = (Math.abs(momentum[i]!) * diameter[i]!) / viscosity(T[i]!);
    fanning[i] = fanningOf(reynolds, roughTerm[i]!);
  }
}
