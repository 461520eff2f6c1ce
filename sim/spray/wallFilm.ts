/**
 * Fuel film on the walls of the intake, one patch a cell and one on the valve's head.
 *
 *   dm_i/dt = deposit - A phi m"_i - transport
 *   dU/dt   = deposit + A phi (k / delta) (Tw - T) + A phi h (Tg - T) z / (e^z - 1) - vapour enthalpy
 *   g = (f/2) rho |u| Sc^(-2/3),   h = (f/2) rho |u| cp Pr^(-2/3)      not below Nu = Sh = 3.66
 *   u_film = tau delta / (2 mu),   tau = (f/2) rho u |u|
 *
 *   phi    share of the patch that is wet: m / (rho_l A delta_min), at most 1
 *   delta  thickness where wet [m], not below delta_min   k, mu, rho_l of the liquid
 *
 * Behind the throttle plate heat comes from the wall and from the gas in whatever shares that balance
 * gives; a thin film sits close to the wall's temperature, so most is the wall's. In front of it the
 * wall has none to give and the film cools to the wet bulb (intakeLine.ts). delta_min does not change
 * what evaporates once the film has settled, only how much lies on the wall and so how slow it is.
 *
 * A film takes seconds to settle, a hundred cycles. So between cycles the films alone are run on for
 * a while under the mean conditions of the last cycle, patch by patch brought to the removal that
 * cycle had; the gas then answers in the next cycle, until what lands equals what leaves.
 * Sources: Colburn (1933), and Chilton & Colburn (1934) for mass; shear-driven laminar film.
 * Gravity on the film, waves and stripping at edges are left out.
 */
import { cubeRoot, exp, power } from '../elementary/powers.ts';
import { PRANDTL } from '../gas/viscosity.ts';
import { blowing, type Surroundings, solveSurface, wetSurface } from './evaporation.ts';
import { FilmConditions } from './filmConditions.ts';
import type { FilmOptions, Give, Runoff } from './filmOptions.ts';
import { liquidEnergy, liquidTemperature, totalMass } from './liquidFuel.ts';
import type { SprayLedger } from './sprayLedger.ts';

/** Nusselt number of laminar flow in a round pipe at constant wall temperature [-]. */
const LAMINAR = 3.66;
const COLBURN = power(PRANDTL, -2 / 3);
/** Films below this mass [kg] are left alone. */
const NOTHING = 1e-13;
/** Step of the run between cycles [s]. */
const SETTLING_STEP = 4e-3;
/** Bounds of a patch's removal over what mean conditions give [-]. */
const FACTORS = [0.2, 5] as const;

export class WallFilm {
  /** Patches: the cells of the line, then the valve's head. */
  readonly patches: number;
  /** Deposited, given off as vapour and run off into the cylinder since the cycle began [kg]. */
  deposited = 0;
  evaporated = 0;
  ranOff = 0;
  private readonly o: FilmOptions;
  private readonly mass: Float64Array[];
  private readonly energy: Float64Array;
  /** By patch and component: landed as drops, came in all, left in all [kg]; and landed [J]. */
  private readonly landed: Float64Array[];
  private readonly landedEnergy: Float64Array;
  private readonly came: Float64Array[];
  private readonly left: Float64Array[];
  /** Vapour off each patch [kg]. */
  private readonly vapour: Float64Array;
  private readonly now: FilmConditions;
  private readonly mean: FilmConditions;
  private readonly surface;
  private readonly around: Surroundings = { T: 300, p: 1e5, fuel: 0 };
  private readonly before: Float64Array;
  private wallHeat = 0;

  constructor(options: FilmOptions) {
    const parts = options.fuel.parts.length;
    const patches = options.line.cells + 1;
    const rows = () => Array.from({ length: patches }, () => new Float64Array(parts));
    this.o = options;
    this.patches = patches;
    this.mass = rows();
    this.landed = rows();
    this.came = rows();
    this.left = rows();
    this.energy = new Float64Array(patches);
    this.landedEnergy = new Float64Array(patches);
    this.vapour = new Float64Array(patches);
    this.now = new FilmConditions(patches);
    this.mean = new FilmConditions(patches);
    this.surface = wetSurface(options.fuel);
    this.before = new Float64Array(parts);
  }

