/**
 * The working gas: a thermally perfect mixture of fresh air, burned products and fuel vapour.
 *
 * Composition is carried by two mass fractions, `burned` and `fuel`; the rest is air. cv(T) of each
 * component is a polynomial of fourth degree below 1000 K and another above, as its law is; so nothing is lost by them between 200 and 3500 K (within 1e-9,
 * tests/handbook/gas.test.ts). The step works with the same numbers (step/gas.ts).
 * Source of the laws: species.ts, fuelComponent.ts.
 * Sensible enthalpy is zero at 298.15 K for every component, so that a heating value stated there is
 * the heat released. Source: of each component's cv that of its own file.
 */
import { Matrix, solve } from 'ml-matrix';
import { K_HEAD, R_AIR } from '../step/layout.ts';
import { GAS_CONSTANT } from '../units.ts';
import { type Component, perfectComponent } from './component.ts';
import { REFERENCE_TEMPERATURE } from './species.ts';

/** Where the polynomials change [K], and the ends of what they cover [K]. */
const BREAK = 1000;
const LOWEST = 200;
const HIGHEST = 3500;
const TERMS = 5;

/** cv in powers of T / 1000 K, the same integrated, and e at 0 K of the polynomial [J/kg]. */
interface Polynomial {
  cv: number[];
  e: number[];
  zero: number;
}

export class Gas {
  /** Specific gas constant of air [J/kg K]. */
  readonly rAir: number;
  /** Gas constant of burned products less that of air [J/kg K]. */
  readonly rBurned: number;
  /** Gas constant of fuel vapour less that of air [J/kg K]. */
  readonly rFuel: number;
  /** Below and above 1000 K: air, products less air, vapour less air. */
  private readonly ranges: readonly [Polynomial[], Polynomial[]];
  private known?: Float64Array<ArrayBuffer>;

  constructor(air: Component, burned: Component, fuel: Component) {
    const parts = [air, burned, fuel];
    const constants = parts.map((part) => GAS_CONSTANT / part.molarMass);
    this.rAir = constants[0]!;
    this.rBurned = constants[1]! - this.rAir;
    this.rFuel = constants[2]! - this.rAir;
    const both = parts.map((part, k) => polynomials(part, constants[k]!));
    this.ranges = [beyondAir(both.map(([low]) => low)), beyondAir(both.map(([, high]) => high))];
  }

  /** All numbers in the order in which the step reads them (step/layout.ts). */
  private numbers(): number[] {
    const all = this.ranges.flat();
    return [
      this.rAir,
      this.rBurned,
      this.rFuel,
      ...all.flatMap(({ cv, e, zero }) => [...cv, ...e, zero]),
    ];
  }

  /** The head of a plan's reals with this gas in it, the rest zero. */
  head(): Float64Array<ArrayBuffer> {
    if (!this.known) {
      this.known = new Float64Array(K_HEAD);
      this.known.set(this.numbers(), R_AIR);
    }
    return this.known;
  }

  /** Specific gas constant [J/kg K]. */
  gasConstant(burned: number, fuel: number): number {
    return this.rAir + burned * this.rBurned + fuel * this.rFuel;
  }

  /** Sensible specific internal energy [J/kg] at temperature T [K]. */
  internalEnergy(T: number, burned: number, fuel: number): number {
    const [air, products, vapour] = this.ranges[T < BREAK ? 0 : 1] as [
      Polynomial,
      Polynomial,
      Polynomial,
    ];
    const t = T / 1000;
    const energy = air.zero + T * horner(air.e, t);
    const ofProducts = products.zero + T * horner(products.e, t);
    return energy + burned * ofProducts + fuel * (vapour.zero + T * horner(vapour.e, t));
  }

  /** Temperature [K] of specific internal energy e [J/kg]; `guess` [K] speeds the search. */
  temperature(e: number, burned: number, fuel: number, guess: number): number {
    let T = guess;
    for (let i = 0; i < MOST_STEPS; i++) {
      const off = e - this.internalEnergy(T, burned, fuel);
      const change = off / this.heatCapacityVolume(T, burned, fuel);
      T = Math.max(T + change, 0.5 * T);
      if (Math.abs(change) <= 1e-14 * T) break;
    }
    return T;
  }

