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
 * A film takes seconds to settle, a hundred cycles. So between cycles it may be set to where it would lie
 * after a longer time (filmBooks.ts, filmLeap.ts); the gas then answers in the next cycle, until what lands equals what
 * leaves.
 * Sources: Colburn (1933), and Chilton & Colburn (1934) for mass; shear-driven laminar film.
 * Gravity on the film, waves and stripping at edges are left out.
 */
import { cubeRoot, exp, power } from '../elementary/powers.ts';
import { PRANDTL } from '../gas/viscosity.ts';
import {
  blowing,
  type GivenOff,
  giveOff,
  type Surroundings,
  solveSurface,
  wetSurface,
} from './evaporation.ts';
import { FilmBooks, followed, NOTHING } from './filmBooks.ts';
import { FilmConditions } from './filmConditions.ts';
import type { FilmOptions, Give, Runoff } from './filmOptions.ts';
import { liquidEnergy, liquidTemperature, totalMass } from './liquidFuel.ts';
import type { SprayLedger } from './sprayLedger.ts';

/** Nusselt number of laminar flow in a round pipe at constant wall temperature [-]. */
const LAMINAR = 3.66;
const COLBURN = power(PRANDTL, -2 / 3);

/** Share of a component that stays of 1 where `share` would leave; condensing at most doubles it. */
const remaining = (share: number) => (share > 0 ? exp(-share) : 1 + Math.min(-share, 1));

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
  /** Of the cycle under way, and of the last that is whole. */
  private books: FilmBooks;
  private lastBooks: FilmBooks;
  private readonly now: FilmConditions;
  private readonly surface;
  private readonly around: Surroundings = { T: 300, p: 1e5, fuel: 0 };
  private readonly before: Float64Array;
  private readonly given: GivenOff = { latentFlow: 0, latent: 0, capacity: 0 };
  private wallHeat = 0;

  constructor(options: FilmOptions) {
    const parts = options.fuel.parts.length;
    const patches = options.line.cells + 1;
    this.o = options;
    this.patches = patches;
    this.mass = Array.from({ length: patches }, () => new Float64Array(parts));
    this.books = new FilmBooks(patches, parts);
    this.lastBooks = new FilmBooks(patches, parts);
    this.energy = new Float64Array(patches);
    this.now = new FilmConditions(patches);
    this.surface = wetSurface(options.fuel);
    this.before = new Float64Array(parts);
  }

  /** Adds `count` drops of component masses `mass` [kg] that bring `energy` [J] in all. */
  deposit(k: number, mass: Float64Array, count: number, energy: number): void {
    for (let i = 0; i < mass.length; i++) {
      const m = mass[i]! * count;
      this.mass[k]![i]! += m;
      this.books.landed[k]![i]! += m;
      this.deposited += m;
    }
    this.energy[k]! += energy;
  }

  /** Heats, evaporates and moves the film for dt [s]; what runs through the valve goes to `runoff`. */
  step(dt: number, valveOpen: boolean, ledger: SprayLedger, runoff: Runoff, give: Give): void {
    const { now } = this;
    now.read(this.o.line, valveOpen);
    this.wallHeat = 0;
    for (let k = 0; k < this.patches; k++) this.evaporate(k, dt, now, give);
    this.transport(dt, now, runoff);
    this.books.add(this.mass, dt);
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

  /** Starts the books of a new cycle. */
  newCycle(): void {
    [this.books, this.lastBooks] = [this.lastBooks, this.books];
    this.books.clear();
    this.deposited = 0;
    this.evaporated = 0;
    this.ranOff = 0;
  }

  /** Lays the film of another mesh of the same line here, as thick and as warm in each place. */
  takeOver(from: WallFilm): void {
    const { line } = this.o;
    const other = from.o.line;
    for (let k = 0; k < this.patches; k++) {
      const there = k < line.cells ? other.cellAt(line.middle(k)) : other.cells;
      const share = this.area(k) / from.area(there);
      from.mass[there]!.forEach((m, i) => {
        this.mass[k]![i] = m * share;
      });
      this.energy[k] = from.energy[there]! * share;
    }
  }

  /**
   * Sets the film to where `duration` [s] more would bring it, as warm as it is; gives what each patch
   * gains [kg].
   */
  setAhead(duration: number): Float64Array {
    const { fuel, thickness } = this.o;
    const thin = Float64Array.from(this.mass, (_, k) => fuel.density * this.area(k) * thickness);
    const { mean, later } = this.lastBooks.after(duration, thin);
    return Float64Array.from(this.mass, (film, k) => {
      const before = totalMass(film);
      const T = before > NOTHING ? liquidTemperature(fuel, film, this.energy[k]!) : this.now.T[k]!;
      for (let i = 0; i < film.length; i++)
        film[i] = followed(film[i]!, mean[k]![i]!, later[k]![i]!);
      this.energy[k] = liquidEnergy(fuel, film, T);
      return totalMass(film) - before;
    });
  }

  private evaporate(k: number, dt: number, conditions: FilmConditions, give: Give): void {
    const { fuel, line, gas, valve } = this.o;
    const { surface, around, before, given } = this;
    const film = this.mass[k]!;
    const total = totalMass(film);
    if (total <= NOTHING) return;
    const onValve = k === line.cells;
    const cell = onValve ? k - 1 : k;
    const wall = onValve ? valve.temperature : line.wallTemperature[k]!;
    const T = liquidTemperature(fuel, film, this.energy[k]!);
    around.T = conditions.T[k]!;
    around.p = conditions.p[k]!;
    around.fuel = conditions.fuel[k]!;
    solveSurface(fuel, gas, film, T, around, surface);

    const { fromGas, fromWall, transfer } = this.exchange(k, cell, total, wall, conditions);
    before.set(film);
    giveOff(fuel, gas, film, T, around, surface, transfer, dt, remaining, given);
    const stiff = fromGas + fromWall + transfer * surface.slope * given.latent;
    const rise =
      (dt * (fromGas * (around.T - T) + fromWall * (wall - T) - given.latentFlow)) /
      (given.capacity + dt * stiff);
    const wallHeat = dt * fromWall * (wall - T - rise);
    const energy = liquidEnergy(fuel, film, T + rise);
    const vapour = this.noteVapour(k);
    this.wallHeat += wallHeat;
    give(cell, vapour, this.energy[k]! + wallHeat - energy);
    this.energy[k] = energy;
  }

  /** What patch k exchanges: heat with gas and wall [W/K], g times its wet area [kg/s]. */
  private exchange(
    k: number,
    cell: number,
    total: number,
    wall: number,
    { stream }: FilmConditions,
  ) {
    const { fuel, line, thickness } = this.o;
    const { density, diffusivity, viscosity, heatCapacity, conductivity, log } = this.surface;
    const area = this.area(k);
    const mean = total / (fuel.density * area);
    const wet = area * Math.min(1, mean / thickness);
    const d = 2 * line.radius[cell]!;
    const schmidt = viscosity / (density * diffusivity);
    const g = Math.max(
      stream[k]! / cubeRoot(schmidt * schmidt),
      (LAMINAR * density * diffusivity) / d,
    );
    const h = Math.max(stream[k]! * heatCapacity * COLBURN, (LAMINAR * conductivity) / d);
    const fromGas = wet * h * blowing((g * log * fuel.vapourHeatCapacity) / h);
    const fromWall = wall > 0 ? (wet * fuel.conductivity) / Math.max(mean, thickness) : 0;
    return { fromGas, fromWall, transfer: wet * g };
  }

  /** Books what patch k gave off since `before` was kept; gives it [kg]. */
  private noteVapour(k: number): number {
    const film = this.mass[k]!;
    let vapour = 0;
    for (let i = 0; i < film.length; i++) {
      const gone = this.before[i]! - film[i]!;
      vapour += gone;
      this.books.vapour[k]![i]! += gone;
    }
    this.evaporated += vapour;
    return vapour;
  }

  /** Wall of patch k [m^2]. */
  private area(k: number): number {
    return k === this.o.line.cells ? this.o.valve.area : this.o.line.wallArea[k]!;
  }

  /** Shear moves each patch into its neighbours; at the seat into the cylinder, never over the rim. */
  private transport(dt: number, conditions: FilmConditions, runoff: Runoff): void {
    const { fuel, line, thickness } = this.o;
    for (let k = 0; k < this.patches; k++) {
      const total = totalMass(this.mass[k]!);
      if (total <= NOTHING) continue;
      const onValve = k === line.cells;
      const area = this.area(k);
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
    const { runOff, back, ahead } = this.books;
    const gone = (to === undefined ? runOff : to < k ? back : ahead)[k]!;
    const target = to === undefined ? runoff.mass : this.mass[to]!;
    const energy = share * this.energy[k]!;
    for (let i = 0; i < film.length; i++) {
      const m = share * film[i]!;
      film[i]! -= m;
      target[i]! += m;
      gone[i]! += m;
      if (to === undefined) this.ranOff += m;
    }
    this.energy[k]! -= energy;
    if (to === undefined) runoff.energy += energy;
    else this.energy[to]! += energy;
  }
}
