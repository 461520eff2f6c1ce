/**
 * An injector: when it opens, how much it gives, and the drops it makes.
 *
 *   1 - V(d) = exp(-(d / X)^q)       Rosin-Rammler, V share of volume below d; X from the SMD
 *   v = sqrt(2 p / rho)              speed of the jet (Bernoulli)
 *
 * Each parcel holds the same mass and drops of one size; sizes and directions come from evenly
 * spread sequences, the same in every run. A solid cone: directions spread evenly over its circle.
 * Source: Rosin & Rammler (1933); Lefebvre, Atomization and Sprays, ch. 3 (from memory).
 */
import { cos, sin } from '../elementary/angles.ts';
import { log1p, power } from '../elementary/powers.ts';
import type { InjectorSpecification } from '../injectors.ts';

/** Radical inverse steps: fractional parts of multiples fill 0..1 evenly (plastic number). */
const STEPS = [0.7548776662466927, 0.5698402909980532, 0.4301597090019468] as const;

/** Sizes beyond these shares of volume are cut: no drop is endless [-]. */
const CUT = 2e-3;
/** Nodes of the midpoint rule for the Sauter mean. */
const NODES = 4000;

/** Evenly spread numbers in 0..1: the k-th of sequence 0, 1 or 2. */
export function evenlySpread(k: number, sequence: 0 | 1 | 2): number {
  return (0.5 + (k + 1) * STEPS[sequence]) % 1;
}

/**
 * Diameter [m] below which a share of the liquid lies, for a Sauter mean and exponent: the tails are
 * cut, and X is set so that what is left has the Sauter mean asked for.
 */
export function rosinRammler(sauter: number, exponent: number): (volume: number) => number {
  const size = (volume: number) => {
    const v = CUT + (1 - 2 * CUT) * volume;
    return power(-log1p(-v), 1 / exponent);
  };
  // Equal volumes: the Sauter mean is the harmonic mean.
  let inverse = 0;
  for (let i = 0; i < NODES; i++) inverse += 1 / size((i + 0.5) / NODES);
  const scale = (sauter * inverse) / NODES;
  return (volume) => scale * size(volume);
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
  const along = speed * cos(off);
  const inPlane = speed * sin(off) * cos(turn);
  return [
    along * cos(tilt) + inPlane * sin(tilt),
    // The injector stands off the axis at y = offset and leans towards it.
    inPlane * cos(tilt) - along * sin(tilt),
    speed * sin(off) * sin(turn),
  ];
}
