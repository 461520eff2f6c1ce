/** A parcel: like drops that move as one. Common practice, no source. */
import type { Drop } from './droplet.ts';
import { type LiquidFuel, liquidEnergy, totalMass } from './liquidFuel.ts';
import { evenlySpread } from './spraySource.ts';

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

/** Liquid of a parcel [kg]. */
export function massOf(parcel: Parcel): number {
  return parcel.count * totalMass(parcel.drop.mass);
}

/** Liquid enthalpy and kinetic energy of a parcel [J]. */
export function energyOf(fuel: LiquidFuel, parcel: Parcel): number {
  const { drop, count } = parcel;
  const kinetic = 0.5 * totalMass(drop.mass) * speedSquared(parcel);
  return count * (liquidEnergy(fuel, drop.mass, drop.T) + kinetic);
}

/** Evenly spread over parcels and over one parcel's events; the same in every cycle. */
export function chance(parcel: Parcel): number {
  return (evenlySpread(parcel.k, 2) + evenlySpread(parcel.chances++, 1)) % 1;
}

export function speedSquared({ u, v, w }: Parcel): number {
  return u * u + v * v + w * w;
}

export function scaleVelocity(parcel: Parcel, share: number): void {
  parcel.u *= share;
  parcel.v *= share;
  parcel.w *= share;
}
