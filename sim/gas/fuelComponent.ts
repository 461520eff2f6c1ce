/**
 * Pure liquids that fuels are blended from.
 *
 *   latent heat       hfg = C1 (1 - T/Tc)^C2           [kJ/kmol]   Tc critical temperature [K]
 *   vapour pressure   log10 p = A - B / (T + C)        [Pa, K]
 *   vapour cp/R       a0 + a1 T + a2 T^2 + a3 T^3 + a4 T^4         200 to 1000 K
 *
 * Sources. Latent heat: Perry's Chemical Engineers' Handbook, table 2-150 (DIPPR equation 106).
 * Vapour pressure, vapour and liquid cp (298 K): Poling, Prausnitz & O'Connell, The Properties of
 * Gases and Liquids, 5th ed., app. A. Boiling point: Yaws. Density at 298 K: Perry, table 2-32
 * (DIPPR equation 105). Heat of formation of the liquid at 298.15 K: Active Thermochemical Tables
 * 1.112 (Argonne). All as transcribed in the public data tables of the `chemicals` library.
 */
import { power, tenTo } from '../elementary/powers.ts';
import { GAS_CONSTANT } from '../units.ts';

/** Molar masses of the elements [kg/mol]: IUPAC abridged standard atomic weights. */
const CARBON = 12.011e-3;
const HYDROGEN = 1.008e-3;
const OXYGEN = 15.999e-3;

/** Vapour cp is held beyond the range that every polynomial covers [K]. */
const LOWEST_TEMPERATURE = 200;
const HIGHEST_TEMPERATURE = 1000;

export interface FuelComponent {
  /** Atoms per molecule. */
  carbon: number;
  hydrogen: number;
  oxygen: number;
  /** Heat of formation of the liquid at 298.15 K [J/mol]. */
  formation: number;
  /** Density of the liquid at 298 K [kg/m^3]. */
  density: number;
  /** Normal boiling point [K]. */
  boilingPoint: number;
  /** Critical temperature [K], C1 [kJ/kmol] and C2 [-] of the latent heat. */
  latent: readonly [Tc: number, C1: number, C2: number];
  /** A, B, C of the vapour pressure. */
  antoine: readonly [A: number, B: number, C: number];
  /** a0 .. a4 of vapour cp/R. */
  vapourCp: readonly [number, number, number, number, number];
  /** Molar heat capacity of the liquid at 298 K [J/(mol K)]. */
  liquidCp: number;
}

export const FUEL_COMPONENTS = {
  isoOctane: {
    carbon: 8,
    hydrogen: 18,
    oxygen: 0,
    formation: -258800,
    density: 690.3,
    boilingPoint: 372.37,
    latent: [543.8, 47711, 0.37949],
    antoine: [8.93646, 1257.85, -52.383],
    vapourCp: [0.384, 0.077059, 6.65e-6, -5.565e-8, 2.619e-11],
    liquidCp: 238.55,
  },
  heptane: {
    carbon: 7,
    hydrogen: 16,
    oxygen: 0,
    formation: -223910,
    density: 681.5,
    boilingPoint: 371.55,
    latent: [540.2, 50014, 0.38795],
    antoine: [9.02023, 1263.909, -56.718],
    vapourCp: [9.634, 4.156e-3, 1.5494e-4, -2.0066e-7, 7.77e-11],
    liquidCp: 224.98,
  },
  toluene: {
    carbon: 7,
    hydrogen: 8,
    oxygen: 0,
    formation: 12360,
    density: 863.9,
    boilingPoint: 383.78,
    latent: [591.75, 49507, 0.37742],
    antoine: [9.05043, 1327.62, -55.525],
    vapourCp: [3.866, 3.558e-3, 1.3356e-4, -1.8659e-7, 7.69e-11],
    liquidCp: 157.29,
  },
  ethanol: {
    carbon: 2,
    hydrogen: 6,
    oxygen: 1,
    formation: -277030,
    density: 785.9,
    boilingPoint: 351.44,
    latent: [514, 55789, 0.31245],
    antoine: [10.33675, 1648.22, -42.232],
    vapourCp: [4.396, 6.28e-4, 5.546e-5, -7.024e-8, 2.685e-11],
    liquidCp: 112.25,
  },
  methanol: {
    carbon: 1,
    hydrogen: 4,
    oxygen: 1,
    formation: -238400,
    density: 789.6,
    boilingPoint: 337.75,
    latent: [512.5, 50451, 0.33594],
    antoine: [10.20277, 1580.08, -33.65],
    vapourCp: [4.714, -6.986e-3, 4.211e-5, -4.443e-8, 1.535e-11],
    liquidCp: 81.08,
  },
} as const satisfies Record<string, FuelComponent>;

export type FuelComponentName = keyof typeof FUEL_COMPONENTS;

/** Molar mass [kg/mol]. */
export function molarMassOfFuel({ carbon, hydrogen, oxygen }: FuelComponent): number {
  return carbon * CARBON + hydrogen * HYDROGEN + oxygen * OXYGEN;
}

/** Latent heat of vaporisation [J/mol] at temperature T [K]; 0 from the critical point on. */
export function latentHeatMolar({ latent: [Tc, C1, C2] }: FuelComponent, T: number): number {
  return T < Tc ? C1 * power(1 - T / Tc, C2) : 0;
}

/** Vapour pressure of the pure liquid [Pa] at temperature T [K]; best within 60 K of 330 K. */
export function antoinePressure({ antoine: [A, B, C] }: FuelComponent, T: number): number {
  return tenTo(A - B / (T + C));
}

/** Molar heat capacity of the vapour at constant pressure [J/(mol K)] at temperature T [K]. */
export function vapourCpMolar({ vapourCp }: FuelComponent, T: number): number {
  const t = Math.min(Math.max(T, LOWEST_TEMPERATURE), HIGHEST_TEMPERATURE);
  return GAS_CONSTANT * vapourCp.reduceRight((sum, a) => sum * t + a, 0);
}
