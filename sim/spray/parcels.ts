/**
 * All drops of one intake, as parcels of like drops, moved from nozzle to cylinder.
 *
 * Along the line a parcel has its own velocity and is dragged by the gas of its cell; across it, by
 * the gas that follows the wall's slope. In front of the mouth, distance z from its plane,
 *
 *   inflow   u = U (1 - z / sqrt(z^2 + a^2)),  v_r = (r / 2) du/dz    disc of sinks, potential flow
 *   outflow  u = U up to where the gas that left has come, beyond it as above
 *
 * with U the velocity in the mouth and a its radius. A parcel ends as vapour, as film, in the
 * cylinder, or lost: past the mouth's edge, or out of reach in front of it.
 * Left out: turbulence in the stream's core (near the wall it deposits drops, wallImpact.ts), drops
 * that meet each other, break-up, and swirl.
 * Source: potential flow of a disc of sinks, exact on the axis; the drops as droplet.ts.
 */
import type { Gas } from '../gas/gas.ts';
import { viscosity } from '../gas/viscosity.ts';
import type { SprayCouplingSpecification } from '../specification.ts';
import { STANDARD_GRAVITY } from '../units.ts';
import type { ChargeGas } from './chargeGas.ts';
import { type Drop, dropDiameter, evaporateDrop, relaxationTime } from './droplet.ts';
import { type Surroundings, type WetSurface, wetSurface } from './evaporation.ts';
import type { IntakeLine } from './intakeLine.ts';
import { type LiquidFuel, liquidEnergy, totalMass } from './liquidFuel.ts';
import type { MouthCloud } from './mouthCloud.ts';
import type { SprayLedger } from './sprayLedger.ts';
import { evenlySpread } from './spraySource.ts';
import type { WallFilm } from './wallFilm.ts';
import { catchEfficiency, depositionVelocity, wallImpact } from './wallImpact.ts';

/** Like drops that move as one. */
export interface Parcel {
  where: 'intake' | 'cylinder' | 'gone';
  /** Distance from the acoustic mouth [m], below 0 in front of it; in the cylinder, from the valve. */
  s: number;
  /** Place across the line [m]. */
  y: number;
  z: number;
  /** Velocity along the line and across it [m/s]. */
  u: number;
  v: number;
  w: number;
  drop: Drop;
  /** Number of drops [-]. */
  count: number;
  /** Its place in the pulse, and how often chance has decided for it: each has its own row. */
  k: number;
  chances: number;
  /** Whether it was blown out since. */
  blownOut: boolean;
}

export interface ParcelOptions {
  fuel: LiquidFuel;
  line: IntakeLine;
  film: WallFilm;
  cloud: MouthCloud;
  charge: ChargeGas;
  gas: Gas;
  coupling: SprayCouplingSpecification;
  ledger: SprayLedger;
  /** Distance of the rim plane from the acoustic mouth [m]. */
  rim: number;
  /** Radius of the mouth [m]. */
  mouthRadius: number;
  /** Share of the bore that the open plate and its shaft block [-]; their width [m]. */
  plate: { blocked: number; width: number };
  /** Diameter of the valve [m]. */
  valveDiameter: number;
  /** Bore of the cylinder [m]. */
  bore: number;
  /** State of the open air. */
  outside: { temperature: number; pressure: number };
  /** Acceleration along the line by gravity [m/s^2]. */
  gravity: number;
}

/** What parcels did since the last reset [kg]. */
export interface ParcelTally {
  /** Blown out past the rim; came back; went through the valve. */
  blownOut: number;
  cameBack: number;
  throughValve: number;
  /** Missed the mouth on the way in. */
  missed: number;
}

/** Beyond this many mouth radii in front of the mouth, or beside it, a drop is lost. */
const REACH = 12;
/** Kinetic energy of the normal motion that a splash leaves [-]; Bai & Gosman, from memory. */
const SPLASH_ENERGY = 0.2;

export class Parcels {
  list: Parcel[] = [];
  readonly tally: ParcelTally = { blownOut: 0, cameBack: 0, throughValve: 0, missed: 0 };
  /** Called with the mass that passes the valve as drops [kg]. */
  onValve: (mass: number) => void = () => {};
  private readonly o: ParcelOptions;
  private readonly surface: WetSurface;
  private readonly around: Surroundings = { T: 300, p: 1e5, fuel: 0 };
  /** Velocity [m/s], across included, density [kg/m^3] and radius-slope of the gas at a parcel. */
  private readonly stream = { u: 0, across: 0, rho: 1, mu: 1.8e-5 };

  constructor(options: ParcelOptions) {
    this.o = options;
    this.surface = wetSurface(options.fuel);
  }

