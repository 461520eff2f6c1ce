/**
 * Burned gas in chemical equilibrium, and the cycle of constant-volume burning with and without it:
 * what dissociation takes from the work of an engine, from first principles.
 *
 *   n_j = (p0 V / R T) exp(sum_i a_ij pi_i - g_j / R T),   sum_j a_ij n_j = b_i
 *
 *   n_j moles of species j   a_ij atoms of element i in it   b_i atoms there are
 *   pi_i element potentials [-], by Newton's method          g_j Gibbs energy at p0 = 1 bar [J/mol]
 *
 * Source: element potentials, as Gordon & McBride, NASA RP-1311 (1994), minimise Gibbs energy. NASA
 * polynomials: a1 to a6 of the stable species from sim/gas/species.ts; their a7, and the radicals,
 * of the mechanism file gri30.yaml, from memory; checked against Cantera by the test.
 */
import { Matrix, solve } from 'ml-matrix';
import { combustionProducts } from '../../sim/gas/combustionProducts.ts';
import type { Moles } from '../../sim/gas/component.ts';
import { DRY_AIR, massOf } from '../../sim/gas/component.ts';
import { type Fuel, fuelNamed } from '../../sim/gas/fuel.ts';
import {
  enthalpyMolar,
  formationEnthalpy,
  heatCapacityMolar,
  SPECIES,
} from '../../sim/gas/species.ts';
import { GAS_CONSTANT } from '../../sim/units.ts';

/** Pressure at which a7 states the entropy [Pa]. */
const STANDARD = 1e5;
const KNOWN = 1000;

interface Polynomial {
  molarMass: number;
  low: readonly number[];
  high: readonly number[];
}

interface ReactingSpecies extends Polynomial {
  name: string;
  /** Atoms of C, H, O, N, Ar. */
  atoms: readonly number[];
  /** Entropy constant a7 below and above 1000 K. */
  entropy: readonly [number, number];
}

const radical = (molarMass: number, low: number[], high: number[]): Polynomial => ({
  molarMass,
  low,
  high,
});

const stable = (
  name: keyof typeof SPECIES,
  atoms: readonly number[],
  entropy: readonly [number, number],
): ReactingSpecies => ({ name, atoms, entropy, ...SPECIES[name] });

const ALL: readonly ReactingSpecies[] = [
  stable('CO2', [1, 0, 2, 0, 0], [9.90105222, 2.27163806]),
  stable('H2O', [0, 2, 1, 0, 0], [-0.849032208, 4.9667701]),
  stable('CO', [1, 0, 1, 0, 0], [3.50840928, 7.81868772]),
  stable('H2', [0, 2, 0, 0, 0], [0.683010238, -3.20502331]),
  stable('O2', [0, 0, 2, 0, 0], [3.65767573, 5.45323129]),
  stable('N2', [0, 0, 0, 2, 0], [3.950372, 5.980528]),
  stable('Ar', [0, 0, 0, 0, 1], [4.366, 4.366]),
  {
    name: 'OH',
    atoms: [0, 1, 1, 0, 0],
    entropy: [-0.103925458, 4.4766961],
    ...radical(
      17.00734e-3,
      [3.99201543, -2.40131752e-3, 4.61793841e-6, -3.88113333e-9, 1.3641147e-12, 3615.08056],
      [3.09288767, 5.48429716e-4, 1.26505228e-7, -8.79461556e-11, 1.17412376e-14, 3858.657],
    ),
  },
  {
    name: 'NO',
    atoms: [0, 0, 1, 1, 0],
    entropy: [2.2808464, 6.3693027],
    ...radical(
      30.0061e-3,
      [4.2184763, -4.638976e-3, 1.1041022e-5, -9.3361354e-9, 2.803577e-12, 9844.623],
      [3.2606056, 1.1911043e-3, -4.2917048e-7, 6.9457669e-11, -4.0336099e-15, 9920.9746],
    ),
  },
  {
    name: 'H',
    atoms: [0, 1, 0, 0, 0],
    entropy: [-0.446682853, -0.446682853],
    ...radical(1.00794e-3, [2.5, 0, 0, 0, 0, 25473.6599], [2.5, 0, 0, 0, 0, 25473.6599]),
  },
  {
    name: 'O',
    atoms: [0, 0, 1, 0, 0],
    entropy: [2.05193346, 4.78433864],
    ...radical(
      15.9994e-3,
      [3.1682671, -3.27931884e-3, 6.64306396e-6, -6.12806624e-9, 2.11265971e-12, 29122.2592],
      [2.56942078, -8.59741137e-5, 4.19484589e-8, -1.00177799e-11, 1.22833691e-15, 29217.5791],
    ),
  },
];

