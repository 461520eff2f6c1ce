/**
 * The intake of one cylinder as a spray sees it: trumpet and runner as one line of cells, s from the
 * acoustic mouth (s = 0) to the valve seat, with the sources that the spray leaves in each cell.
 *
 * Sources are gathered over a spray step and given to the ducts at its end, cell by cell: what the
 * gas gets is what the liquid lost. The local state follows along at once, so that many drops in
 * one cell share what the air can carry.
 */
import type { Duct } from '../duct/duct.ts';
import type { Gas } from '../gas/gas.ts';
import { viscosity } from '../gas/viscosity.ts';
import type { SprayCouplingSpecification } from '../injectors.ts';
import { fanningFactor } from '../loss/friction.ts';
import type { Surroundings } from './evaporation.ts';
import type { SprayLedger } from './sprayLedger.ts';

export class IntakeLine {
  readonly trumpet: Duct;
  readonly runner: Duct;
  /** Cells of both ducts together. */
  readonly cells: number;
  /** Length of both ducts [m]. */
  readonly length: number;
  /** State of each cell as the spray goes on: temperature [K], pressure [Pa], velocity [m/s],
   * density [kg/m^3], mass fraction of fuel vapour [-], mass [kg]. */
  readonly T: Float64Array;
  readonly p: Float64Array;
  readonly u: Float64Array;
  readonly rho: Float64Array;
  readonly fuel: Float64Array;
  readonly mass: Float64Array;
  /** Radius at the middle of each cell [m] and its slope along the line [-]. */
  readonly radius: Float64Array;
  readonly slope: Float64Array;
  /** Cell length [m], wall area [m^2] and volume [m^3] of each cell; temperature of the wall under a
   * film [K], 0 where it gives no heat. Under a film a trumpet and body cool until the gas gives all
   * the heat: still air around them and thin metal give some 20 W, evaporation draws hundreds. */
  readonly dx: Float64Array;
  readonly wallArea: Float64Array;
  readonly wallTemperature: Float64Array;
  readonly volume: Float64Array;
  /** Vapour [kg] given off in each cell since the last reset. */
  readonly evaporated: Float64Array;
  /** Vapour given off in front of the mouth since the last reset [kg]. */
  evaporatedOutside = 0;
  /** Heat taken from the gas for evaporation since the last reset [J]. */
  cooling = 0;
  private readonly addedMass: Float64Array;
  private readonly addedMomentum: Float64Array;
  private readonly addedEnergy: Float64Array;
  private touched = false;

  constructor(trumpet: Duct, runner: Duct) {
    this.trumpet = trumpet;
    this.runner = runner;
    this.cells = trumpet.mesh.cells + runner.mesh.cells;
    this.length = trumpet.mesh.length + runner.mesh.length;
    const field = () => new Float64Array(this.cells);
    const geometry = (value: (duct: Duct, i: number) => number) =>
      field().map((_, k) => value(...this.place(k)));
    this.T = field();
    this.p = field();
    this.u = field();
    this.rho = field();
    this.fuel = field();
    this.mass = field();
    this.evaporated = field();
    this.addedMass = field();
    this.addedMomentum = field();
    this.addedEnergy = field();
    this.radius = geometry(({ mesh }, i) => 0.5 * mesh.diameter[i]!);
    this.dx = geometry(({ mesh }) => mesh.dx);
    this.volume = geometry(({ mesh }, i) => mesh.volume[i]!);
    this.wallArea = geometry(({ mesh }, i) => Math.PI * mesh.diameter[i]! * mesh.dx);
    this.wallTemperature = geometry((duct, i) => (duct === trumpet ? 0 : duct.wallTemperature[i]!));
    this.slope = geometry(
      ({ mesh }, i) =>
        (Math.sqrt(mesh.faceArea[i + 1]! / Math.PI) - Math.sqrt(mesh.faceArea[i]! / Math.PI)) /
        mesh.dx,
    );
  }

  /** Duct and its cell that cell `k` of the line is. */
  place(k: number): [duct: Duct, cell: number] {
    const first = this.trumpet.mesh.cells;
    return k < first ? [this.trumpet, k] : [this.runner, k - first];
  }

  /** The cell at s [m], s < length; in the flare, in front of the first one, that. */
  cellAt(s: number): number {
    const { trumpet, runner } = this;
    if (s < trumpet.mesh.length)
      return Math.max(Math.min((s / trumpet.mesh.dx) | 0, trumpet.mesh.cells - 1), 0);
    const i = ((s - trumpet.mesh.length) / runner.mesh.dx) | 0;
    return trumpet.mesh.cells + Math.min(i, runner.mesh.cells - 1);
  }

  /** Middle of cell k [m]. */
  middle(k: number): number {
    const [duct, i] = this.place(k);
    const from = duct === this.trumpet ? 0 : this.trumpet.mesh.length;
    return from + (i + 0.5) * duct.mesh.dx;
  }

  /** Distance of s to the throttle plate [m], positive behind it. */
  behindPlate(s: number): number {
    return s - this.trumpet.mesh.length;
  }