  /** Moves, heats and evaporates every parcel for dt [s]; `mouthSpeed` [m/s] counts inwards. */
  step(dt: number, mouthSpeed: number, valveOpen: boolean): void {
    for (const parcel of this.list) {
      if (parcel.where === 'cylinder') this.inCylinder(parcel, dt);
      else this.inIntake(parcel, dt, mouthSpeed, valveOpen);
    }
    this.list = this.list.filter((parcel) => parcel.where !== 'gone');
  }

  /** Starts the books of a new cycle. */
  newCycle(): void {
    Object.assign(this.tally, { blownOut: 0, cameBack: 0, throughValve: 0, missed: 0 });
  }

  /** Mass [kg] and energy [J] of all drops, kinetic included; those in the cylinder apart. */
  held(): { mass: number; energy: number; inCylinder: number } {
    let mass = 0;
    let energy = 0;
    let inCylinder = 0;
    for (const parcel of this.list) {
      const m = this.massOf(parcel);
      mass += m;
      energy += this.energyOf(parcel);
      if (parcel.where === 'cylinder') inCylinder += m;
    }
    return { mass, energy, inCylinder };
  }

  massOf(parcel: Parcel): number {
    return parcel.count * totalMass(parcel.drop.mass);
  }

  /** Liquid enthalpy and kinetic energy [J]. */
  energyOf(parcel: Parcel): number {
    const { drop, count } = parcel;
    const kinetic = 0.5 * totalMass(drop.mass) * speedSquared(parcel);
    return count * (liquidEnergy(this.o.fuel, drop.mass, drop.T) + kinetic);
  }

  private inCylinder(parcel: Parcel, dt: number): void {
    const { charge, fuel, gas, bore } = this.o;
    const mass = this.massOf(parcel);
    const energy = this.energyOf(parcel);
    const slip = Math.sqrt(speedSquared(parcel));
    const d = dropDiameter(fuel, parcel.drop);
    charge.around(this.around);
    evaporateDrop(fuel, gas, parcel.drop, this.around, slip, dt, this.surface);
    const rho = this.around.p / (gas.rAir * this.around.T);
    const tau = relaxationTime(fuel.density, d, rho, viscosity(this.around.T), slip);
    const kept = Math.exp(-dt / tau);
    parcel.s += slip * tau * (1 - kept);
    scaleVelocity(parcel, kept);
    const left = this.massOf(parcel);
    charge.give(mass - left, energy - this.energyOf(parcel), this.o);
    if (left <= 0) parcel.where = 'gone';
    else if (parcel.s > bore) {
      charge.wet(parcel.drop.mass, parcel.count, this.energyOf(parcel));
      parcel.where = 'gone';
    }
  }

  private inIntake(parcel: Parcel, dt: number, mouthSpeed: number, valveOpen: boolean): void {
    const { fuel, gas, line, ledger } = this.o;
    const cell = parcel.s >= 0 ? line.cellAt(parcel.s) : -1;
    this.streamAt(parcel, cell, mouthSpeed);
    const { stream } = this;
    const before = this.massOf(parcel);
    const energy = this.energyOf(parcel);
    const momentum = before * parcel.u;
    const from = parcel.s;
    const r = Math.hypot(parcel.y, parcel.z);
    const acrossY = r > 0 ? (stream.across * parcel.y) / r : 0;
    const acrossZ = r > 0 ? (stream.across * parcel.z) / r : 0;
    const slip = Math.hypot(stream.u - parcel.u, acrossY - parcel.v, acrossZ - parcel.w);
    const d = dropDiameter(fuel, parcel.drop);
    evaporateDrop(fuel, gas, parcel.drop, this.around, slip, dt, this.surface);
    const tau = relaxationTime(fuel.density, d, stream.rho, stream.mu, slip);
    const kept = Math.exp(-dt / tau);
    const { gravity } = this.o;
    const settled = stream.u + gravity * tau;
    const u = settled + (parcel.u - settled) * kept;
    const v = acrossY + (parcel.v - acrossY) * kept;
    const w = acrossZ + (parcel.w - acrossZ) * kept;
    parcel.s += 0.5 * dt * (u + parcel.u);
    parcel.y += 0.5 * dt * (v + parcel.v);
    parcel.z += 0.5 * dt * (w + parcel.w);
    parcel.u = u;
    parcel.v = v;
    parcel.w = w;
    const left = this.massOf(parcel);
    const work = before * gravity * (parcel.s - from);
    ledger.gravityWork += work;
    const lost = energy + work - this.energyOf(parcel);
    if (cell >= 0) {
      const push = momentum + before * gravity * dt - left * parcel.u;
      line.give(cell, before - left, push, lost, this.o.coupling, gas, ledger);
    } else this.giveOutside(before - left, lost, -from);
    if (left <= 0) {
      parcel.where = 'gone';
      return;
    }
    if (cell >= 0) this.settleOnWall(parcel, cell, tau, dt);
    this.boundaries(parcel, from, valveOpen, tau);
  }

