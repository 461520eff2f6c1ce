/**
 * The Rusanov (local Lax-Friedrichs) flux: the mean of both Euler fluxes less half the fastest wave
 * times the jump. Very diffusive, very robust. Source: Toro (2009), sec. 10.5.1, eq. 10.55 (from
 * memory).
 */
import type { NumericalFlux } from './numericalFlux.ts';

export const fluxRusanov: NumericalFlux = (left, right, from, to, flux) => {
  for (let i = from; i < to; i++) {
    const rhoL = left.rho[i]!;
    const uL = left.u[i]!;
    const pL = left.p[i]!;
    const energyL = rhoL * (left.e[i]! + 0.5 * uL * uL);
    const rhoR = right.rho[i]!;
    const uR = right.u[i]!;
    const pR = right.p[i]!;
    const energyR = rhoR * (right.e[i]! + 0.5 * uR * uR);
    const speed = Math.max(Math.abs(uL) + left.c[i]!, Math.abs(uR) + right.c[i]!);
    const half = (a: number, b: number, jump: number) => 0.5 * (a + b - speed * jump);

    flux.mass[i] = half(rhoL * uL, rhoR * uR, rhoR - rhoL);
    flux.momentum[i] = half(rhoL * uL * uL + pL, rhoR * uR * uR + pR, rhoR * uR - rhoL * uL);
    flux.energy[i] = half(uL * (energyL + pL), uR * (energyR + pR), energyR - energyL);
    const bL = left.burned[i]!;
    const bR = right.burned[i]!;
    flux.burned[i] = half(rhoL * uL * bL, rhoR * uR * bR, rhoR * bR - rhoL * bL);
    const fL = left.fuel[i]!;
    const fR = right.fuel[i]!;
    flux.fuel[i] = half(rhoL * uL * fL, rhoR * uR * fR, rhoR * fR - rhoL * fL);
  }
};
