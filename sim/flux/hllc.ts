/**
 * The HLLC flux (Harten, Lax, van Leer, Contact): two acoustic waves and the contact between them.
 *
 *   S* = (pR - pL + rhoL uL (SL - uL) - rhoR uR (SR - uR)) / (rhoL (SL - uL) - rhoR (SR - uR))
 *   p* = pK + rhoK (SK - uK) (S* - uK),   rho* = rhoK (SK - uK) / (SK - S*)
 *
 * The star flux is written with p* itself, so that gas at rest at one pressure gives exactly that
 * pressure and no mass flux, whatever the densities on both sides.
 * Source: Toro (2009), Riemann Solvers and Numerical Methods for Fluid Dynamics, sec. 10.4-10.6;
 * wave speeds from the pressure estimate, eqs. 10.59-10.61 and 10.67 (from memory).
 */
import type { NumericalFlux } from './numericalFlux.ts';

export const fluxHllc: NumericalFlux = (left, right, from, to, flux) => {
  for (let i = from; i < to; i++) {
    const rhoL = left.rho[i]!;
    const uL = left.u[i]!;
    const pL = left.p[i]!;
    const cL = left.c[i]!;
    const rhoR = right.rho[i]!;
    const uR = right.u[i]!;
    const pR = right.p[i]!;
    const cR = right.c[i]!;

    // Pressure between the waves, linearised; a shock's speed exceeds the sound speed by q.
    const estimate = 0.5 * (pL + pR) - 0.125 * (uR - uL) * (rhoL + rhoR) * (cL + cR);
    const qL = estimate > pL ? shockFactor(estimate, pL, rhoL, cL) : 1;
    const qR = estimate > pR ? shockFactor(estimate, pR, rhoR, cR) : 1;
    const sL = uL - cL * qL;
    const sR = uR + cR * qR;
    const massL = rhoL * (sL - uL);
    const massR = rhoR * (sR - uR);
    const sStar = (pR - pL + uL * massL - uR * massR) / (massL - massR);

    const fromLeft = sStar >= 0;
    const side = fromLeft ? left : right;
    const rho = fromLeft ? rhoL : rhoR;
    const u = fromLeft ? uL : uR;
    const p = fromLeft ? pL : pR;
    const energy = rho * (side.e[i]! + 0.5 * u * u);
    let mass: number;
    if (fromLeft ? sL >= 0 : sR <= 0) {
      mass = rho * u;
      flux.momentum[i] = mass * u + p;
      flux.energy[i] = u * (energy + p);
    } else {
      const s = fromLeft ? sL : sR;
      const pStar = p + rho * (s - u) * (sStar - u);
      mass = ((rho * (s - u)) / (s - sStar)) * sStar;
      flux.momentum[i] = mass * sStar + pStar;
      flux.energy[i] = sStar * (((s - u) * energy - p * u + pStar * sStar) / (s - sStar) + pStar);
    }
    flux.mass[i] = mass;
    flux.burned[i] = mass * side.burned[i]!;
    flux.fuel[i] = mass * side.fuel[i]!;
  }
};

/** Mach number of a shock from pressure p to pStar; gamma p = rho c^2. */
function shockFactor(pStar: number, p: number, rho: number, c: number): number {
  const gammaP = rho * c * c;
  return Math.sqrt(1 + (0.5 * (gammaP / p + 1) * (pStar - p)) / gammaP);
}
