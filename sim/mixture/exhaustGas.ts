/**
 * Lambda from what five-gas equipment reads in dry exhaust gas, by balance of carbon, hydrogen and oxygen:
 *
 *             CO2 + CO/2 + O2 + NO/2 + (h/4 w/(w + CO/CO2) - o/2) (CO2 + CO)
 *   lambda = ----------------------------------------------------------------
 *                      (1 + h/4 - o/2) (CO2 + CO + c HC)
 *
 *   CO2, CO, O2, NO, HC  volume shares of the dry gas [-]   h, o  atoms of H and O per C of the fuel
 *   w  water-gas constant   c  carbon atoms of what stands for the hydrocarbons
 *
 * Source: Brettschneider, Bosch Technische Berichte 6 (1979) 177 (as a maker of analysers prints it);
 * w = 3.5 with it. c = 6: hydrocarbons as hexane (from memory). An infrared cell sees about half the
 * carbon of burned petrol, c = 12: Singer & Harley, J. Air Waste Manage. Assoc. 48 (1998) 1244 (volume and
 * page from memory). Holds for dry gas that nothing has been added to: air drawn in reads lean.
 */

import { WATER_GAS_CONSTANT } from '../gas/combustionProducts.ts';

/** Volume shares of the dry gas [-]. */
export interface ExhaustGas {
  CO: number;
  CO2: number;
  O2: number;
  /** As so many molecules of hexane. */
  HC: number;
  NO: number;
}

/** Atoms per atom of carbon in the fuel. */
export interface FuelAtoms {
  hydrogen: number;
  oxygen: number;
}

const HEXANE_CARBON = 6;

/** Air over stoichiometric air [-]. */
export function lambdaOfGas(
  { CO, CO2, O2, HC, NO }: ExhaustGas,
  { hydrogen, oxygen }: FuelAtoms,
  carbon = HEXANE_CARBON,
): number {
  const water =
    (hydrogen / 4) * (WATER_GAS_CONSTANT / (WATER_GAS_CONSTANT + CO / CO2)) - oxygen / 2;
  const found = CO2 + CO / 2 + O2 + NO / 2 + water * (CO2 + CO);
  return found / ((1 + hydrogen / 4 - oxygen / 2) * (CO2 + CO + carbon * HC));
}
