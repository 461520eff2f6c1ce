/**
 * Products and heat of burning a fuel CxHyOz with air at a given excess-air ratio lambda.
 *
 * lambda >= 1: CO2, H2O, left-over O2. lambda < 1: all oxygen is used; CO and H2 remain, shared by
 * the water-gas balance  n(CO) n(H2O) = K n(CO2) n(H2)  with K = 3.5, frozen at about 1740 K.
 * Source: Heywood (1988), Internal Combustion Engine Fundamentals, sec. 4.9 (from memory).
 * Heat follows from enthalpies of formation at 298.15 K, water as vapour.
 */
import { DRY_AIR, type Moles, massOf, speciesOf } from './component.ts';
import { formationEnthalpy, SPECIES } from './species.ts';

export interface FuelFormula {
  /** Atoms of carbon, hydrogen and oxygen per molecule (or per any unit of formula). */
  carbon: number;
  hydrogen: number;
  oxygen: number;
  /** Mass of that unit [kg/mol]. */
  molarMass: number;
  /** Lower heating value at 298.15 K [J/kg]. */
  lowerHeatingValue: number;
}

export interface CombustionProducts {
  /** Moles per mole of fuel. */
  moles: Moles;
  /** Air burned per fuel, by mass [-]. */
  airFuelRatio: number;
  /** Heat released per mass of fuel [J/kg]. */
  heat: number;
}

/** K above [-]. */
export const WATER_GAS_CONSTANT = 3.5;

/** Products of one mole of fuel with `lambda` times its stoichiometric air. */
export function combustionProducts(
  fuel: FuelFormula,
  lambda: number,
  air: Moles = DRY_AIR,
  waterGas = WATER_GAS_CONSTANT,
): CombustionProducts {
  const oxygenNeeded = fuel.carbon + fuel.hydrogen / 4 - fuel.oxygen / 2;
  const scale = (lambda * oxygenNeeded) / air.O2!;
  const supplied: Moles = Object.fromEntries(speciesOf(air).map(([s, x]) => [s, x * scale]));
  const moles =
    lambda >= 1
      ? leanProducts(fuel, supplied, oxygenNeeded)
      : richProducts(fuel, supplied, waterGas);
  return {
    moles,
    airFuelRatio: massOf(supplied) / fuel.molarMass,
    heat: (formationOfFuel(fuel) + formation(supplied) - formation(moles)) / fuel.molarMass,
  };
}

function leanProducts(fuel: FuelFormula, supplied: Moles, oxygenNeeded: number): Moles {
  return {
    ...supplied,
    O2: supplied.O2! - oxygenNeeded,
    CO2: (supplied.CO2 ?? 0) + fuel.carbon,
    H2O: (supplied.H2O ?? 0) + fuel.hydrogen / 2,
  };
}

function richProducts(fuel: FuelFormula, supplied: Moles, K: number): Moles {
  const carbon = fuel.carbon + (supplied.CO2 ?? 0);
  const hydrogen = fuel.hydrogen / 2 + (supplied.H2O ?? 0);
  const oxygen = fuel.oxygen + 2 * supplied.O2! + 2 * (supplied.CO2 ?? 0) + (supplied.H2O ?? 0);
  // With c = n(CO): CO2 = carbon - c, H2O = oxygen - 2 carbon + c, H2 = hydrogen - H2O.
  const water = oxygen - 2 * carbon;
  const a = 1 - K;
  const b = water + K * (hydrogen - water + carbon);
  const q = -K * carbon * (hydrogen - water);
  const c = (-b + Math.sqrt(b * b - 4 * a * q)) / (2 * a);
  return {
    ...supplied,
    O2: 0,
    CO: c,
    CO2: carbon - c,
    H2O: water + c,
    H2: hydrogen - water - c,
  };
}

function formation(moles: Moles): number {
  return speciesOf(moles).reduce((sum, [s, n]) => sum + n * formationEnthalpy(SPECIES[s]), 0);
}

function formationOfFuel(fuel: FuelFormula): number {
  const burned =
    fuel.carbon * formationEnthalpy(SPECIES.CO2) +
    (fuel.hydrogen / 2) * formationEnthalpy(SPECIES.H2O);
  return burned + fuel.lowerHeatingValue * fuel.molarMass;
}
