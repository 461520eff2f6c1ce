/**
 * The working gas: a thermally perfect mixture of fresh air, burned products and fuel vapour.
 *
 * Composition is carried by two mass fractions, `burned` and `fuel`; the rest is air. For each
 * component cv(T) is taken from its own law at knots 100 K apart and runs straight between them, so
 * that internal energy is a parabola in each interval and temperature follows in closed form:
 *
 *   e(T) = e_i + d (cv_i + h_i d),   d = T - T_i,   h_i = (cv_(i+1) - cv_i) / 200 K
 *   d    = 2 (e - e_i) / (cv_i + sqrt(cv_i^2 + 4 h_i (e - e_i)))
 *
 * Source of the laws: species.ts, fuelComponent.ts. Sensible enthalpy is zero at 298.15 K for every component, so that a heating value stated there
 * is the heat released. cv of air is within 0.08 % of the polynomials from 200 to 3000 K
 * (tests/handbook/gas.test.ts).
 */
import { INTERVALS, KNOT, ROW } from '../kernel/fields.ts';
import { GAS_CONSTANT } from '../units.ts';
import { type Component, perfectComponent } from './component.ts';
import { REFERENCE_TEMPERATURE } from './species.ts';

/** Row of the last interval. */
const LAST_ROW = (INTERVALS - 1) * ROW;

/** Arrays of states that `energyAndSound` completes. */
export interface StateFields {
  rho: Float64Array;
  p: Float64Array;
  e: Float64Array;
  c: Float64Array;
  burned: Float64Array;
  fuel: Float64Array;
}

/** Arrays of states that `temperatures` completes. */
export interface CaloricFields {
  T: Float64Array;
  R: Float64Array;
  gamma: Float64Array;
  c: Float64Array;
  p: Float64Array;
  burned: Float64Array;
  fuel: Float64Array;
}

export class Gas {
  /** Specific gas constant of air [J/kg K]. */
  readonly rAir: number;
  /** Gas constant of burned products less that of air [J/kg K]. */
  readonly rBurned: number;
  /** Gas constant of fuel vapour less that of air [J/kg K]. */
  readonly rFuel: number;
  /** Knots of e, cv and h (kernel/fields.ts). */
  readonly table: Float64Array;

  constructor(air: Component, burned: Component, fuel: Component) {
    const constants = [air, burned, fuel].map((part) => GAS_CONSTANT / part.molarMass);
    this.rAir = constants[0]!;
    this.rBurned = constants[1]! - this.rAir;
    this.rFuel = constants[2]! - this.rAir;
    this.table = tabulate([air, burned, fuel], constants);
  }

  /** Specific gas constant [J/kg K]. */
  gasConstant(burned: number, fuel: number): number {
    return this.rAir + burned * this.rBurned + fuel * this.rFuel;
  }

  /** Sensible specific internal energy [J/kg] at temperature T [K]. */
  internalEnergy(T: number, burned: number, fuel: number): number {
    const row = rowAt(T);
    const t = this.table;
    const d = T - KNOT * (row / ROW);
    const e = t[row]! + burned * t[row + 3]! + fuel * t[row + 6]!;
    const cv = t[row + 1]! + burned * t[row + 4]! + fuel * t[row + 7]!;
    const h = t[row + 2]! + burned * t[row + 5]! + fuel * t[row + 8]!;
    return e + d * (cv + h * d);
  }

  /** Temperature [K] of specific internal energy e [J/kg]; `guess` [K] speeds the search. */
  temperature(e: number, burned: number, fuel: number, guess: number): number {
    const t = this.table;
    let row = rowAt(guess);
    for (;;) {
      const e0 = t[row]! + burned * t[row + 3]! + fuel * t[row + 6]!;
      const cv = t[row + 1]! + burned * t[row + 4]! + fuel * t[row + 7]!;
      const h = t[row + 2]! + burned * t[row + 5]! + fuel * t[row + 8]!;
      const de = e - e0;
      if (de < 0 && row > 0) {
        row -= ROW;
        continue;
      }
      const d = (2 * de) / (cv + Math.sqrt(cv * cv + 4 * h * de));
      if (d > KNOT && row < (INTERVALS - 1) * ROW) {
        row += ROW;
        continue;
      }
      return KNOT * (row / ROW) + d;
    }
  }

