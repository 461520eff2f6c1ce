/**
 * A duct: a mesh, what its walls do, and the state of the gas in its cells. The state lives in `slots`
 * (step/layout.ts); once the duct stands in a network, these are the network's own memory.
 */
import type { Gas } from '../gas/gas.ts';
import { use } from '../step/lanes.ts';
import * as ROW from '../step/layout.ts';
import { refreshCell } from '../step/update.ts';
import { Field } from './field.ts';
import { type Mesh, meshOf } from './mesh.ts';
import type { Profile } from './profile.ts';

export interface DuctOptions {
  /** Name for messages and traces. */
  name: string;
  /** Largest cell [m]. */
  largestCell: number;
  /** Wall temperature [K] at distance x [m]; leave out for an adiabatic wall. */
  wallTemperature?: (x: number) => number;
  /** Equivalent sand roughness [m]; leave out for a frictionless wall. */
  roughness?: number;
  /** Loss per length in dynamic heads at distance x [1/m]: bends and the like. */
  lossPerLength?: (x: number) => number;
  /** In place of the law of pipes. */
  thin?: ThinWall;
}

/** What the wall of a line does that is so thin that sound in it rubs and warms across the whole bore. */
export interface ThinWall {
  /** Velocity lost to laminar drag, and difference of temperature to the wall lost, over itself [1/s]. */
  drag: number;
  warming: number;
  /** Turbulent drag over that of a pipe of the duct's own bore [-]. */
  turbulent: number;
}

/** A uniform state to start from. */
export interface InitialState {
  /** Pressure [Pa]. */
  pressure: number;
  /** Temperature [K]. */
  temperature: number;
  /** Velocity [m/s]. */
  velocity?: number;
  /** Mass fraction of burned products [-]. */
  burned?: number;
  /** Mass fraction of fuel vapour [-]. */
  fuel?: number;
}

/** Conserved quantities per unit volume, cell means [kg/m3], [kg/m2 s], [J/m3], [kg/m3], [kg/m3]. */
export type CellStates = Record<'rho' | 'momentum' | 'energy' | 'rhoBurned' | 'rhoFuel', Field>;

/** What follows from them [m/s], [Pa], [K], [-], [-], [-]. */
export type CellPrimitives = Record<'u' | 'p' | 'T' | 'gamma' | 'burned' | 'fuel', Field>;

/** Which end of a duct: `low` at x = 0, `high` at x = length. */
export type Side = 'low' | 'high';

export class Duct {
  readonly name: string;
  readonly mesh: Mesh;
  /** Wall temperature of each cell [K]; 0 where adiabatic. */
  readonly wallTemperature: Float64Array;
  /** Spread loss of each cell, dynamic heads per metre [1/m]. */
  readonly lossPerLength: Float64Array;
  /** Roughness [m]; NaN for a frictionless wall. */
  readonly roughness: number;
  readonly thin?: ThinWall;
  /** A line of slots (step/layout.ts). */
  slots: Float64Array<ArrayBuffer>;
  /** Greatest speed and heat ledger. */
  readonly sums = { slots: new Float64Array(ROW.D_SUMS_SIZE) };
  cells!: CellStates;
  prim!: CellPrimitives;

  constructor(profile: Profile, options: DuctOptions) {
    const mesh = meshOf(profile, options.largestCell);
    const along = (f?: (x: number) => number) =>
      Float64Array.from({ length: mesh.cells }, (_, i) => cellMean(mesh, i, f));
    this.name = options.name;
    this.mesh = mesh;
    this.wallTemperature = along(options.wallTemperature);
    this.lossPerLength = along(options.lossPerLength);
    this.roughness = options.roughness ?? Number.NaN;
    if (options.thin) this.thin = options.thin;
    this.slots = new Float64Array(ROW.ROWS * (mesh.cells + 2));
    this.bind(this.slots);
  }

  /** Makes these numbers, which hold its state already, the duct's own. */
  bind(slots: Float64Array<ArrayBuffer>): void {
    this.slots = slots;
    const row = (k: number) => new Field(slots, ROW.ROWS + k, this.mesh.cells);
    this.cells = {
      rho: row(ROW.RHO),
      momentum: row(ROW.MOMENTUM),
      energy: row(ROW.ENERGY),
      rhoBurned: row(ROW.RHO_BURNED),
      rhoFuel: row(ROW.RHO_FUEL),
    };
    this.prim = {
      u: row(ROW.U),
      p: row(ROW.P),
      T: row(ROW.T),
      gamma: row(ROW.GAMMA),
      burned: row(ROW.BURNED),
      fuel: row(ROW.FUEL),
    };
  }

