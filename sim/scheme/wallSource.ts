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
  const re = Math.max(reynolds, LOWEST_REYNOLDS);
  const log = Math.log10((relativeRoughness / 3.7) ** 1.11 + 6.9 / re);
  return Math.max(16 / re, 1 / (12.96 * log * log));
}

/** Refreshes the friction factor of each cell; it changes slowly, so now and then is enough. */
export function refreshFriction(duct: Duct): void {
  if (Number.isNaN(duct.roughness)) return;
  const { cells, prim, mesh } = duct;
  for (let i = 0; i < mesh.cells; i++) {
    const diameter = mesh.diameter[i]!;
    const reynolds = (Math.abs(cells.momentum[i]!) * diameter) / viscosity(prim.T[i]!);
    duct.fanning[i] = fanningFactor(reynolds, duct.roughness / diameter);
  }
}