  /**
   * Internal energy e and sound speed c of the states `from` <= i < `to` from density, pressure and
   * composition: as the methods above, with one look into the table.
   */
  energyAndSound(state: StateFields, from: number, to: number): void {
    const { rho, p, e, c, burned, fuel } = state;
    const { table: t, rAir, rBurned, rFuel } = this;
    for (let i = from; i < to; i++) {
      const yb = burned[i]!;
      const yf = fuel[i]!;
      const R = rAir + yb * rBurned + yf * rFuel;
      const T = p[i]! / (rho[i]! * R);
      const row = rowAt(T);
      const d = T - KNOT * (row / ROW);
      const cv = t[row + 1]! + yb * t[row + 4]! + yf * t[row + 7]!;
      const hd = d * (t[row + 2]! + yb * t[row + 5]! + yf * t[row + 8]!);
      e[i] = t[row]! + yb * t[row + 3]! + yf * t[row + 6]! + d * (cv + hd);
      c[i] = Math.sqrt((1 + R / (cv + 2 * hd)) * R * T);
    }
  }

  /**
   * Temperature, gas constant, gamma, sound speed and pressure of `count` states from density,
   * internal energy and composition; T holds guesses before. As the methods above.
   */
  temperatures(state: CaloricFields, rho: Float64Array, e: Float64Array, count: number): void {
    const { T, R: Rs, gamma: gammas, c, p, burned, fuel } = state;
    const { table: t, rAir, rBurned, rFuel } = this;
    for (let i = 0; i < count; i++) {
      const yb = burned[i]!;
      const yf = fuel[i]!;
      const energy = e[i]!;
      let row = rowAt(T[i]!);
      let above = energy - (t[row]! + yb * t[row + 3]! + yf * t[row + 6]!);
      // The guess is the last step's temperature: its interval is nearly always the right one.
      while (above < 0 && row > 0) {
        row -= ROW;
        above = energy - (t[row]! + yb * t[row + 3]! + yf * t[row + 6]!);
      }
      for (;;) {
        const cv = t[row + 1]! + yb * t[row + 4]! + yf * t[row + 7]!;
        const h = t[row + 2]! + yb * t[row + 5]! + yf * t[row + 8]!;
        const root = Math.sqrt(cv * cv + 4 * h * above);
        const d = (2 * above) / (cv + root);
        if (d > KNOT && row < LAST_ROW) {
          row += ROW;
          above = energy - (t[row]! + yb * t[row + 3]! + yf * t[row + 6]!);
          continue;
        }
        const R = rAir + yb * rBurned + yf * rFuel;
        const temperature = KNOT * (row / ROW) + d;
        // cv + 2 h d is that root.
        const gamma = 1 + R / root;
        T[i] = temperature;
        Rs[i] = R;
        gammas[i] = gamma;
        p[i] = rho[i]! * R * temperature;
        c[i] = Math.sqrt(gamma * R * temperature);
        break;
      }
    }
  }

  /** Specific heat at constant volume [J/kg K]. */
  heatCapacityVolume(T: number, burned: number, fuel: number): number {
    const row = rowAt(T);
    const t = this.table;
    const d = T - KNOT * (row / ROW);
    const cv = t[row + 1]! + burned * t[row + 4]! + fuel * t[row + 7]!;
    return cv + 2 * d * (t[row + 2]! + burned * t[row + 5]! + fuel * t[row + 8]!);
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

function rowAt(T: number): number {
  const i = (T / KNOT) | 0;
  return (i < 0 ? 0 : i < INTERVALS ? i : INTERVALS - 1) * ROW;
}

function tabulate(parts: Component[], constants: number[]): Float64Array {
  const table = new Float64Array(INTERVALS * ROW);
  parts.forEach((part, k) => {
    const rows = energyRows(part, constants[k]!);
    rows.forEach((value, j) => {
      const at = Math.floor(j / 3) * ROW + (j % 3);
      table[at + 3 * k] = value - (k > 0 ? table[at]! : 0);
    });
  });
  return table;
}

/** e, cv, h of one component at each knot, e such that enthalpy is zero at 298.15 K. */
function energyRows(part: Component, gasConstant: number): number[] {
  const cv = Array.from(
    { length: INTERVALS + 1 },
    (_, i) => part.heatCapacity(i * KNOT) - gasConstant,
  );
  const rows: number[] = [];
  let e = 0;
  for (let i = 0; i < INTERVALS; i++) {
    rows.push(e, cv[i]!, (cv[i + 1]! - cv[i]!) / (2 * KNOT));
    e += (KNOT * (cv[i]! + cv[i + 1]!)) / 2;
  }
  const i = Math.floor(REFERENCE_TEMPERATURE / KNOT);
  const d = REFERENCE_TEMPERATURE - i * KNOT;
  const atReference = rows[3 * i]! + d * (rows[3 * i + 1]! + d * rows[3 * i + 2]!);
  const shift = -gasConstant * REFERENCE_TEMPERATURE - atReference;
  return rows.map((value, j) => (j % 3 === 0 ? value + shift : value));
}
