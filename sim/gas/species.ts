/**
 * Ideal-gas thermodynamics of single species by NASA seven-coefficient polynomials:
 *
 *   cp/R  = a1 + a2 T + a3 T^2 + a4 T^3 + a5 T^4
 *   h/RT  = a1 + a2 T/2 + a3 T^2/3 + a4 T^3/4 + a5 T^4/5 + a6/T
 *
 * Source: coefficients of the public mechanism files air.yaml and gri30.yaml of the Cantera library
 * (200 to 1000 K and 1000 to 3500 K); hydrogen from the same file, from memory.
 */
import { GAS_CONSTANT } from '../units.ts';

/** Temperature at which enthalpies of formation are stated [K]. */
export const REFERENCE_TEMPERATURE = 298.15;

/** The polynomials' own lower limit [K]; below it cp is held. */
const LOWEST_TEMPERATURE = 200;

export interface Species {
  /** Molar mass [kg/mol]. */
  molarMass: number;
  /** a1..a6 below 1000 K. */
  low: readonly number[];
  /** a1..a6 above 1000 K. */
  high: readonly number[];
}

export const SPECIES = {
  O2: {
    molarMass: 31.9988e-3,
    low: [3.78245636, -2.99673416e-3, 9.84730201e-6, -9.68129509e-9, 3.24372837e-12, -1063.94356],
    high: [3.28253784, 1.48308754e-3, -7.57966669e-7, 2.09470555e-10, -2.16717794e-14, -1088.45772],
  },
  N2: {
    molarMass: 28.0134e-3,
    low: [3.298677, 1.4082404e-3, -3.963222e-6, 5.641515e-9, -2.444854e-12, -1020.8999],
    high: [2.92664, 1.4879768e-3, -5.68476e-7, 1.0097038e-10, -6.753351e-15, -922.7977],
  },
  Ar: {
    molarMass: 39.948e-3,
    low: [2.5, 0, 0, 0, 0, -745.375],
    high: [2.5, 0, 0, 0, 0, -745.375],
  },
  CO2: {
    molarMass: 44.0095e-3,
    low: [2.35677352, 8.98459677e-3, -7.12356269e-6, 2.45919022e-9, -1.43699548e-13, -48371.9697],
    high: [3.85746029, 4.41437026e-3, -2.21481404e-6, 5.23490188e-10, -4.72084164e-14, -48759.166],
  },
  H2O: {
    molarMass: 18.01528e-3,
    low: [4.19864056, -2.0364341e-3, 6.52040211e-6, -5.48797062e-9, 1.77197817e-12, -30293.7267],
    high: [3.03399249, 2.17691804e-3, -1.64072518e-7, -9.7041987e-11, 1.68200992e-14, -30004.2971],
  },
  CO: {
    molarMass: 28.0101e-3,
    low: [3.57953347, -6.1035368e-4, 1.01681433e-6, 9.07005884e-10, -9.04424499e-13, -14344.086],
    high: [2.71518561, 2.06252743e-3, -9.98825771e-7, 2.30053008e-10, -2.03647716e-14, -14151.8724],
  },
  H2: {
    molarMass: 2.01588e-3,
    low: [2.34433112, 7.98052075e-3, -1.9478151e-5, 2.01572094e-8, -7.37611761e-12, -917.935173],
    high: [3.3372792, -4.94024731e-5, 4.99456778e-7, -1.79566394e-10, 2.00255376e-14, -950.158922],
  },
} as const satisfies Record<string, Species>;

export type SpeciesName = keyof typeof SPECIES;

/** Molar heat capacity at constant pressure [J/mol K] at temperature T [K]. */
export function heatCapacityMolar(species: Species, T: number): number {
  const t = Math.max(T, LOWEST_TEMPERATURE);
  const [a1, a2, a3, a4, a5] = t <= 1000 ? species.low : species.high;
  return GAS_CONSTANT * (a1! + t * (a2! + t * (a3! + t * (a4! + t * a5!))));
}

/** Molar enthalpy, formation included [J/mol], at temperature T [K] >= 200 K. */
export function enthalpyMolar(species: Species, T: number): number {
  const [a1, a2, a3, a4, a5, a6] = T <= 1000 ? species.low : species.high;
  const perT = a1! + T * (a2! / 2 + T * (a3! / 3 + T * (a4! / 4 + (T * a5!) / 5)));
  return GAS_CONSTANT * (T * perT + a6!);
}

/** Molar enthalpy of formation at 298.15 K [J/mol]. */
export function formationEnthalpy(species: Species): number {
  return enthalpyMolar(species, REFERENCE_TEMPERATURE);
}