  /** Greatest |u| + c of the state as it stands [m/s]. */
  get fastest(): number {
    return this.sums.slots[ROW.D_FASTEST]!;
  }

  /** Heat taken from the wall since the last reset of the ledger [J]. */
  get heatTaken(): number {
    return this.sums.slots[ROW.D_HEAT]!;
  }

  resetLedger(): void {
    this.sums.slots[ROW.D_HEAT] = 0;
  }

  /** Fills the duct with one state. */
  fill(gas: Gas, state: InitialState): void {
    this.fillEach(gas, () => state);
  }

  /** Fills each cell with the state at its centre x [m]. */
  fillEach(gas: Gas, stateAt: (x: number) => InitialState): void {
    const { cells, prim, mesh } = this;
    for (let i = 0; i < mesh.cells; i++) {
      const state = stateAt((i + 0.5) * mesh.dx);
      const { pressure, temperature: T, velocity: u = 0, burned = 0, fuel = 0 } = state;
      const rho = pressure / (gas.gasConstant(burned, fuel) * T);
      cells.rho.set(i, rho);
      cells.momentum.set(i, rho * u);
      cells.energy.set(i, rho * (gas.internalEnergy(T, burned, fuel) + 0.5 * u * u));
      cells.rhoBurned.set(i, rho * burned);
      cells.rhoFuel.set(i, rho * fuel);
      prim.T.set(i, T);
    }
    this.refresh(gas);
    this.setEnd(0, 1);
    this.setEnd(mesh.cells + 1, mesh.cells);
  }

  /** Primitive values from the conserved ones; temperature by one Newton step from its last value. */
  refresh(gas: Gas): void {
    const { slots, mesh } = this;
    use({ N: NONE, K: gas.head(), X: slots });
    let fastest = 0;
    const { gamma, p } = this.prim;
    const { rho } = this.cells;
    for (let i = 0; i < mesh.cells; i++) {
      refreshCell((i + 1) * ROW.ROWS, true);
      const speed = Math.abs(this.prim.u.at(i)) + Math.sqrt((gamma.at(i) * p.at(i)) / rho.at(i));
      if (!(speed <= fastest)) fastest = speed;
    }
    this.sums.slots[ROW.D_FASTEST] = fastest;
    this.sums.slots[ROW.D_VAPOUR] = Math.max(...this.prim.fuel.map(Math.abs));
  }

  /** Mass [kg], energy [J], burned products [kg] and fuel vapour [kg] held. */
  contents(): { mass: number; energy: number; burned: number; fuel: number } {
    const { cells, mesh } = this;
    const sum = (field: Field) =>
      mesh.volume.reduce((total, volume, i) => total + field.at(i) * volume, 0);
    return {
      mass: sum(cells.rho),
      energy: sum(cells.energy),
      burned: sum(cells.rhoBurned),
      fuel: sum(cells.rhoFuel),
    };
  }

  /** State found at an end in the last step: rho, u, p, burned, fuel. */
  endState(side: Side): number[] {
    const at = side === 'low' ? 0 : this.mesh.cells + 1;
    return BEYOND.map((row) => this.slots[at * ROW.ROWS + row]!);
  }

  /** Sets the state beyond an end to that of the cell at it. */
  private setEnd(at: number, from: number): void {
    for (const row of BEYOND) this.slots[at * ROW.ROWS + row] = this.slots[from * ROW.ROWS + row]!;
  }
}

const NONE = new Int32Array(0);
const BEYOND = [ROW.RHO, ROW.U, ROW.P, ROW.BURNED, ROW.FUEL];

/** Places at which a wall property is read in each cell: it may jump from pipe to pipe within one. */
const READINGS = 16;

/** Mean of a property of distance x [m] over cell i; 0 where there is none. */
function cellMean(mesh: Mesh, i: number, f?: (x: number) => number): number {
  if (!f) return 0;
  let sum = 0;
  for (let k = 0; k < READINGS; k++) sum += f((i + (k + 0.5) / READINGS) * mesh.dx);
  return sum / READINGS;
}
