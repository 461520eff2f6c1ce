/**
 * A duct: a mesh, the state of the gas in its cells, and room for the values at its faces. All
 * arrays are made once; the scheme works in them.
 */
import type { Gas } from '../gas/gas.ts';
import { Block } from '../kernel/arena.ts';
import * as FIELD from '../kernel/fields.ts';
import { type FaceFluxes, type FaceStates, faceFluxes, faceStates } from './faces.ts';
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
}

/** Conserved quantities per unit volume, cell means. */
export interface CellStates {
  /** Density [kg/m^3]. */
  rho: Float64Array;
  /** Momentum [kg/m^2 s]. */
  momentum: Float64Array;
  /** Total energy, sensible and kinetic [J/m^3]. */
  energy: Float64Array;
  /** Burned products [kg/m^3]. */
  rhoBurned: Float64Array;
  /** Fuel vapour [kg/m^3]. */
  rhoFuel: Float64Array;
}

/** What follows from the conserved quantities. */
export interface CellPrimitives {
  /** Velocity [m/s]. */
  u: Float64Array;
  /** Static pressure [Pa]. */
  p: Float64Array;
  /** Static temperature [K]. */
  T: Float64Array;
  /** Ratio of specific heats [-]. */
  gamma: Float64Array;
  /** Specific gas constant [J/kg K]. */
  R: Float64Array;
  /** Speed of sound [m/s]. */
  c: Float64Array;
  /** Mass fraction of burned products [-]. */
  burned: Float64Array;
  /** Mass fraction of fuel vapour [-]. */
  fuel: Float64Array;
}

/** Differences across each cell of what the scheme reconstructs. */
export interface CellSlopes {
  /** Density [kg/m^3]. */
  rho: Float64Array;
  /** Velocity [m/s]. */
  u: Float64Array;
  /** Static pressure [Pa]. */
  p: Float64Array;
  /** Mass fraction of burned products [-]. */
  burned: Float64Array;
  /** Mass fraction of fuel vapour [-]. */
  fuel: Float64Array;
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

/** Which end of a duct: `low` at x = 0, `high` at x = length. */
export type Side = 'low' | 'high';

export class Duct {
  readonly name: string;
  readonly mesh: Mesh;
  /** The memory of the arrays below. */
  readonly block: Block;
  readonly cells: CellStates;
  readonly prim: CellPrimitives;
  /** State on the side of falling x of each face, at half time. */
  readonly left: FaceStates;
  /** State on the side of rising x of each face, at half time. */
  readonly right: FaceStates;
  readonly flux: FaceFluxes;
  /** Limited differences across each cell. */
  readonly slope: CellSlopes;
  /** Half-time total pressure p + rho u^2/2 of each cell, with which a taper's wall pushes [Pa]. */
  readonly totalPressure: Float64Array;
  /** The rest of the wall's push, and its friction, on each cell [N/m^3]. */
  readonly wallForce: Float64Array;
  /** Heat from the wall to each cell [W/m^3]. */
  readonly wallHeat: Float64Array;
  /** Fanning friction factor of each cell [-]. */
  readonly fanning: Float64Array;
  /** What roughness adds under the logarithm of the friction law, (eps / 3.7 D)^1.11 [-]. */
  readonly roughTerm: Float64Array;
  /** Wall temperature of each cell [K]; 0 where adiabatic. */
  readonly wallTemperature: Float64Array;
  /** Spread loss of each cell, dynamic heads per metre [1/m]. */
  readonly lossPerLength: Float64Array;
  /** Roughness [m]; NaN for a frictionless wall. */
  readonly roughness: number;
  /** Primitive state found at both end faces in the last step: rho, u, p, burned, fuel. */
  readonly endState: Record<Side, Float64Array>;
  /** Specific internal energy of each cell [J/kg], while primitives are worked out. */
  private readonly internal: Float64Array;
  /** Greatest |u| + c of the state as it stands [m/s]. */
  fastest = 0;
  /** Heat taken from the wall since the last reset of the ledger [J]. */
  heatTaken = 0;

