/**
 * The energy of the gas at the faces of a duct, and the fluxes through those inside it. HLLC (Harten,
 * Lax, van Leer, Contact): two acoustic waves and the contact between them,
 *
 *   S* = (pR - pL + rhoL uL (SL - uL) - rhoR uR (SR - uR)) / (rhoL (SL - uL) - rhoR (SR - uR))
 *   p* = pK + rhoK (SK - uK) (S* - uK),   rho* = rhoK (SK - uK) / (SK - S*)
 *
 * with SL = min(uL - cL, uR - cR), SR = max(uL + cL, uR + cR), c of the cells. The star flux is written
 * with p* itself, so that gas at rest at one pressure gives exactly that pressure and no mass flux.
 * Rusanov's flux, for comparison: the mean of both sides less the largest wave speed times half the jump.
 * Source: Toro (2009), Riemann Solvers and Numerical Methods for Fluid Dynamics, sec. 10.3-10.6; wave
 * speeds of Davis, eq. 10.48 (from memory).
 */

import { abs, any, type B, type I, max, min, N, type V, X } from './lanes.ts';
import {
  BURNED,
  C,
  CV_R,
  D_CELLS,
  D_SUMS,
  D_VAPOUR,
  D_X,
  E,
  E_BURNED,
  E_FUEL,
  FLUX,
  FUEL,
  LEFT,
  P,
  PER_RHO,
  RIGHT,
  ROUGH_FLUX,
  ROWS,
} from './layout.ts';

/** Fills the fluxes of the inner faces. */
export function fluxes(duct: I): void {
  const n: I = N[duct + D_CELLS];
  const x: I = N[duct + D_X];
  const vapour: boolean = any(X[N[duct + D_SUMS] + D_VAPOUR] > 0);
  if (N[ROUGH_FLUX] === 0) {
    for (let i: I = 1; i < n; i++) fluxHllc(x + i * ROWS, vapour);
  } else {
    for (let i: I = 1; i < n; i++) fluxRusanov(x + i * ROWS, vapour);
  }
}

/** The flux of the face in the slot at x. */
export function fluxHllc(x: I, vapour: boolean): void {
  const rl: V = X[x + LEFT];
  const ul: V = X[x + LEFT + 1];
  const pl: V = X[x + LEFT + 2];
  const cl: V = X[x + C];
  const rr: V = X[x + RIGHT];
  const ur: V = X[x + RIGHT + 1];
  const pr: V = X[x + RIGHT + 2];
  const cr: V = X[x + C + ROWS];
  const sl: V = min(ul - cl, ur - cr);
  const sr: V = max(ul + cl, ur + cr);
  const ml: V = rl * (sl - ul);
  const mr: V = rr * (sr - ur);
  const star: V = (pr - pl + ul * ml - ur * mr) / (ml - mr);
  const left: B = star >= 0;
  const rho: V = left ? rl : rr;
  const u: V = left ? ul : ur;
  const p: V = left ? pl : pr;
  const e: V = left ? X[x + LEFT + 3] : X[x + RIGHT + 3];
  const wave: V = left ? sl : sr;
  const outrun: V = left ? sl : -sr;
  const energy: V = rho * (e + 0.5 * u * u);
  const su: V = wave - u;
  const perGap: V = 1 / (wave - star);
  const pStar: V = p + rho * su * (star - u);
  const mass: V = outrun >= 0 ? rho * u : rho * su * perGap * star;
  X[x + FLUX] = mass;
  X[x + FLUX + 1] = outrun >= 0 ? mass * u + p : mass * star + pStar;
  X[x + FLUX + 2] =
    outrun >= 0 ? u * (energy + p) : star * ((su * energy - p * u + pStar * star) * perGap + pStar);
  X[x + FLUX + 3] = mass * (left ? X[x + LEFT + 4] : X[x + RIGHT + 4]);
  if (vapour) X[x + FLUX + 4] = mass * (left ? X[x + LEFT + 5] : X[x + RIGHT + 5]);
}

export function fluxRusanov(x: I, vapour: boolean): void {
  const rl: V = X[x + LEFT];
  const ul: V = X[x + LEFT + 1];
  const pl: V = X[x + LEFT + 2];
  const rr: V = X[x + RIGHT];
  const ur: V = X[x + RIGHT + 1];
  const pr: V = X[x + RIGHT + 2];
  const fastest: V = 0.5 * max(abs(ul) + X[x + C], abs(ur) + X[x + C + ROWS]);
  const energyL: V = rl * (X[x + LEFT + 3] + 0.5 * ul * ul);
  const energyR: V = rr * (X[x + RIGHT + 3] + 0.5 * ur * ur);
  const mass: V = 0.5 * (rl * ul + rr * ur) - fastest * (rr - rl);
  X[x + FLUX] = mass;
  X[x + FLUX + 1] = 0.5 * (rl * ul * ul + pl + rr * ur * ur + pr) - fastest * (rr * ur - rl * ul);
  X[x + FLUX + 2] =
    0.5 * (ul * (energyL + pl) + ur * (energyR + pr)) - fastest * (energyR - energyL);
  X[x + FLUX + 3] = mass * (mass >= 0 ? X[x + LEFT + 4] : X[x + RIGHT + 4]);
  if (vapour) X[x + FLUX + 4] = mass * (mass >= 0 ? X[x + LEFT + 5] : X[x + RIGHT + 5]);
}

/** Internal energy at the faces of a cell, with its own cv. */
export function faceEnergies(x: I, vapour: boolean): void {
  const e0: V = X[x + E];
  const cvR: V = X[x + CV_R];
  const eB: V = X[x + E_BURNED];
  const b0: V = X[x + BURNED];
  const pv: V = X[x + P] * X[x + PER_RHO];
  const rightR: V = X[x + RIGHT - ROWS];
  const leftR: V = X[x + LEFT];
  const rightP: V = X[x + RIGHT - ROWS + 2];
  const leftP: V = X[x + LEFT + 2];
  const inverse: V = 1 / (rightR * leftR);
  const pvR: V = rightP * leftR * inverse;
  const pvL: V = leftP * rightR * inverse;
  let eR: V = e0 + (pvR - pv) * cvR + (X[x + RIGHT - ROWS + 4] - b0) * eB;
  let eL: V = e0 + (pvL - pv) * cvR + (X[x + LEFT + 4] - b0) * eB;
  if (vapour) {
    const f0: V = X[x + FUEL];
    eR = eR + (X[x + RIGHT - ROWS + 5] - f0) * X[x + E_FUEL];
    eL = eL + (X[x + LEFT + 5] - f0) * X[x + E_FUEL];
  }
  X[x + RIGHT - ROWS + 3] = eR;
  X[x + LEFT + 3] = eL;
}
