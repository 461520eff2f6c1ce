/**
 * Heat that a fuel gives an engine at a stated mixture, once dissociation and uneven mixing are paid.
 *
 *   q = AFR(lambda) <h(lambda')>,   h = phi q0 / AFR      lambda' about lambda, standard deviation s
 *
 *   q    heat per mass of fuel [J/kg]           q0   the same burned cold and even (combustionProducts.ts)
 *   AFR  air per fuel by mass [-]               phi  share of the work that dissociation leaves [-]
 *   s    unevenness of the mixture within and between cycles [-]; every part holds as much air
 *
 * Air is what a cylinder can have no more of, so the mean is one of heat per air. Torque then peaks
 * rich, at lambda 0.85 to 0.92: at 1 dissociation takes most, and part of the air meets no fuel.
 *
 * Source of phi: work of the cycle of constant-volume burning, compression ratio 10.5 from 350 K, with
 * products in equilibrium over those that stay as burned cold, computed by tests/exact/equilibrium.ts
 * for the stand-in petrol. The core of the charge burns all but adiabatically (Heywood (1988), sec. 9.2,
 * from memory); gas that has lost a fifth of its heat to the wall dissociates half as much. Source of s:
 * exhaust at lambda 1 still holds 0.4 to 0.8 % oxygen (D'Alleva & Lovell, SAE J. 38 (1936) 90, figures
 * from memory), where s of 0.05 leaves 0.4 %; part of it comes out of crevices, which have their own
 * efficiency. Range: lambda 0.6 to 1.6, full load.
 */
import { exp } from '../elementary/powers.ts';
import { interpolateLinear } from '../interpolation.ts';
import { combustionProducts, type FuelFormula } from './combustionProducts.ts';
import { DRY_AIR, type Moles } from './component.ts';

/** phi [-] against lambda [-]. */
export const DISSOCIATION_TABLE = {
  lambda: [0.6, 0.7, 0.8, 0.85, 0.9, 0.95, 0.975, 1, 1.025, 1.05, 1.1, 1.2, 1.4, 1.6],
  share: [
    0.9975, 0.9966, 0.9946, 0.9923, 0.9884, 0.9814, 0.9755, 0.9653, 0.9711, 0.9746, 0.9793, 0.9844,
    0.989, 0.9913,
  ],
} as const;

/** How far phi moves with fuel, compression ratio from 8 to 14, and charge from 310 to 400 K [-]. */
export const DISSOCIATION_SPREAD = 0.008;

/** Standard deviation of lambda within the charge [-]: least, usual, greatest. */
export const UNEVENNESS = { least: 0.03, usual: 0.05, greatest: 0.08 } as const;

/** Share of the work that dissociation leaves [-]. */
export function dissociationShare(lambda: number): number {
  return interpolateLinear(DISSOCIATION_TABLE.lambda, DISSOCIATION_TABLE.share, lambda);
}

/** Places of the mean over a normal distribution cut off at three standard deviations. */
const PLACES = 25;

/** Heat per mass of fuel [J/kg] that turns into work as if it were all released. */
export function releasedHeat(
  fuel: FuelFormula,
  lambda: number,
  air: Moles = DRY_AIR,
  unevenness: number = UNEVENNESS.usual,
): number {
  let sum = 0;
  let weights = 0;
  for (let i = 0; i < PLACES; i++) {
    const deviations = (6 * (i + 0.5)) / PLACES - 3;
    const here = lambda + deviations * unevenness;
    const { heat, airFuelRatio } = combustionProducts(fuel, here, air);
    const weight = exp(-0.5 * deviations * deviations);
    weights += weight;
    sum += (weight * dissociationShare(here) * heat) / airFuelRatio;
  }
  return (sum / weights) * combustionProducts(fuel, lambda, air).airFuelRatio;
}