  /** Specific heat at constant volume [J/kg K]. */
  heatCapacityVolume(T: number, burned: number, fuel: number): number {
    const [air, products, vapour] = this.ranges[T < BREAK ? 0 : 1] as [
      Polynomial,
      Polynomial,
      Polynomial,
    ];
    const t = T / 1000;
    return horner(air.cv, t) + burned * horner(products.cv, t) + fuel * horner(vapour.cv, t);
  }

  /** Specific heat at constant pressure [J/kg K]. */
  heatCapacityPressure(T: number, burned: number, fuel: number): number {
    return this.heatCapacityVolume(T, burned, fuel) + this.gasConstant(burned, fuel);
  }

  /** Sensible specific enthalpy [J/kg], zero at 298.15 K. */
  enthalpy(T: number, burned: number, fuel: number): number {
    return this.internalEnergy(T, burned, fuel) + this.gasConstant(burned, fuel) * T;
  }

  /** Ratio of specific heats [-]. */
  gamma(T: number, burned: number, fuel: number): number {
    return 1 + this.gasConstant(burned, fuel) / this.heatCapacityVolume(T, burned, fuel);
  }

  /** Speed of sound [m/s]. */
  soundSpeed(T: number, burned: number, fuel: number): number {
    return Math.sqrt(this.gamma(T, burned, fuel) * this.gasConstant(burned, fuel) * T);
  }
}

/** A gas of constant ratio of specific heats, whatever its composition. */
export function perfectGas(gamma: number, gasConstant: number): Gas {
  const one = perfectComponent(gamma, gasConstant);
  return new Gas(one, one, one);
}

const MOST_STEPS = 50;

function horner(coefficients: readonly number[], t: number): number {
  let sum = 0;
  for (let j = coefficients.length - 1; j >= 0; j--) sum = sum * t + coefficients[j]!;
  return sum;
}

/** The two polynomials of a component, e such that enthalpy is zero at 298.15 K and e is one curve. */
function polynomials(part: Component, gasConstant: number): [Polynomial, Polynomial] {
  const cv = (T: number) => part.heatCapacity(T) - gasConstant;
  const low = integrated(through(cv, LOWEST, BREAK));
  const high = integrated(through(cv, BREAK, HIGHEST));
  const at = ({ e }: Polynomial, T: number) => T * horner(e, T / 1000);
  low.zero = -gasConstant * REFERENCE_TEMPERATURE - at(low, REFERENCE_TEMPERATURE);
  high.zero = low.zero + at(low, BREAK) - at(high, BREAK);
  return [low, high];
}

function integrated(cv: number[]): Polynomial {
  return { cv, e: cv.map((c, j) => c / (j + 1)), zero: 0 };
}

/** Coefficients in powers of T / 1000 K of the polynomial through f at places inside a range [K]. */
function through(f: (T: number) => number, from: number, to: number): number[] {
  const places = Array.from({ length: TERMS }, (_, i) => from + ((to - from) * (i + 0.5)) / TERMS);
  const powers = places.map((T) => powersOf(T / 1000));
  return solve(new Matrix(powers), Matrix.columnVector(places.map(f))).to1DArray();
}

function powersOf(t: number): number[] {
  const powers = [1];
  while (powers.length < TERMS) powers.push(powers.at(-1)! * t);
  return powers;
}

/** Air as it is, the others less air. */
function beyondAir([air, ...others]: Polynomial[]): Polynomial[] {
  const less = (a: number[], b: number[]) => a.map((value, j) => value - b[j]!);
  return [
    air!,
    ...others.map(({ cv, e, zero }) => ({
      cv: less(cv, air!.cv),
      e: less(e, air!.e),
      zero: zero - air!.zero,
    })),
  ];
}
