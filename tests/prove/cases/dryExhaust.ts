/** Exhaust gas of a fuel CHn burned to the end, as volume shares. */
import { combustionProducts } from '../../../sim/gas/combustionProducts.ts';
import type { Moles } from '../../../sim/gas/component.ts';

/** Air of the worked values: 3.773 of nitrogen to one of oxygen. */
const AIR: Moles = { O2: 1 / 4.773, N2: 3.773 / 4.773 };

function productsOf(hydrogen: number, lambda: number, waterGas?: number): Moles {
  const fuel = { carbon: 1, hydrogen, oxygen: 0, molarMass: 0.014, lowerHeatingValue: 43e6 };
  return combustionProducts(fuel, lambda, AIR, waterGas).moles;
}

function sharesOf(moles: Moles) {
  const total = Object.values(moles).reduce((sum, n) => sum + n, 0);
  const { CO = 0, CO2 = 0, O2 = 0, H2 = 0, H2O = 0 } = moles;
  return { CO: CO / total, CO2: CO2 / total, O2: O2 / total, H2: H2 / total, H2O: H2O / total };
}

/** With its water. */
export const wetExhaust = (hydrogen: number, lambda: number, waterGas?: number) =>
  sharesOf(productsOf(hydrogen, lambda, waterGas));

/** Without it, as a five-gas bench sees it. */
export const dryExhaust = (hydrogen: number, lambda: number) => ({
  ...sharesOf({ ...productsOf(hydrogen, lambda), H2O: 0 }),
  HC: 0,
  NO: 0,
});
