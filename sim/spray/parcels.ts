/**
 * All drops of one intake, as parcels of like drops, moved from nozzle to cylinder.
 *
 * Along the line a parcel has its own velocity and is dragged by the gas of its cell; across it, by
 * the gas that follows the wall's slope; in front of the mouth, by what flows there (mouthFlow.ts). A parcel
 * ends as vapour, as film, in the cylinder, or lost: past the mouth's edge, or out of reach in front of it.
 * Left out: turbulence in the stream's core (near the wall it deposits drops, wallImpact.ts), drops
 * that meet each other, break-up, and swirl. Source: as droplet.ts.
 */
import { cos, sin } from '../elementary/angles.ts';
import { exp, hypot } from '../elementary/powers.ts';
import type { Gas } from '../gas/gas.ts';
import { viscosity } from '../gas/viscosity.ts';
import type { SprayCouplingSpecification } from '../injectors.ts';
import { STANDARD_GRAVITY } from '../units.ts';
import type { ChargeGas } from './chargeGas.ts';
import { dropDiameter, evaporateDrop, relaxationTime } from './droplet.ts';
import { type Surroundings, type WetSurface, wetSurface } from './evaporation.ts';
import type { IntakeLine } from './intakeLine.ts';
import type { LiquidFuel } from './liquidFuel.ts';
import type { MouthCloud } from './mouthCloud.ts';
import { type MouthState, mouthFlow } from './mouthFlow.ts';
import { energyOf, massOf, type Parcel, scaleVelocity, speedSquared } from './parcel.ts';
import { ParcelContacts, type Stream } from './parcelContacts.ts';
import type { SprayLedger } from './sprayLedger.ts';
import type { WallFilm } from './wallFilm.ts';

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
  /** Acceleration by gravity along the line and across it [m/s^2]. */
  gravity: Gravity;
}

interface Gravity {
  along: number;
  across: number;
}

export class Parcels {
  list: Parcel[] = [];
  readonly contacts: ParcelContacts;
  private readonly o: ParcelOptions;
  private readonly surface: WetSurface;
  private readonly around: Surroundings = { T: 300, p: 1e5, fuel: 0 };
  private readonly stream: Stream = { u: 0, across: 0, rho: 1, mu: 1.8e-5 };
  private readonly mouth: MouthState;

  constructor(options: ParcelOptions) {
    this.o = options;
    this.contacts = new ParcelContacts(options);
    this.surface = wetSurface(options.fuel);
    this.mouth = { radius: options.mouthRadius, speed: 0, front: 0 };
  }

  /** Moves, heats and evaporates every parcel for dt [s]; `mouthSpeed` [m/s] counts inwards. */
  step(dt: number, mouthSpeed: number, valveOpen: boolean): void {
    this.mouth.speed = mouthSpeed;
    this.mouth.front = this.o.cloud.front;
    for (const parcel of this.list) {
      if (parcel.where === 'cylinder') this.inCylinder(parcel, dt);
      else this.inIntake(parcel, dt, valveOpen);
    }
    this.list = this.list.filter((parcel) => parcel.where !== 'gone');
  }

  /** Starts the books of a new cycle. */
  newCycle(): void {
    this.contacts.newCycle();
  }

  /** Mass [kg] and energy [J] of all drops, kinetic included; those in the cylinder apart. */
  held(): { mass: number; energy: number; inCylinder: number } {
    let mass = 0;
    let energy = 0;
    let inCylinder = 0;
    for (const parcel of this.list) {
      const m = massOf(parcel);
      mass += m;
      energy += energyOf(this.o.fuel, parcel);
      if (parcel.where === 'cylinder') inCylinder += m;
    }
    return { mass, energy, inCylinder };
  }

  private inCylinder(parcel: Parcel, dt: number): void {
    const { charge, fuel, gas, bore } = this.o;
    const mass = massOf(parcel);
    const energy = energyOf(fuel, parcel);
    const slip = Math.sqrt(speedSquared(parcel));
    const d = dropDiameter(fuel, parcel.drop);
    charge.around(this.around);
    evaporateDrop(fuel, gas, parcel.drop, this.around, slip, dt, this.surface);
    const rho = this.around.p / (gas.rAir * this.around.T);
    const tau = relaxationTime(fuel.density, d, rho, viscosity(this.around.T), slip);
    const kept = exp(-dt / tau);
    parcel.s += slip * tau * (1 - kept);
    scaleVelocity(parcel, kept);
    const left = massOf(parcel);
    charge.give(mass - left, energy - energyOf(fuel, parcel), this.o);
    if (left <= 0) parcel.where = 'gone';
    else if (parcel.s > bore) {
      charge.wet(parcel.drop.mass, parcel.count, energyOf(fuel, parcel));
      parcel.where = 'gone';
    }
  }