  /** Friction factor of cell k [-]. */
  fanning(k: number): number {
    const [duct] = this.place(k);
    const diameter = 2 * this.radius[k]!;
    const reynolds = (this.rho[k]! * Math.abs(this.u[k]!) * diameter) / viscosity(this.T[k]!);
    return fanningFactor(reynolds, (duct.roughness || 0) / diameter);
  }

  /** Reads the state of the ducts. */
  read(): void {
    let k = 0;
    for (const { prim, cells, mesh } of [this.trumpet, this.runner]) {
      for (let i = 0; i < mesh.cells; i++, k++) {
        this.T[k] = prim.T.at(i);
        this.p[k] = prim.p.at(i);
        this.u[k] = prim.u.at(i);
        this.rho[k] = cells.rho.at(i);
        this.fuel[k] = prim.fuel.at(i);
        this.mass[k] = cells.rho.at(i) * mesh.volume[i]!;
      }
    }
  }

  /** Fills `out` with the gas of cell k. */
  around(k: number, out: Surroundings): void {
    out.T = this.T[k]!;
    out.p = this.p[k]!;
    out.fuel = this.fuel[k]!;
  }

  /**
   * Takes what a liquid gave off in cell k: vapour [kg], momentum [kg m/s] and energy [J], each the
   * loss of the liquid. What the coupling withholds is noted in the ledger.
   */
  give(
    k: number,
    vapour: number,
    momentum: number,
    energy: number,
    coupling: SprayCouplingSpecification,
    gas: Gas,
    ledger: SprayLedger,
  ): void {
    const T = this.T[k]!;
    const u = this.u[k]!;
    const own = gas.internalEnergy(T, 0, 1) + 0.5 * u * u;
    this.evaporated[k]! += vapour;
    this.cooling += vapour * own - energy;
    const massIn = coupling.vapour === 'field' ? vapour : 0;
    // Vapour that brings the gas's own energy leaves its temperature alone; the rest is cooling.
    const energyIn = massIn * own + (coupling.heat === 'field' ? energy - vapour * own : 0);
    const full = coupling.vapour === 'field' && coupling.heat === 'field';
    const momentumIn = full ? momentum : massIn * u;
    this.addedMass[k]! += massIn;
    this.addedMomentum[k]! += momentumIn;
    this.addedEnergy[k]! += energyIn;
    this.touched = true;
    ledger.withheldMass += vapour - massIn;
    ledger.withheldEnergy += energy - energyIn;
    this.follow(k, massIn, momentumIn, energyIn, own, gas);
  }

  /** Vapour [kg] with energy [J] that comes back through the mouth. */
  takeBack(mass: number, energy: number): void {
    this.addedMass[0]! += mass;
    this.addedEnergy[0]! += energy;
    this.touched = true;
  }

  /** Gives the gathered sources to the ducts. */
  apply(gas: Gas): void {
    if (!this.touched) return;
    this.touched = false;
    let k = 0;
    for (const duct of [this.trumpet, this.runner]) {
      const { cells, mesh } = duct;
      for (let i = 0; i < mesh.cells; i++, k++) {
        const perVolume = 1 / mesh.volume[i]!;
        cells.rho.add(i, this.addedMass[k]! * perVolume);
        cells.rhoFuel.add(i, this.addedMass[k]! * perVolume);
        cells.momentum.add(i, this.addedMomentum[k]! * perVolume);
        cells.energy.add(i, this.addedEnergy[k]! * perVolume);
      }
      duct.refresh(gas);
    }
    this.addedMass.fill(0);
    this.addedMomentum.fill(0);
    this.addedEnergy.fill(0);
  }

  /** Vapour given off upstream of the valve since the last reset [kg]. */
  evaporatedInAll(): number {
    return this.evaporated.reduce((sum, mass) => sum + mass, this.evaporatedOutside);
  }

  /** Starts the books of a new cycle. */
  newCycle(): void {
    this.evaporated.fill(0);
    this.evaporatedOutside = 0;
    this.cooling = 0;
  }

  /** Vapour held in both ducts [kg]. */
  vapourHeld(): number {
    let held = 0;
    for (let k = 0; k < this.cells; k++) held += this.fuel[k]! * this.mass[k]!;
    return held;
  }

  /** The local state after a source, for the next drop in this cell. */
  private follow(
    k: number,
    massIn: number,
    momentumIn: number,
    energyIn: number,
    own: number,
    gas: Gas,
  ): void {
    const mass = this.mass[k]! + massIn;
    const u = this.u[k]!;
    this.fuel[k] = (this.fuel[k]! * this.mass[k]! + massIn) / mass;
    this.u[k] = (u * this.mass[k]! + momentumIn) / mass;
    const heat = energyIn - massIn * own - u * (momentumIn - massIn * u);
    const T = this.T[k]!;
    this.T[k] = T + heat / (mass * gas.heatCapacityVolume(T, 0, this.fuel[k]!));
    this.mass[k] = mass;
    this.rho[k] = mass / this.volume[k]!;
    this.p[k] = this.rho[k]! * gas.gasConstant(0, this.fuel[k]!) * this.T[k]!;
  }
}
