/**
 * A numerical flux: from the states on both sides of a row of faces to the flux through them.
 * It must be consistent: equal states on both sides give the Euler flux of that state,
 *
 *   F = (rho u, rho u^2 + p, u (E + p), rho u Yb, rho u Yf),   E = rho (e + u^2 / 2).
 */
import type { FaceFluxes, FaceStates } from '../duct/faces.ts';

/** Fills `flux` at faces `from` <= i < `to`. */
export type NumericalFlux = (
  left: FaceStates,
  right: FaceStates,
  from: number,
  to: number,
  flux: FaceFluxes,
) => void;