  constructor(profile: Profile, options: DuctOptions) {
    const mesh = meshOf(profile, options.largestCell);
    const n = mesh.cells;
    const field = () => new Float64Array(n);
    const along = (f?: (x: number) => number) => field().map((_, i) => cellMean(mesh, i, f));
    this.name = options.name;
    this.mesh = mesh;
    const block = new Block(n);
    const row = (k: number) => block.ofCells(k);
    this.block = block;
    this.cells = {
      rho: row(FIELD.RHO),
      momentum: row(FIELD.MOMENTUM),
      energy: row(FIELD.ENERGY),
      rhoBurned: row(FIELD.RHO_BURNED),
      rhoFuel: row(FIELD.RHO_FUEL),
    };
    this.prim = {
      u: row(FIELD.U),
      p: row(FIELD.P),
      T: row(FIELD.T),
      gamma: row(FIELD.GAMMA),
      R: row(FIELD.R),
      c: row(FIELD.C),
      burned: row(FIELD.BURNED),
      fuel: row(FIELD.FUEL),
    };
    this.left = faceStates(block, FIELD.LEFT_RHO);
    this.right = faceStates(block, FIELD.RIGHT_RHO);
    this.flux = faceFluxes(block);
    this.slope = { rho: field(), u: field(), p: field(), burned: field(), fuel: field() };
    this.totalPressure = row(FIELD.TOTAL_PRESSURE);
    this.internal = field();
    this.wallForce = row(FIELD.WALL_FORCE);
    this.wallHeat = row(FIELD.WALL_HEAT);
    this.fanning = row(FIELD.FANNING);
    this.roughTerm = mesh.diameter.map((d) => ((options.roughness ?? 0) / (3.7 * d)) ** 1.11);
    this.wallTemperature = row(FIELD.WALL_TEMPERATURE);
    this.wallTemperature.set(along(options.wallTemperature));
    this.lossPerLength = row(FIELD.LOSS_PER_LENGTH);
    this.lossPerLength.set(along(options.lossPerLength));
    setGeometry(block, mesh);
    this.roughness = options.roughness ?? Number.NaN;
    this.endState = { low: new Float64Array(5), high: new Float64Array(5) };
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
      cells.rho[i] = rho;
      cells.momentum[i] = rho * u;
      cells.energy[i] = rho * (gas.internalEnergy(T, burned, fuel) + 0.5 * u * u);
      cells.rhoBurned[i] = rho * burned;
      cells.rhoFuel[i] = rho * fuel;
      prim.T[i] = T;
    }
    this.refresh(gas);
    this.setEnd('low', 0);
    this.setEnd('high', mesh.cells - 1);
  }

  /** Primitive values from the conserved ones. */
  refresh(gas: Gas): void {
    const { rho, momentum, energy, rhoBurned, rhoFuel } = this.cells;
    const { u, c, burned, fuel } = this.prim;
    const { internal } = this;
    const n = this.mesh.cells;
    for (let i = 0; i < n; i++) {
      const perRho = 1 / rho[i]!;
      const velocity = momentum[i]! * perRho;
      u[i] = velocity;
      internal[i] = energy[i]! * perRho - 0.5 * velocity * velocity;
      burned[i] = rhoBurned[i]! * perRho;
      fuel[i] = rhoFuel[i]! * perRho;
    }
    gas.temperatures(this.prim, rho, internal, n);
    let fastest = 0;
    for (let i = 0; i < n; i++) {
      const speed = Math.abs(u[i]!) + c[i]!;
      // Written so that a NaN is kept.
      if (!(speed <= fastest)) fastest = speed;
    }
    this.fastest = fastest;
  }

  /** Mass [kg], energy [J], burned products [kg] and fuel vapour [kg] held. */
  contents(): { mass: number; energy: number; burned: number; fuel: number } {
    const { cells, mesh } = this;
    const sum = (field: Float64Array) =>
      field.reduce((total, value, i) => total + value * mesh.volume[i]!, 0);
    return {
      mass: sum(cells.rho),
      energy: sum(cells.energy),
      burned: sum(cells.rhoBurned),
      fuel: sum(cells.rhoFuel),
    };
  }

  private setEnd(side: Side, i: number): void {
    const { cells, prim } = this;
    this.endState[side].set([
      cells.rho[i]!,
      prim.u[i]!,
      prim.p[i]!,
      prim.burned[i]!,
      prim.fuel[i]!,
    ]);
  }
}

/** Gives the kernel its copy of the mesh. */
function setGeometry(block: Block, mesh: Mesh): void {
  block.ofCells(FIELD.LOW_RATIO).set(mesh.lowRatio);
  block.ofCells(FIELD.HIGH_RATIO).set(mesh.highRatio);
  block.ofCells(FIELD.TO_LOW).set(mesh.toLow);
  block.ofCells(FIELD.TO_HIGH).set(mesh.toHigh);
  block.ofCells(FIELD.PER_DIAMETER).set(mesh.perDiameter);
  block.ofCells(FIELD.PER_VOLUME).set(mesh.perVolume);
  block.ofFaces(FIELD.FACE_AREA).set(mesh.faceArea);
  block.ofCells(FIELD.MEAN_AREA).set(mesh.meanArea);
  block.ofCells(FIELD.VOLUME).set(mesh.volume);
  block.ofCells(FIELD.WEIGHT_LOW).fill(1)[0] = 2;
  block.ofCells(FIELD.WEIGHT_HIGH).fill(1)[mesh.cells - 1] = 2;
}

/** Places at which a wall property is read in each cell: it may jump from pipe to pipe within one. */
const READINGS = 16;

/** Mean of a property of distance x [m] over cell i; 0 where there is none. */
function cellMean(mesh: Mesh, i: number, f?: (x: number) => number): number {
  if (!f) return 0;
  let sum = 0;
  for (let k = 0; k < READINGS; k++) sum += f((i + (k + 0.5) / READINGS) * mesh.dx);
  return sum / READINGS;
}
