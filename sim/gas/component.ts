/**
 * A component: a fixed mixture of species that moves as one. Three of them make the working gas of
 * an engine: fresh air, burned products, fuel vapour. Sources: species.ts; dry air below.
 */
import { GAS_CONSTANT } from '../units.ts';
import { heatCapacityMolar, SPECIES, type SpeciesName } from './species.ts';

export interface Component {
  /** Molar mass [kg/mol]. */
  molarMass: number;
  /** Specific heat at constant pressure [J/kg K] at temperature T [K]. */
  heatCapacity(T: number): number;
}

/** Moles (or mole fractions, any scale) by species. */
export type Moles = Partial<Record<SpeciesName, number>>;

/** Dry air by mole fraction: US Standard Atmosphere 1976, table 3, the rest counted as nitrogen. */
export const DRY_AIR: Moles = { O2: 0.209476, Ar: 0.00934, CO2: 0.000314, N2: 0.78087 };

/** Dry air with water vapour of the given mole fraction [-]. */
export function moistAir(vapourFraction: number): Moles {
  const dry = Object.entries(DRY_AIR).map(([name, x]) => [name, x * (1 - vapourFraction)]);
  return { ...Object.fromEntries(dry), H2O: vapourFraction };
}

/** Total of moles. */
export function totalMoles(moles: Moles): number {
  return Object.values(moles).reduce((sum, n) => sum + n, 0);
}

/** Mass of moles [kg]. */
export function massOf(moles: Moles): number {
  return speciesOf(moles).reduce((sum, [name, n]) => sum + n * SPECIES[name].molarMass, 0);
}

/** The component that these moles make. */
export function componentOf(moles: Moles): Component {
  const mass = massOf(moles);
  const entries = speciesOf(moles);
  return {
    molarMass: mass / totalMoles(moles),
    heatCapacity: (T) =>
      entries.reduce((sum, [name, n]) => sum + n * heatCapacityMolar(SPECIES[name], T), 0) / mass,
  };
}

/** A gas of constant ratio of specific heats, for checks against closed forms. */
export function perfectComponent(gamma: number, gasConstant: number): Component {
  const cp = (gamma * gasConstant) / (gamma - 1);
  return { molarMass: GAS_CONSTANT / gasConstant, heatCapacity: () => cp };
}

export function speciesOf(moles: Moles): [SpeciesName, number][] {
  return Object.entries(moles) as [SpeciesName, number][];
}