  /** Gas velocity and state at a parcel. */
  private streamAt(parcel: Parcel, cell: number, mouthSpeed: number): void {
    const { line, cloud, gas, outside, mouthRadius: a } = this.o;
    const { stream, around } = this;
    if (cell >= 0) {
      line.around(cell, around);
      stream.u = line.u[cell]!;
      const r = Math.hypot(parcel.y, parcel.z);
      const inside = parcel.s > this.o.rim;
      stream.across = inside ? (stream.u * line.slope[cell]! * r) / line.radius[cell]! : 0;
      stream.rho = line.rho[cell]!;
    } else {
      const z = -parcel.s;
      around.T = outside.temperature;
      around.p = outside.pressure;
      stream.rho = outside.pressure / (gas.rAir * outside.temperature);
      around.fuel = cloud.concentration(stream.rho);
      const jet = mouthSpeed < 0 && z < cloud.slug;
      const far = Math.hypot(z, a);
      stream.u = jet ? mouthSpeed : mouthSpeed * (1 - z / far);
      const r = Math.hypot(parcel.y, parcel.z);
      stream.across = jet ? 0 : (-0.5 * r * mouthSpeed * a * a) / far ** 3;
    }
    stream.mu = viscosity(around.T);
  }

  /** Vapour and cold given off in front of the mouth. */
  private giveOutside(vapour: number, energy: number, z: number): void {
    const { coupling, gas, outside, cloud, ledger, line } = this.o;
    const own = gas.internalEnergy(outside.temperature, 0, 1);
    const mass = coupling.vapour === 'field' ? vapour : 0;
    const heat = mass * own + (coupling.heat === 'field' ? energy - vapour * own : 0);
    line.evaporatedOutside += vapour;
    line.cooling += vapour * own - energy;
    cloud.add(mass, heat, z);
    ledger.withheldMass += vapour - mass;
    ledger.withheldEnergy += energy - heat;
  }

  /** Turbulence near the wall carries a share of the drops into the film. */
  private settleOnWall(parcel: Parcel, cell: number, tau: number, dt: number): void {
    const { line, rim, film } = this.o;
    if (parcel.s <= rim) return;
    const { stream } = this;
    const friction = Math.abs(stream.u) * Math.sqrt(0.5 * line.fanning(cell));
    const plus = (tau * friction * friction * stream.rho) / stream.mu;
    const speed = depositionVelocity(plus) * friction;
    const share = -Math.expm1((-2 * speed * dt) / line.radius[cell]!);
    if (share < 1e-9) return;
    const count = share * parcel.count;
    film.deposit(cell, parcel.drop.mass, count, share * this.energyOf(parcel));
    parcel.count -= count;
  }

  /** Rim, wall, plate and valve. */
  private boundaries(parcel: Parcel, from: number, valveOpen: boolean, tau: number): void {
    const { line, rim } = this.o;
    if (parcel.s < rim) {
      if (from >= rim) this.passRim(parcel, 'out');
      if (parcel.where === 'intake') this.dropIfOutOfReach(parcel);
      return;
    }
    if (from < rim) {
      this.passRim(parcel, 'in');
      if (parcel.where === 'gone') return;
    }
    const plate = line.length - line.runner.mesh.length;
    if (from < plate !== parcel.s < plate) this.passPlate(parcel, from, plate, tau);
    if (parcel.where === 'intake' && parcel.s >= line.length)
      this.meetValve(parcel, valveOpen, tau);
    if (parcel.where === 'intake') this.meetWall(parcel);
  }

  private passRim(parcel: Parcel, way: 'in' | 'out'): void {
    const { tally } = this;
    const mass = this.massOf(parcel);
    if (way === 'out') {
      tally.blownOut += mass;
      parcel.blownOut = true;
    } else if (Math.hypot(parcel.y, parcel.z) > this.o.mouthRadius) {
      tally.missed += mass;
      this.lose(parcel);
    } else {
      if (parcel.blownOut) tally.cameBack += mass;
      parcel.blownOut = false;
    }
  }

  private dropIfOutOfReach(parcel: Parcel): void {
    const reach = REACH * this.o.mouthRadius;
    if (-parcel.s > reach || Math.hypot(parcel.y, parcel.z) > reach) this.lose(parcel);
  }

