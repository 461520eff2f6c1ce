/**
 * An injector: when it opens, how much it gives, and the drops it makes.
 *
 *   1 - V(d) = exp(-(d / X)^q),   X = SMD Gamma(1 - 1/q)      Rosin-Rammler, V share of volume
 *   v = sqrt(2 p / rho)                                       speed of the jet (Bernoulli)
 *
 * Each parcel holds the same mass and drops of one size; sizes and directions come from evenly
 * spread sequences, the same in every run. A solid cone: directions spread evenly over its circle.
 * Source: Rosin & Rammler (1933); Lefebvre, Atomization and Sprays, ch. 3 (from memory).
 */
import { create, gammaDependencies } from 'mathjs';
import type { InjectorSpecification } from '../specification.ts';

const { gamma } = create({ gammaDependencies });

/** Radical inverse steps: fractional parts of multiples fill 0..1 evenly (plastic number). */
const STEPS = [0.7548776662466927, 0.5698402909980532, 0.4301597090019468] as const;

/** Sizes beyond these shares of volume are cut: no drop is endless [-]. */
const CUT = 2e-3;

/** Evenly spread numbers in 0..1: the k-th of sequence 0, 1 or 2. */
export function evenlySpread(k: number, sequence: 0 | 1 | 2): number {
  return (0.5 + (k + 1) * STEPS[sequence]) % 1;
}

/** Diameter [m] below which the share `volume` of the liquid lies. */
export function rosinRammlerDiameter(sauter: number, exponent: number, volume: number): number {
  const scale = sauter * gamma(1 - 1 / exponent);
  const v = CUT + (1 - 2 * CUT) * volume;
  return scale * (-Math.log1p(-v)) ** (1 / exponent);
}

/** Speed of the jet [m/s]. */
export function jetSpeed(pressure: number, density: number): number {
  return Math.sqrt((2 * pressure) / density);
}

/** Time an injector stays open for a mass of fuel [s], without its dead time. */
export function openTime(injector: InjectorSpecification, fuelMass: number): number {
  return fuelMass / injector.flow;
}

/** Velocity [m/s] of the k-th parcel: along the axis, and across it in two directions. */
export function parcelVelocity(
  injector: InjectorSpecification,
  speed: number,
  k: number,
): [axial: number, y: number, z: number] {
  const half = (Math.PI / 360) * injector.cone;
  const off = half * Math.sqrt(evenlySpread(k, 1));
  const turn = 2 * Math.PI * evenlySpread(k, 2);
  const tilt = (Math.PI / 180) * injector.tilt;
  const along = speed * Math.cos(off);
  const inPlane = speed * Math.sin(off) * Math.cos(turn);
  return [
    along * Math.cos(tilt) + inPlane * Math.sin(tilt),
    // The injector stands off the axis at y = offset and leans towards it.
    inPlane * Math.cos(tilt) - along * Math.sin(tilt),
    speed * Math.sin(off) * Math.sin(turn),
  ];
}
