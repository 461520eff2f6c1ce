/**
 * Fuels as blended, by liquid volume, from pure components.
 *
 * Mass-weighted: latent heat, heat capacities, heating value. Volumes add. Vapour pressure follows
 * Raoult's law, which an alcohol in a hydrocarbon breaks: the true pressure over E85 is higher.
 * The heating value is the heat of burning the liquid at 298.15 K to CO2 and water vapour, from
 * heats of formation.
 *
 * Source of the components: fuelComponent.ts. The petrol is a stand-in of three components, surrogate A of Gauthier, Davidson & Hanson,
 * Combust. Flame 139 (2004) 300 (proportions from memory). It burns and cools like pump petrol, but
 * lacks the light ends: its vapour pressure at 37.8 degC is 10 kPa where EN 228 asks 45 to 60 kPa of
 * summer petrol (from memory). A study of evaporation needs a better one.
 */
import { DRY_AIR, massOf } from './component.ts';
import {
  antoinePressure,
  FUEL_COMPONENTS,
  type FuelComponentName,
  latentHeatMolar,
  molarMassOfFuel,
  vapourCpMolar,
} from './fuelComponent.ts';
import { formationEnthalpy, SPECIES } from './species.ts';

/** Liquid volumes of components, any scale. */
export type Blend = Partial<Record<FuelComponentName, number>>;

export interface Fuel {
  /** Atoms per mean molecule. */
  carbon: number;
  hydrogen: number;
  oxygen: number;
  /** Mean molar mass [kg/mol]. */
  molarMass: number;
  /** Density of the liquid at 298 K [kg/m^3]. */
  density: number;
  /** Heat of burning the liquid at 298.15 K, water as vapour [J/kg]. */
  lowerHeatingValue: number;
  /** Air per fuel, by mass, at which neither is left [-]. */
  stoichiometricAirFuelRatio: number;
  /** Specific heat of the liquid at 298 K [J/(kg K)]. */
  liquidHeatCapacity: number;
  /** Lowest boiling point of the components [K]. */
  boilingPoint: number;
  /** Latent heat of the whole blend [J/kg] at temperature T [K]. */
  latentHeat(T: number): number;
  /** Vapour pressure over the fresh blend [Pa] at temperature T [K]. */
  vapourPressure(T: number): number;
  /** Specific heat of the vapour at constant pressure [J/(kg K)] at temperature T [K]. */
  vapourHeatCapacity(T: number): number;
}

const PETROL: Blend = { isoOctane: 63, toluene: 20, heptane: 17 };

/** Liquid volumes of every fuel that a scenario may name. */
const BLENDS = {
  petrol: PETROL,
  'iso-octane': { isoOctane: 1 },
  'n-heptane': { heptane: 1 },
  toluene: { toluene: 1 },
  ethanol: { ethanol: 1 },
  methanol: { methanol: 1 },
  E85: { ethanol: 85, isoOctane: 0.15 * 63, toluene: 0.15 * 20, heptane: 0.15 * 17 },
} as const satisfies Record<string, Blend>;

export type FuelName = keyof typeof BLENDS;

/** Names of all fuels. */
export const FUEL_NAMES = Object.keys(BLENDS) as FuelName[];

/** The fuel of this name. */
export function fuelNamed(name: FuelName): Fuel {
  return fuelOf(BLENDS[name]);
}

/** The fuel that these liquid volumes make. */
function fuelOf(blend: Blend): Fuel {
  const parts = partsOf(blend);
  const sum = (value: (part: Part) => number) =>
    parts.reduce((total, part) => total + part.moles * value(part), 0);
  const mass = sum(({ component }) => molarMassOfFuel(component));
  const carbon = sum(({ component }) => component.carbon);
  const hydrogen = sum(({ component }) => component.hydrogen);
  const oxygen = sum(({ component }) => component.oxygen);
  const burned =
    carbon * formationEnthalpy(SPECIES.CO2) + (hydrogen / 2) * formationEnthalpy(SPECIES.H2O);
  const oxygenNeeded = carbon + hydrogen / 4 - oxygen / 2;
  return {
    carbon,
    hydrogen,
    oxygen,
    molarMass: mass,
    density: mass / sum(({ component }) => molarMassOfFuel(component) / component.density),
    lowerHeatingValue: (sum(({ component }) => component.formation) - burned) / mass,
    stoichiometricAirFuelRatio: ((oxygenNeeded / DRY_AIR.O2!) * massOf(DRY_AIR)) / mass,
    liquidHeatCapacity: sum(({ component }) => component.liquidCp) / mass,
    boilingPoint: Math.min(...parts.map(({ component }) => component.boilingPoint)),
    latentHeat: (T) => sum(({ component }) => latentHeatMolar(component, T)) / mass,
    vapourPressure: (T) => sum(({ component }) => antoinePressure(component, T)),
    vapourHeatCapacity: (T) => sum(({ component }) => vapourCpMolar(component, T)) / mass,
  };
}

interface Part {
  component: (typeof FUEL_COMPONENTS)[FuelComponentName];
  /** Mole fraction in the blend [-]. */
  moles: number;
}

function partsOf(blend: Blend): Part[] {
  const parts = Object.entries(blend).map(([name, volume]) => {
    const component = FUEL_COMPONENTS[name as FuelComponentName];
    return { component, moles: (volume * component.density) / molarMassOfFuel(component) };
  });
  const total = parts.reduce((sum, { moles }) => sum + moles, 0);
  return parts.map(({ component, moles }) => ({ component, moles: moles / total }));
}
