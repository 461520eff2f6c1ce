/** The working gas of an engine: its ambient air, its fuel's vapour, and what they burn to. */
import { combustionProducts } from '../gas/combustionProducts.ts';
import { componentOf, moistAir } from '../gas/component.ts';
import { Gas } from '../gas/gas.ts';
import type { EngineSpecification } from '../specification.ts';

export interface WorkingGas {
  gas: Gas;
  /** Air per fuel as burned, by mass [-]. */
  airFuelRatio: number;
  /** Heat released per mass of fuel, at the mixture as burned [J/kg]. */
  fuelHeat: number;
}

export function workingGas(spec: EngineSpecification): WorkingGas {
  const { ambient, combustion } = spec;
  const air = moistAir(0.01 * ambient.relativeHumidity);
  const fuel = {
    carbon: 8,
    hydrogen: 18,
    oxygen: 0,
    molarMass: 0.114229,
    lowerHeatingValue: 44.3e6,
    vapourHeatCapacity: (T: number) => 400 + 4.3 * T,
  };
  const products = combustionProducts(fuel, combustion.lambda, air);
  return {
    gas: new Gas(componentOf(air), componentOf(products.moles), {
      molarMass: fuel.molarMass,
      heatCapacity: fuel.vapourHeatCapacity,
    }),
    airFuelRatio: products.airFuelRatio,
    fuelHeat: products.heat * combustion.efficiency,
  };
}
