/**
 * The fuel as a liquid of a few components, each evaporating on its own:
 *
 *   p_i = x_i psat_i(T)                                   Raoult's law over the liquid
 *   h_i(T) = -L_i(T0) + c_i (T - T0),   T0 = 298.15 K      liquid enthalpy, vapour zero at T0
 *   L_i(T) = h_vapour(T) - h_i(T)                          latent heat that follows (Kirchhoff)
 *   D_i = 1.43e-7 T^1.75 / (p sqrt(M) (V_i^1/3 + V_air^1/3)^2)    [m^2/s]  T [K], p [bar], M [g/mol]
 *
 *   x_i  mole fraction in the liquid   c_i  specific heat of the liquid [J/kg K]
 *   M    2 / (1/M_i + 1/M_air)         V    diffusion volume: C 15.9, H 2.31, O 6.11, ring -18.3
 *
 * With constant c_i the latent heat stays within 3 % of the table's from 270 to 320 K (tests); at 340 K
 * methanol's is 3.3 % off, a disagreement that a liquid heat capacity rising with T would remove.
 * Sources: components as gas/fuelComponent.ts; diffusion after Fuller, Schettler & Giddings as in
 * Poling, Prausnitz & O'Connell, ch. 11 (from memory; within 10 %). Surface tension: Jasper, in
 * Lange's Handbook, as transcribed in the public data tables of the `chemicals` library. Viscosity
 * and conductivity: CRC Handbook, from memory. Raoult's law fails for alcohol in petrol, whose true
 * vapour pressure is higher.
 */
import { cubeRoot, power, square } from '../elementary/powers.ts';
import { type FuelName, fuelNamed } from '../gas/fuel.ts';
import {
  FUEL_COMPONENTS,
  type FuelComponent,
  latentHeatMolar,
  molarMassOfFuel,
} from '../gas/fuelComponent.ts';
import { REFERENCE_TEMPERATURE } from '../gas/species.ts';

/** What a spray needs to know of a component beyond the table of fuels. */
interface LiquidComponent extends FuelComponent {
  /** Surface tension at 298 K [N/m]. */
  surfaceTension: number;
  /** Viscosity of the liquid at 298 K [Pa s]. */
  viscosity: number;
  /** Heat conductivity of the liquid [W/(m K)]. */
  conductivity: number;
}

/** Light and heavy ends of petrol; same sources as FUEL_COMPONENTS. */
const PETROL_ENDS = {
  isoPentane: {
    carbon: 5,
    hydrogen: 12,
    oxygen: 0,
    formation: -178400,
    density: 616.4,
    boilingPoint: 300.98,
    latent: [460.4, 37593, 0.39173],
    antoine: [8.92023, 1022.88, -39.69],
    vapourCp: [1.959, 0.038191, 2.434e-5, -5.175e-8, 2.165e-11],
    liquidCp: 164.8,
  },
  decane: {
    carbon: 10,
    hydrogen: 22,
    oxygen: 0,
    formation: -300900,
    density: 727.9,
    boilingPoint: 447.27,
    latent: [617.7, 66126, 0.39797],
    antoine: [9.06853, 1495.17, -79.292],
    vapourCp: [13.467, 4.139e-3, 2.3127e-4, -3.0477e-7, 1.197e-10],
    liquidCp: 314.54,
  },
} as const satisfies Record<string, FuelComponent>;

const LIQUIDS = {
  isoOctane: liquid(FUEL_COMPONENTS.isoOctane, 18.33e-3, 0.473e-3, 0.098),
  heptane: liquid(FUEL_COMPONENTS.heptane, 19.65e-3, 0.387e-3, 0.124),
  toluene: liquid(FUEL_COMPONENTS.toluene, 27.93e-3, 0.56e-3, 0.131),
  ethanol: liquid(FUEL_COMPONENTS.ethanol, 21.97e-3, 1.074e-3, 0.169),
  methanol: liquid(FUEL_COMPONENTS.methanol, 22.07e-3, 0.544e-3, 0.2),
  isoPentane: liquid(PETROL_ENDS.isoPentane, 14.44e-3, 0.214e-3, 0.107),
  decane: liquid(PETROL_ENDS.decane, 23.37e-3, 0.838e-3, 0.132),
};

export type LiquidName = keyof typeof LIQUIDS;

/**
 * Petrol as it evaporates: 20 % of light ends bring the vapour pressure at 37.8 degC to 49 kPa,
 * within EN 228's summer range of 45 to 60 kPa (from memory); decane stands for the heavy ends.
 * Proportions chosen here for that, and for latent heat 340 kJ/kg and density 0.70: no source.
 */
const PETROL: Partial<Record<LiquidName, number>> = {
  isoPentane: 25,
  isoOctane: 40,
  toluene: 25,
  decane: 10,
};

/** Liquid volumes of the fuels as sprayed. E85 is 85 % ethanol; pump E85 runs from 70 to 85 %. */
const SPRAYED: Record<FuelName, Partial<Record<LiquidName, number>>> = {
  petrol: PETROL,
  'iso-octane': { isoOctane: 1 },
  'n-heptane': { heptane: 1 },
  toluene: { toluene: 1 },
  ethanol: { ethanol: 1 },
  methanol: { methanol: 1 },
  E85: {
    ethanol: 85,
    isoPentane: 0.15 * 25,
    isoOctane: 0.15 * 40,
    toluene: 0.15 * 25,
    decane: 0.15 * 10,
  },
};

const AIR_MOLAR_MASS = 28.9647e-3;
const AIR_DIFFUSION_VOLUME = 19.7;