/** Entropy at 1 bar over R [-]. */
function entropyOverR({ low, high, entropy }: ReactingSpecies, T: number): number {
  const [a1, a2, a3, a4, a5] = T <= KNOWN ? low : high;
  const power = a2! + T * (a3! / 2 + T * (a4! / 3 + (T * a5!) / 4));
  return a1! * Math.log(T) + T * power + (T <= KNOWN ? entropy[0] : entropy[1]);
}

/** Burned gas of fixed atoms; moles are those of one mole of fuel. */
export class BurnedGas {
  /** Moles by species, in the order of `names`. */
  moles: number[];
  private readonly atoms: number[];
  private potentials: number[] = [-20, -10, -15, -12, -20];

  constructor(products: Moles) {
    this.moles = ALL.map(({ name }) => products[name as keyof Moles] ?? 0);
    this.atoms = [0, 1, 2, 3, 4].map((i) =>
      ALL.reduce((sum, { atoms }, j) => sum + atoms[i]! * this.moles[j]!, 0),
    );
  }

  /** Mole fraction of a species [-]. */
  fraction(name: string): number {
    const total = this.moles.reduce((sum, n) => sum + n, 0);
    return this.moles[ALL.findIndex((one) => one.name === name)]! / total;
  }

  /** Internal energy, formation included [J]. */
  energy(T: number): number {
    return ALL.reduce(
      (sum, one, j) => sum + this.moles[j]! * (enthalpyMolar(one, T) - GAS_CONSTANT * T),
      0,
    );
  }

  /** Entropy [J/K] at temperature T [K] and volume V [m^3]. */
  entropy(T: number, V: number): number {
    const share = (GAS_CONSTANT * T) / (V * STANDARD);
    return ALL.reduce((sum, one, j) => {
      const n = this.moles[j]!;
      if (n <= 0) return sum;
      return sum + n * GAS_CONSTANT * (entropyOverR(one, T) - Math.log(n * share));
    }, 0);
  }

  /** Brings the composition to equilibrium at T [K] and V [m^3]. */
  equilibrate(T: number, V: number): void {
    const scale = Math.log((STANDARD * V) / (GAS_CONSTANT * T));
    const free = ALL.map(
      (one) => enthalpyMolar(one, T) / (GAS_CONSTANT * T) - entropyOverR(one, T),
    );
    for (let round = 0; round < 200; round++) {
      this.moles = ALL.map(({ atoms }, j) =>
        Math.exp(scale - free[j]! + atoms.reduce((sum, a, i) => sum + a * this.potentials[i]!, 0)),
      );
      const missing = this.atoms.map(
        (b, i) => b - ALL.reduce((sum, { atoms }, j) => sum + atoms[i]! * this.moles[j]!, 0),
      );
      const slopes = this.atoms.map((_, i) =>
        this.atoms.map((__, k) =>
          ALL.reduce((sum, { atoms }, j) => sum + atoms[i]! * atoms[k]! * this.moles[j]!, 0),
        ),
      );
      const change = solve(new Matrix(slopes), Matrix.columnVector(missing)).to1DArray();
      // The dual is convex; far from its foot the exponentials ask for short steps.
      const most = Math.max(...change.map(Math.abs));
      this.potentials = this.potentials.map((x, i) => x + change[i]! * Math.min(1, 2 / most));
      if (most < 1e-11) return;
    }
    throw new Error('no equilibrium was found');
  }
}

/** Temperature at which f, which rises, is 0. */
function bisect(f: (T: number) => number, low: number, high: number): number {
  let [a, b] = [low, high];
  while (b - a > 1e-6) {
    const middle = (a + b) / 2;
    if (f(middle) > 0) b = middle;
    else a = middle;
  }
  return (a + b) / 2;
}

