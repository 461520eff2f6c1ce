/** Values at the faces of a duct: the states on both sides, and the fluxes through. */

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

export function faceStates(count: number): FaceStates {
  const field = () => new Float64Array(count);
  return {
    rho: field(),
    u: field(),
    p: field(),
    e: field(),
    c: field(),
    burned: field(),
    fuel: field(),
  };
}

export function faceFluxes(count: number): FaceFluxes {
  const field = () => new Float64Array(count);
  return { mass: field(), momentum: field(), energy: field(), burned: field(), fuel: field() };
}
