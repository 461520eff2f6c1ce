/**
 * Heat between the gas of an engine's pipe and its wall, unsteady flow counted:
 *
 *   Nu = 0.07 Re^(3/4),   h = Nu k / D = St cp rho |u|,   St = 0.07 Re^(-1/4) / Pr
 *
 *   h   heat transfer coefficient [W/m^2 K]     D   diameter [m]      k   conductivity [W/m K]
 *   Re  rho |u| D / mu, of the flow of the moment [-]                 Pr  Prandtl number [-]
 *
 * Source: Depcik & Assanis, A Universal Heat Transfer Correlation for Intake and Exhaust Flows in a
 * Spark-Ignition Internal Combustion Engine, SAE 2002-01-0372: one constant fitted to published data of
 * intakes and exhausts, correlation coefficients 0.845 and 0.800 (abstract). Twice the heat of steady,
 * fully developed flow (Dittus-Boelter) at Re of 5e4. The range of Re is not stated there; the data
 * behind it lie between some 1e3 and 1e5 (from memory).
 */
import { PRANDTL } from '../gas/viscosity.ts';

const CONSTANT = 0.07;

/** One standard uncertainty of the coefficient [share of it]: our own reading of that scatter, no source. */
export const DUCT_HEAT_SPREAD = 0.3;

/** Reynolds number below which it is held [-]: gas all but at rest. */
const LOWEST_REYNOLDS = 100;

/** Nusselt number [-] at a Reynolds number [-]. */
export function ductNusselt(reynolds: number): number {
  const root = Math.sqrt(reynolds);
  return CONSTANT * root * Math.sqrt(root);
}

/** Stanton number [-]; two square roots, no power. */
export function ductStanton(reynolds: number): number {
  return CONSTANT / (PRANDTL * Math.sqrt(Math.sqrt(Math.max(reynolds, LOWEST_REYNOLDS))));
}
