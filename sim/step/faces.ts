/**
 * The fluxes through the inner faces of a duct. HLLC (Harten, Lax, van Leer, Contact): two acoustic
 * waves and the contact between them,
 *
 *   S* = (pR - pL + rhoL uL (SL - uL) - rhoR uR (SR - uR)) / (rhoL (SL - uL) - rhoR (SR - uR))
 *   p* = pK + rhoK (SK - uK) (S* - uK),   rho* = rhoK (SK - uK) / (SK - S*)
 *
 * with SL = min(uL - cL, uR - cR), SR = max(uL + cL, uR + cR). The star flux is written with p* itself,
 * so that gas at rest at one pressure gives exactly that pressure and no mass flux. Rusanov's flux,
 * for comparison: the mean of both sides less the largest wave speed times half the jump.
 * Source: Toro (2009), Riemann Solvers and Numerical Methods for Fluid Dynamics, sec. 10.3-10.6; wave
 * speeds of Davis, eq. 10.48 (from memory).
 */

import { abs, type B, type I, max, min, N, type V, X } from './lanes.ts';
import { D_CELLS, D_X, FLUX, LEFT, RIGHT, ROUGH_FLUX } from './layout.ts';

/** Fills the fluxes of the inner faces. */
export function fluxes(duct: I): void {
  const n: I = N[duct + D_CELLS];
  const s: I = n + 2;
  const x: I = N[duct + D_X];
  if (N[ROUGH_FLUX] === 0) {
    for (let i: I = 1; i < n; i++)
      fluxHllc(x + i + LEFT * s, x + i + RIGHT * s, x + i + FLUX * s, s);
  } else {
    for (let i: I = 1; i < n; i++)
      fluxRusanov(x + i + LEFT * s, x + i + RIGHT * s, x + i + FLUX * s, s);
  }
}

/** The flux between the states at `l` and `r`, into `f`; `s` from row to row. */
export function fluxHllc(l: I, r: I, f: I, s: I): void {
  const rl: V = X[l];
  const ul: V = X[l + s];
  const pl: V = X[l + 2 * s];
  const cl: V = X[l + 4 * s];
  const rr: V = X[r];
  const ur: V = X[r + s];
  const pr: V = X[r + 2 * s];
  const cr: V = X[r + 4 * s];
  const sl: V = min(ul - cl, ur - cr);
  const sr: V = max(ul + cl, ur + cr);
  const ml: V = rl * (sl - ul);
  const mr: V = rr * (sr - ur);
  const star: V = (pr - pl + ul * ml - ur * mr) / (ml - mr);
  const left: B = star >= 0;
  const rho: V = left ? rl : rr;
  const u: V = left ? ul : ur;
  const p: V = left ? pl : pr;
  const e: V = left ? X[l + 3 * s] : X[r + 3 * s];
  const wave: V = left ? sl : sr;
  const outrun: V = left ? sl : -sr;
  const energy: V = rho * (e + 0.5 * u * u);
  const su: V = wave - u;
  const perGap: V = 1 / (wave - star);
  const pStar: V = p + rho * su * (star - u);
  const mass: V = outrun >= 0 ? rho * u : rho * su * perGap * star;
  X[f] = mass;
  X[f + s] = outrun >= 0 ? mass * u + p : mass * star + pStar;
  X[f + 2 * s] =
    outrun >= 0 ? u * (energy + p) : star * ((su * energy - p * u + pStar * star) * perGap + pStar);
  X[f + 3 * s] = mass * (left ? X[l + 5 * s] : X[r + 5 * s]);
  X[f + 4 * s] = mass * (left ? X[l + 6 * s] : X[r + 6 * s]);
}

export function fluxRusanov(l: I, r: I, f: I, s: I): void {
  const rl: V = X[l];
  const ul: V = X[l + s];
  const pl: V = X[l + 2 * s];
  const rr: V = X[r];
  const ur: V = X[r + s];
  const pr: V = X[r + 2 * s];
  const fastest: V = 0.5 * max(abs(ul) + X[l + 4 * s], abs(ur) + X[r + 4 * s]);
  const energyL: V = rl * (X[l + 3 * s] + 0.5 * ul * ul);
  const energyR: V = rr * (X[r + 3 * s] + 0.5 * ur * ur);
  const mass: V = 0.5 * (rl * ul + rr * ur) - fastest * (rr - rl);
  X[f] = mass;
  X[f + s] = 0.5 * (rl * ul * ul + pl + rr * ur * ur + pr) - fastest * (rr * ur - rl * ul);
  X[f + 2 * s] = 0.5 * (ul * (energyL + pl) + ur * (energyR + pr)) - fastest * (energyR - energyL);
  X[f + 3 * s] = mass * (mass >= 0 ? X[l + 5 * s] : X[r + 5 * s]);
  X[f + 4 * s] = mass * (mass >= 0 ? X[l + 6 * s] : X[r + 6 * s]);
}
