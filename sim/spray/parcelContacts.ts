/**
 * What drops meet on their way: the rim of the mouth, the throttle plate, the valve and the wall. A
 * parcel that meets one sticks as film, rebounds or splashes. Source: as wallImpact.ts.
 */
import { cube, expm1, hypot } from '../elementary/powers.ts';
import { type Drop, dropDiameter } from './droplet.ts';
import { chance, energyOf, massOf, type Parcel, scaleVelocity } from './parcel.ts';
import type { ParcelOptions } from './parcels.ts';
import { catchEfficiency, depositionVelocity, wallImpact } from './wallImpact.ts';

/** The gas at a parcel: velocity along and across [m/s], density [kg/m^3], viscosity [Pa s]. */
export interface Stream {
  u: number;
  across: number;
  rho: number;
  mu: number;
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

export class ParcelContacts {
  readonly tally: ParcelTally = { blownOut: 0, cameBack: 0, throughValve: 0, missed: 0 };
  /** Called with the mass that passes the valve as drops [kg]. */
  onValve: (mass: number) => void = () => {};
  private readonly o: ParcelOptions;

  constructor(options: ParcelOptions) {
    this.o = options;
  }

  /** Starts the books of a new cycle. */
  newCycle(): void {
    Object.assign(this.tally, { blownOut: 0, cameBack: 0, throughValve: 0, missed: 0 });
  }

  /** Turbulence near the wall carries a share of the drops into the film. */
  settleOnWall(parcel: Parcel, cell: number, tau: number, dt: number, stream: Stream): void {
    const { line, rim, film, fuel } = this.o;
    if (parcel.s <= rim) return;
    const friction = Math.abs(stream.u) * Math.sqrt(0.5 * line.fanning(cell));
    const plus = (tau * friction * friction * stream.rho) / stream.mu;
    const speed = depositionVelocity(plus) * friction;
    const share = -expm1((-2 * speed * dt) / line.radius[cell]!);
    if (share < 1e-9) return;
    const count = share * parcel.count;
    film.deposit(cell, parcel.drop.mass, count, share * energyOf(fuel, parcel));
    parcel.count -= count;
  }

  /** Rim, wall, plate and valve, on the way from `from` [m] to where the parcel is now. */
  meet(parcel: Parcel, from: number, valveOpen: boolean, tau: number): void {
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
    // The flare is no part of the line: what it does not draw in strikes the wall at its foot.
    if (parcel.where === 'intake' && parcel.s >= 0) this.meetWall(parcel);
  }

  private passRim(parcel: Parcel, way: 'in' | 'out'): void {
    const { tally } = this;
    const mass = massOf(parcel);
    if (way === 'out') {
      tally.blownOut += mass;
      parcel.blownOut = true;
    } else if (hypot(parcel.y, parcel.z) > this.o.mouthRadius) {
      tally.missed += mass;
      this.lose(parcel);
    } else {
      if (parcel.blownOut) tally.cameBack += mass;
      parcel.blownOut = false;
    }
  }

  private dropIfOutOfReach(parcel: Parcel): void {
    const reach = REACH * this.o.mouthRadius;
    if (-parcel.s > reach || hypot(parcel.y, parcel.z) > reach) this.lose(parcel);
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
    const mass = massOf(parcel);
    this.tally.throughValve += mass;
    this.onValve(mass);
    parcel.where = 'cylinder';
    parcel.s = 0;
  }

  private meetWall(parcel: Parcel): void {
    const { line } = this.o;
    const cell = line.cellAt(parcel.s);
    const r = hypot(parcel.y, parcel.z);
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
    const energy = energyOf(fuel, parcel);
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
      const volume = cube(impact.sizeRatio);
      parcel.count *= share / volume;
      for (let i = 0; i < drop.mass.length; i++) drop.mass[i]! *= volume;
      turn();
    } else turn(impact.restitution);
    // The motion that the wall took warms the drop.
    drop.T += (share * energy - energyOf(fuel, parcel)) / (parcel.count * this.capacityOf(drop));
  }

  private capacityOf(drop: Drop): number {
    const { parts } = this.o.fuel;
    return drop.mass.reduce((sum, m, i) => sum + m * parts[i]!.heatCapacity, 0);
  }

  private lose(parcel: Parcel): void {
    const { ledger, fuel } = this.o;
    ledger.lostMass += massOf(parcel);
    ledger.lostEnergy += energyOf(fuel, parcel);
    parcel.where = 'gone';
  }
}