/** Composition is held below this on expansion [K]: CO2 and CO no longer follow. */
const FROZEN_BELOW = 1750;

export interface IdealCycle {
  compressionRatio: number;
  /** Temperature before compression [K]. */
  temperature: number;
}

/**
 * Work of compression and expansion about constant-volume burning without loss [J/kg of air], with
 * products that dissociate or that stay what cold burning makes of them.
 */
export function cycleWork(
  lambda: number,
  { compressionRatio, temperature }: IdealCycle,
  dissociates: boolean,
  fuel: Fuel = fuelNamed('iso-octane'),
): { work: number; peak: number } {
  const { moles, airFuelRatio } = combustionProducts(fuel, lambda);
  const airMass = airFuelRatio * fuel.molarMass;
  const charge = new Charge(fuel, airMass);
  const full = (charge.moles * GAS_CONSTANT * temperature) / 1e5;
  const least = full / compressionRatio;
  const compressed = charge.compressed(temperature, compressionRatio);
  const burned = new BurnedGas(moles);
  const before = charge.energy(compressed);
  const settle = (T: number, V: number) => {
    if (dissociates && T > FROZEN_BELOW) burned.equilibrate(T, V);
  };
  const energyAt = (T: number) => {
    settle(T, least);
    return burned.energy(T) - before;
  };
  const peak = bisect(energyAt, 1500, 4000);
  energyAt(peak);
  const entropy = burned.entropy(peak, least);
  const steps = 12;
  let T = peak;
  for (let i = 1; i <= steps; i++) {
    const V = least * compressionRatio ** (i / steps);
    const at = (trial: number) => {
      settle(trial, V);
      return burned.entropy(trial, V) - entropy;
    };
    T = bisect(at, Math.max(700, T - 500), T);
    at(T);
  }
  const work = before - burned.energy(T) - (before - charge.energy(temperature));
  return { work: work / airMass, peak };
}

/** Air and fuel vapour before burning, those of one mole of fuel. */
class Charge {
  readonly moles: number;
  private readonly fuel: Fuel;
  private readonly air: number;

  constructor(fuel: Fuel, airMass: number) {
    this.fuel = fuel;
    this.air = airMass / massOf(DRY_AIR);
    this.moles = 1 + this.air;
  }

  /** Internal energy, formation included [J]; fuel as vapour. */
  energy(T: number): number {
    const { fuel } = this;
    const air = Object.entries(DRY_AIR).reduce(
      (sum, [name, x]) => sum + x * this.air * enthalpyMolar(SPECIES[name as 'O2'], T),
      0,
    );
    return (
      air +
      this.fuelEnthalpy(T) +
      fuel.molarMass * fuel.latentHeat(298.15) -
      this.moles * GAS_CONSTANT * T
    );
  }

  /** Of the liquid at 298.15 K, warmed as vapour to T [J/mol]. */
  private fuelEnthalpy(T: number): number {
    const { carbon, hydrogen, molarMass, lowerHeatingValue } = this.fuel;
    const formation =
      carbon * formationEnthalpy(SPECIES.CO2) +
      (hydrogen / 2) * formationEnthalpy(SPECIES.H2O) +
      lowerHeatingValue * molarMass;
    const steps = 20;
    const h = (T - 298.15) / steps;
    let sum = 0;
    for (let i = 0; i < steps; i++) sum += h * this.fuel.vapourHeatCapacity(298.15 + (i + 0.5) * h);
    return formation + molarMass * sum;
  }

  /** Temperature after compression without loss [K]. */
  compressed(T: number, ratio: number): number {
    const steps = 200;
    let now = T;
    const capacity = (at: number) => {
      const air = Object.entries(DRY_AIR).reduce(
        (sum, [name, x]) => sum + x * this.air * heatCapacityMolar(SPECIES[name as 'O2'], at),
        0,
      );
      const fuel = this.fuel.molarMass * this.fuel.vapourHeatCapacity(at);
      return (air + fuel) / (this.moles * GAS_CONSTANT) - 1;
    };
    for (let i = 0; i < steps; i++) {
      const rise = Math.log(ratio) / steps;
      const middle = now * Math.exp(rise / 2 / capacity(now));
      now *= Math.exp(rise / capacity(middle));
    }
    return now;
  }
}
