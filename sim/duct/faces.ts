/** Values at the faces of a duct: the states on both sides, and the fluxes through. */
import type { Block } from '../kernel/arena.ts';
import { FLUX_BURNED, FLUX_ENERGY, FLUX_FUEL, FLUX_MASS, FLUX_MOMENTUM } from '../kernel/fields.ts';

/** Primitive states on one side of the n + 1 faces. */
export interface FaceStates {
  /** Density [kg/m^3]. */
  rho: Float64Array;
  /** Velocity, positive towards rising x [m/s]. */
  u: Float64Array;
  /** Static pressure [Pa]. */
  p: Float64Array;
  /** Specific internal energy [J/kg]. */
  e: Float64Array;
  /** Speed of sound [m/s]. */
  c: Float64Array;
  /** Mass fraction of burned products [-]. */
  burned: Float64Array;
  /** Mass fraction of fuel vapour [-]. */
  fuel: Float64Array;
}

/** Fluxes per unit area through the n + 1 faces. */
export interface FaceFluxes {
  /** Mass [kg/m^2 s]. */
  mass: Float64Array;
  /** Momentum, pressure included [Pa]. */
  momentum: Float64Array;
  /** Total energy, pressure work included [W/m^2]. */
  energy: Float64Array;
  /** Burned products [kg/m^2 s]. */
  burned: Float64Array;
  /** Fuel vapour [kg/m^2 s]. */
  fuel: Float64Array;
}

/** States in seven rows of a block, the first of which is given. */
export function faceStates(block: Block, first: number): FaceStates {
  const row = (k: number) => block.ofFaces(first + k);
  return { rho: row(0), u: row(1), p: row(2), e: row(3), c: row(4), burned: row(5), fuel: row(6) };
}

export function faceFluxes(block: Block): FaceFluxes {
  return {
    mass: block.ofFaces(FLUX_MASS),
    momentum: block.ofFaces(FLUX_MOMENTUM),
    energy: block.ofFaces(FLUX_ENERGY),
    burned: block.ofFaces(FLUX_BURNED),
    fuel: block.ofFaces(FLUX_FUEL),
  };
}