  /** Adds `count` drops of component masses `mass` [kg] that bring `energy` [J] in all. */
  deposit(k: number, mass: Float64Array, count: number, energy: number): void {
    for (let i = 0; i < mass.length; i++) {
      const m = mass[i]! * count;
      this.mass[k]![i]! += m;
      this.landed[k]![i]! += m;
      this.came[k]![i]! += m;
      this.deposited += m;
    }
    this.energy[k]! += energy;
    this.landedEnergy[k]! += energy;
  }

  /** Heats, evaporates and moves the film for dt [s]; what runs through the valve goes to `runoff`. */
  step(dt: number, valveOpen: boolean, ledger: SprayLedger, runoff: Runoff, give: Give): void {
    const { now } = this;
    now.read(this.o.line, valveOpen);
    this.mean.add(now, dt);
    this.wallHeat = 0;
    for (let k = 0; k < this.patches; k++) this.evaporate(k, dt, now, 1, give);
    this.transport(dt, now, runoff);
    ledger.wallHeat += this.wallHeat;
  }

  /** Liquid on all walls [kg], and its energy [J]. */
  held(): { mass: number; energy: number } {
    let mass = 0;
    let energy = 0;
    for (let k = 0; k < this.patches; k++) {
      mass += totalMass(this.mass[k]!);
      energy += this.energy[k]!;
    }
    return { mass, energy };
  }

  /** Liquid on patch k [kg]. */
  massAt(k: number): number {
    return totalMass(this.mass[k]!);
  }

  /** How far from steady: what came less what left since the cycle began [kg]. */
  imbalance(): number {
    return this.deposited - this.evaporated - this.ranOff;
  }

  /** Starts the books of a new cycle, the films run on alone for `settling` [s]. */
  newCycle(settling: number, ledger: SprayLedger): void {
    if (settling > 0 && this.deposited > 0) this.settle(settling, ledger);
    for (const rows of [this.landed, this.came, this.left]) for (const row of rows) row.fill(0);
    this.landedEnergy.fill(0);
    this.vapour.fill(0);
    this.mean.clear();
    this.deposited = 0;
    this.evaporated = 0;
    this.ranOff = 0;
  }

  private settle(duration: number, ledger: SprayLedger): void {
    const { mean } = this;
    const before = this.held();
    const covered = mean.average();
    const factors = Float64Array.from(this.vapour, (vapour, k) => this.factor(k, vapour / covered));
    const steps = Math.ceil(duration / SETTLING_STEP);
    const sink: Runoff = { mass: new Float64Array(this.before.length), energy: 0 };
    const landed = this.landed.map((row) => row.map((m) => (m / covered) * SETTLING_STEP));
    for (let step = 0; step < steps; step++) {
      for (let k = 0; k < this.patches; k++) {
        for (let i = 0; i < sink.mass.length; i++) this.mass[k]![i]! += landed[k]![i]!;
        this.energy[k]! += (this.landedEnergy[k]! / covered) * SETTLING_STEP;
        this.evaporate(k, SETTLING_STEP, mean, factors[k]!, () => {});
      }
      this.transport(SETTLING_STEP, mean, sink);
    }
    const after = this.held();
    ledger.adjustedMass += after.mass - before.mass;
    ledger.adjustedEnergy += after.energy - before.energy;
  }

  /** What a patch gave off [kg/s] over what mean conditions would take from it now [-]. */
  private factor(k: number, rate: number): number {
    const film = this.mass[k]!;
    if (totalMass(film) <= NOTHING || rate <= 0) return 1;
    const kept = film.slice();
    const energy = this.energy[k]!;
    const dt = 1e-6;
    let vapour = 0;
    this.evaporate(k, dt, this.mean, 1, (_cell, m) => {
      vapour = m;
    });
    film.set(kept);
    this.energy[k] = energy;
    return vapour > 0 ? Math.min(Math.max((rate * dt) / vapour, FACTORS[0]), FACTORS[1]) : 1;
  }