/** One component of the liquid, ready for use. */
export interface LiquidPart {
  /** Mass share in the fresh fuel [-]. */
  share: number;
  /** Molar mass [kg/mol]. */
  molarMass: number;
  /** Density [kg/m^3]. */
  density: number;
  /** Enthalpy at T = 0 K of the straight law [J/kg]: h = base + heatCapacity T. */
  base: number;
  /** Specific heat [J/(kg K)]. */
  heatCapacity: number;
  /** ln psat = a - b / (T + c)  [Pa, K]. */
  a: number;
  b: number;
  c: number;
}

/** The liquid as a whole. Mass arrays elsewhere hold one entry for each of `parts`. */
export interface LiquidFuel {
  parts: readonly LiquidPart[];
  /** Diffusion coefficient of the vapour in air at 298.15 K and 101325 Pa [m^2/s]. */
  diffusivity: number;
  /** Density of the fresh liquid [kg/m^3]. */
  density: number;
  /** Surface tension [N/m], viscosity [Pa s] and conductivity [W/(m K)] of the fresh liquid. */
  surfaceTension: number;
  viscosity: number;
  conductivity: number;
  /** Specific heat of the vapour at 300 K [J/(kg K)]. */
  vapourHeatCapacity: number;
}

/** The fuel of the table of fuels as it is sprayed. */
export function liquidFuel(name: FuelName): LiquidFuel {
  return liquidOf(componentsOf(name), fuelNamed(name).vapourHeatCapacity(300));
}

/** Components of a fuel as it is sprayed, with their volumes. */
export function componentsOf(name: FuelName): [LiquidComponent, number][] {
  const entries = Object.entries(SPRAYED[name]) as [LiquidName, number][];
  return entries.map(([part, volume]) => [LIQUIDS[part], volume]);
}

/** The liquid that these volumes of components make. */
export function liquidOf(
  volumes: readonly (readonly [LiquidComponent, number])[],
  vapourHeatCapacity: number,
): LiquidFuel {
  const total = volumes.reduce((sum, [{ density }, volume]) => sum + density * volume, 0);
  const shares = volumes.map(([{ density }, volume]) => (density * volume) / total);
  const mean = (value: (part: LiquidComponent) => number) =>
    volumes.reduce((sum, [part], i) => sum + shares[i]! * value(part), 0);
  return {
    parts: volumes.map(([part], i) => liquidPart(part, shares[i]!)),
    diffusivity: mean(diffusivity),
    density: 1 / mean((part) => 1 / part.density),
    surfaceTension: mean((part) => part.surfaceTension),
    viscosity: mean((part) => part.viscosity),
    conductivity: mean((part) => part.conductivity),
    vapourHeatCapacity,
  };
}

/** A component with what a spray needs besides. */
export function liquid(
  component: FuelComponent,
  surfaceTension: number,
  viscosity: number,
  conductivity: number,
): LiquidComponent {
  return { ...component, surfaceTension, viscosity, conductivity };
}

function liquidPart(component: LiquidComponent, share: number): LiquidPart {
  const molarMass = molarMassOfFuel(component);
  const heatCapacity = component.liquidCp / molarMass;
  const latent = latentHeatMolar(component, REFERENCE_TEMPERATURE) / molarMass;
  const [A, B, C] = component.antoine;
  return {
    share,
    molarMass,
    density: component.density,
    base: -latent - heatCapacity * REFERENCE_TEMPERATURE,
    heatCapacity,
    a: A * Math.LN10,
    b: B * Math.LN10,
    c: C,
  };
}

function diffusivity(part: LiquidComponent): number {
  const { carbon, hydrogen, oxygen } = part;
  // Of the components only toluene has a ring: fewer hydrogens than a chain of its carbons.
  const ring = carbon >= 6 && hydrogen < carbon * 2 ? -18.3 : 0;
  const volume = carbon * 15.9 + hydrogen * 2.31 + oxygen * 6.11 + ring;
  const M = 2000 / (1 / molarMassOfFuel(part) + 1 / AIR_MOLAR_MASS);
  const reach = square(cubeRoot(volume) + cubeRoot(AIR_DIFFUSION_VOLUME));
  return (1.43e-7 * power(REFERENCE_TEMPERATURE, 1.75)) / (1.01325 * Math.sqrt(M) * reach);
}

/** Total of component masses [kg]. */
export function totalMass(mass: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < mass.length; i++) sum += mass[i]!;
  return sum;
}

/** Volume of component masses [m^3]; volumes add. */
export function liquidVolume(fuel: LiquidFuel, mass: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < mass.length; i++) sum += mass[i]! / fuel.parts[i]!.density;
  return sum;
}

/** Enthalpy of component masses [J] at T [K]; a liquid's energy and enthalpy are taken as one. */
export function liquidEnergy(fuel: LiquidFuel, mass: Float64Array, T: number): number {
  let sum = 0;
  for (let i = 0; i < mass.length; i++) {
    const part = fuel.parts[i]!;
    sum += mass[i]! * (part.base + part.heatCapacity * T);
  }
  return sum;
}

/** Temperature [K] of component masses that hold `energy` [J]. */
export function liquidTemperature(fuel: LiquidFuel, mass: Float64Array, energy: number): number {
  let base = 0;
  let capacity = 0;
  for (let i = 0; i < mass.length; i++) {
    const part = fuel.parts[i]!;
    base += mass[i]! * part.base;
    capacity += mass[i]! * part.heatCapacity;
  }
  return (energy - base) / capacity;
}