  private inIntake(parcel: Parcel, dt: number, valveOpen: boolean): void {
    const { fuel, gas, line, ledger } = this.o;
    const cell = parcel.s >= 0 ? line.cellAt(parcel.s) : -1;
    this.streamAt(parcel, cell);
    const { stream } = this;
    const before = massOf(parcel);
    const energy = energyOf(fuel, parcel);
    const momentum = before * parcel.u;
    const from = parcel.s;
    const r = hypot(parcel.y, parcel.z);
    const acrossY = r > 0 ? (stream.across * parcel.y) / r : 0;
    const acrossZ = r > 0 ? (stream.across * parcel.z) / r : 0;
    const slip = hypot(stream.u - parcel.u, acrossY - parcel.v, acrossZ - parcel.w);
    const d = dropDiameter(fuel, parcel.drop);
    evaporateDrop(fuel, gas, parcel.drop, this.around, slip, dt, this.surface);
    const tau = relaxationTime(fuel.density, d, stream.rho, stream.mu, slip);
    const work = before * this.carry(parcel, dt, tau, acrossY, acrossZ);
    const left = massOf(parcel);
    ledger.gravityWork += work;
    const lost = energy + work - energyOf(fuel, parcel);
    if (cell >= 0) {
      const push = momentum + before * this.o.gravity.along * dt - left * parcel.u;
      line.give(cell, before - left, push, lost, this.o.coupling, gas, ledger);
    } else this.giveOutside(before - left, lost, -from);
    if (left <= 0) {
      parcel.where = 'gone';
      return;
    }
    if (cell >= 0) this.contacts.settleOnWall(parcel, cell, tau, dt, stream);
    this.contacts.meet(parcel, from, valveOpen, tau);
  }

  /** Moves a drop for dt [s], dragged and falling; gives gravity's work on it [J/kg]. */
  private carry(parcel: Parcel, dt: number, tau: number, acrossY: number, acrossZ: number): number {
    const { gravity } = this.o;
    const { s: from, y: fromY } = parcel;
    const kept = exp(-dt / tau);
    const settled = this.stream.u + gravity.along * tau;
    const settledY = acrossY + gravity.across * tau;
    const u = settled + (parcel.u - settled) * kept;
    const v = settledY + (parcel.v - settledY) * kept;
    const w = acrossZ + (parcel.w - acrossZ) * kept;
    parcel.s += 0.5 * dt * (u + parcel.u);
    parcel.y += 0.5 * dt * (v + parcel.v);
    parcel.z += 0.5 * dt * (w + parcel.w);
    parcel.u = u;
    parcel.v = v;
    parcel.w = w;
    return gravity.along * (parcel.s - from) + gravity.across * (parcel.y - fromY);
  }

  /** Gas velocity and state at a parcel. */
  private streamAt(parcel: Parcel, cell: number): void {
    const { line, cloud, gas, outside } = this.o;
    const { stream, around } = this;
    const r = hypot(parcel.y, parcel.z);
    if (cell >= 0) {
      line.around(cell, around);
      stream.u = line.u[cell]!;
      const inside = parcel.s > this.o.rim;
      stream.across = inside ? (stream.u * line.slope[cell]! * r) / line.radius[cell]! : 0;
      stream.rho = line.rho[cell]!;
    } else {
      around.T = outside.temperature;
      around.p = outside.pressure;
      stream.rho = outside.pressure / (gas.rAir * outside.temperature);
      around.fuel = cloud.concentration(stream.rho);
      mouthFlow(stream, -parcel.s, r, this.mouth);
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
}

/**
 * Acceleration [m/s^2] in a trumpet that leans from upright [deg], mouth up: along the line, and across it away from
 * the side on which injectors stand off. That they stand above is common practice, no source.
 */
export function gravityOf(lean: number): Gravity {
  const angle = (Math.PI / 180) * lean;
  return { along: STANDARD_GRAVITY * cos(angle), across: -STANDARD_GRAVITY * sin(angle) };
}
