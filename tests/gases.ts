/** Gases for tests. */
import { combustionProducts } from '../sim/gas/combustionProducts.ts';
import { componentOf, DRY_AIR } from '../sim/gas/component.ts';
import { Gas, perfectGas } from '../sim/gas/gas.ts';

/** Iso-octane; its vapour's heat capacity a straight line, good enough to carry about. */
export const ISO_OCTANE = {
  carbon: 8,
  hydrogen: 18,
  oxygen: 0,
  molarMass: 0.114229,
  lowerHeatingValue: 44.3e6,
};

/** Dry air, its stoichiometric products with iso-octane, and iso-octane vapour. */
export function airAndProducts(): Gas {
  const { moles } = combustionProducts(ISO_OCTANE, 1);
  return new Gas(componentOf(DRY_AIR), componentOf(moles), {
    molarMass: ISO_OCTANE.molarMass,
    heatCapacity: (T) => 400 + 4.3 * T,
  });
}

/** Air of constant gamma 1.4, for closed forms. */
export const AIR_GAMMA = 1.4;
export const AIR_R = 287.05;
export const perfectAir = () => perfectGas(AIR_GAMMA, AIR_R);
