/** The working gas of an engine: its ambient air, its fuel's vapour, and what they burn to. */
import { vapourFraction } from '../gas/atmosphere.ts';
import { combustionProducts } from '../gas/combustionProducts.ts';
import { componentOf, moistAir } from '../gas/component.ts';
import { type FuelName, fuelNamed } from '../gas/fuel.ts';
import { Gas } from '../gas/gas.ts';
import { releasedHeat } from '../gas/releasedHeat.ts';
import type { EngineSpecification } from '../specification.ts';

export interface WorkingGas {
  gas: Gas;
  /** Air per fuel as burned, by mass [-]. */
  airFuelRatio: number;
  /** Heat a mass of fuel gives to work at this mixture (gas/releasedHeat.ts) [J/kg]. */
  fuelHeat: number;
}

export function workingGas(spec: EngineSpecification): WorkingGas {
  const { ambient, combustion } = spec;
  const { pressure, temperature, relativeHumidity } = ambient;
  const air = moistAir(vapourFraction(pressure, temperature, relativeHumidity));
  const fuel = fuelNamed(combustion.fuel as FuelName);
  const products = combustionProducts(fuel, combustion.lambda, air);
  return {
    gas: new Gas(componentOf(air), componentOf(products.moles), {
      molarMass: fuel.molarMass,
      heatCapacity: fuel.vapourHeatCapacity,
    }),
    airFuelRatio: products.airFuelRatio,
    fuelHeat: releasedHeat(fuel, combustion.lambda, air) * combustion.efficiency,
  };
}