  private evaporate(
    k: number,
    dt: number,
    conditions: FilmConditions,
    factor: number,
    give: Give,
  ): void {
    const { fuel, line, gas, thickness, valve } = this.o;
    const { surface, around, before } = this;
    const film = this.mass[k]!;
    const total = totalMass(film);
    if (total <= NOTHING) return;
    const onValve = k === line.cells;
    const cell = onValve ? k - 1 : k;
    const area = onValve ? valve.area : line.wallArea[k]!;
    const wall = onValve ? valve.temperature : line.wallTemperature[k]!;
    const mean = total / (fuel.density * area);
    const wet = area * Math.min(1, mean / thickness);
    const T = liquidTemperature(fuel, film, this.energy[k]!);
    around.T = conditions.T[k]!;
    around.p = conditions.p[k]!;
    around.fuel = conditions.fuel[k]!;
    solveSurface(fuel, gas, film, T, around, surface);

    const { density, diffusivity, heatCapacity, conductivity, log, ratio, atSurface } = surface;
    const stream = conditions.stream[k]!;
    const d = 2 * line.radius[cell]!;
    const schmidt = surface.viscosity / (density * diffusivity);
    const g =
      factor *
      Math.max(stream / cubeRoot(schmidt * schmidt), (LAMINAR * density * diffusivity) / d);
    const h = factor * Math.max(stream * heatCapacity * COLBURN, (LAMINAR * conductivity) / d);
    const fromGas = wet * h * blowing((g * log * fuel.vapourHeatCapacity) / h);
    const fromWall = wall > 0 ? (wet * fuel.conductivity) / Math.max(mean, thickness) : 0;

    const vapourEnthalpy = gas.enthalpy(T, 0, 1);
    let latentFlow = 0;
    let capacity = 0;
    let meanLatent = 0;
    before.set(film);
    for (let i = 0; i < film.length; i++) {
      const part = fuel.parts[i]!;
      const drive = log * atSurface[i]! + ratio * (atSurface[i]! - around.fuel * part.share);
      const rate = wet * g * drive;
      const latent = vapourEnthalpy - part.base - part.heatCapacity * T;
      latentFlow += rate * latent;
      meanLatent += part.share * latent;
      capacity += film[i]! * part.heatCapacity;
      const share = (rate * dt) / Math.max(film[i]!, 1e-3 * total);
      film[i]! *= share > 0 ? exp(-share) : 1 + Math.min(-share, 1);
    }
    const stiff = fromGas + fromWall + wet * g * surface.slope * meanLatent;
    const rise =
      (dt * (fromGas * (around.T - T) + fromWall * (wall - T) - latentFlow)) /
      (capacity + dt * stiff);
    const wallHeat = dt * fromWall * (wall - T - rise);
    const energy = liquidEnergy(fuel, film, T + rise);
    let vapour = 0;
    for (let i = 0; i < film.length; i++) {
      const gone = before[i]! - film[i]!;
      vapour += gone;
      this.left[k]![i]! += gone;
    }
    this.wallHeat += wallHeat;
    this.evaporated += vapour;
    this.vapour[k]! += vapour;
    give(cell, vapour, this.energy[k]! + wallHeat - energy);
    this.energy[k] = energy;
  }

  /** Shear moves each patch into its neighbours; at the seat into the cylinder, never over the rim. */
  private transport(dt: number, conditions: FilmConditions, runoff: Runoff): void {
    const { fuel, line, thickness, valve } = this.o;
    for (let k = 0; k < this.patches; k++) {
      const total = totalMass(this.mass[k]!);
      if (total <= NOTHING) continue;
      const onValve = k === line.cells;
      const area = onValve ? valve.area : line.wallArea[k]!;
      const delta = Math.max(total / (fuel.density * area), thickness);
      const length = onValve ? Math.sqrt(area) : line.dx[k]!;
      const perShear = (delta * dt) / (2 * fuel.viscosity) / length;
      const ahead = Math.min(conditions.forward[k]! * perShear, 0.5);
      if (ahead > 0) this.move(k, ahead, k >= line.cells - 1 ? undefined : k + 1, runoff);
      const back = Math.min(conditions.backward[k]! * perShear, 0.5);
      if (back > 0 && k > 0) this.move(k, back, k - 1, runoff);
    }
  }

  private move(k: number, share: number, to: number | undefined, runoff: Runoff): void {
    const film = this.mass[k]!;
    const target = to === undefined ? runoff.mass : this.mass[to]!;
    const energy = share * this.energy[k]!;
    for (let i = 0; i < film.length; i++) {
      const m = share * film[i]!;
      film[i]! -= m;
      target[i]! += m;
      this.left[k]![i]! += m;
      if (to === undefined) this.ranOff += m;
      else this.came[to]![i]! += m;
    }
    this.energy[k]! -= energy;
    if (to === undefined) runoff.energy += energy;
    else this.energy[to]! += energy;
  }
}