  private passPlate(parcel: Parcel, from: number, plate: number, tau: number): void {
    const { blocked, width } = this.o.plate;
    const catches = catchEfficiency((tau * Math.abs(parcel.u)) / width);
    if (chance(parcel) >= blocked * catches) return;
    const cell = this.o.line.cellAt(Math.min(from, plate - 1e-9));
    this.strike(parcel, cell, Math.abs(parcel.u), 0, () => {
      parcel.s = from;
      parcel.u = -parcel.u * Math.sqrt(SPLASH_ENERGY);
    });
  }

  private meetValve(parcel: Parcel, valveOpen: boolean, tau: number): void {
    const { line, valveDiameter } = this.o;
    const catches = catchEfficiency((tau * parcel.u) / valveDiameter);
    const missesHead = valveOpen && chance(parcel) >= catches;
    if (!missesHead) {
      this.strike(parcel, line.cells, parcel.u, 0, (rebound) => {
        if (valveOpen) scaleVelocity(parcel, Math.sqrt(SPLASH_ENERGY));
        else {
          parcel.s = line.length - 1e-6;
          parcel.u *= -(rebound ?? Math.sqrt(SPLASH_ENERGY));
        }
      });
    }
    if (parcel.where !== 'intake' || !valveOpen) return;
    const mass = this.massOf(parcel);
    this.tally.throughValve += mass;
    this.onValve(mass);
    parcel.where = 'cylinder';
    parcel.s = 0;
  }

  private meetWall(parcel: Parcel): void {
    const { line } = this.o;
    const cell = line.cellAt(parcel.s);
    const r = Math.hypot(parcel.y, parcel.z);
    const wall = line.radius[cell]!;
    if (r < wall) return;
    const [ny, nz] = [parcel.y / r, parcel.z / r];
    const radial = parcel.v * ny + parcel.w * nz;
    const normal = radial - parcel.u * line.slope[cell]!;
    const inset = (wall * (1 - 1e-6)) / r;
    parcel.y *= inset;
    parcel.z *= inset;
    if (normal <= 0) return;
    this.strike(parcel, cell, normal, Math.abs(parcel.u), (rebound) => {
      const back = normal * (1 + (rebound ?? Math.sqrt(SPLASH_ENERGY)));
      parcel.v -= back * ny;
      parcel.w -= back * nz;
    });
  }

  /** Film, rebound or splash; `turn` sets the velocity of what goes on, given a restitution. */
  private strike(
    parcel: Parcel,
    patch: number,
    normal: number,
    tangent: number,
    turn: (restitution?: number) => void,
  ): void {
    const { fuel, film } = this.o;
    const { drop } = parcel;
    const energy = this.energyOf(parcel);
    const d = dropDiameter(fuel, drop);
    const impact = wallImpact(fuel, d, normal, tangent, chance(parcel));
    if (impact.kind === 'film') {
      film.deposit(patch, drop.mass, parcel.count, energy);
      parcel.where = 'gone';
      return;
    }
    const share = impact.kind === 'splash' ? impact.share : 1;
    if (impact.kind === 'splash') {
      film.deposit(patch, drop.mass, parcel.count * (1 - share), energy * (1 - share));
      const cube = impact.sizeRatio ** 3;
      parcel.count *= share / cube;
      for (let i = 0; i < drop.mass.length; i++) drop.mass[i]! *= cube;
      turn();
    } else turn(impact.restitution);
    // The motion that the wall took warms the drop.
    drop.T += (share * energy - this.energyOf(parcel)) / (parcel.count * this.capacityOf(drop));
  }

  private capacityOf(drop: Drop): number {
    const { parts } = this.o.fuel;
    return drop.mass.reduce((sum, m, i) => sum + m * parts[i]!.heatCapacity, 0);
  }

  private lose(parcel: Parcel): void {
    const { ledger } = this.o;
    ledger.lostMass += this.massOf(parcel);
    ledger.lostEnergy += this.energyOf(parcel);
    parcel.where = 'gone';
  }
}

/** Evenly spread over parcels and over one parcel's events; the same in every cycle. */
function chance(parcel: Parcel): number {
  return (evenlySpread(parcel.k, 2) + evenlySpread(parcel.chances++, 1)) % 1;
}

/** Acceleration along the line [m/s^2] of a trumpet that leans from upright [deg], mouth up. */
export function gravityAlong(lean: number): number {
  return STANDARD_GRAVITY * Math.cos((Math.PI / 180) * lean);
}

function speedSquared({ u, v, w }: Parcel): number {
  return u * u + v * v + w * w;
}

function scaleVelocity(parcel: Parcel, share: number): void {
  parcel.u *= share;
  parcel.v *= share;
  parcel.w *= share;
}
