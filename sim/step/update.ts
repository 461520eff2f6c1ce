/**
 * MUSCL-Hancock, second half: the conservative update of a duct with the fluxes at its faces,
 *
 *   V dU/dt = A_left F_left - A_right F_right + V S
 *
 * The push of the side wall, p dA, is folded into the momentum fluxes face by face with the cell's
 * total pressure P, A_left (F_left - P) - A_right (F_right - P), the rest of it being in S
 * (predict.ts, where the source is named); so gas at rest in any taper stays at rest to the last bit.
 *
 * Temperature follows internal energy by one Newton step a time step, T += (e - e(T)) / cv(T): energy
 * is conserved to the last bit, and T is behind by what it changed in the step, squared.
 */

import { caloric, gasConstant, gasCv, gasE, gasEBurned, gasEFuel } from './gas.ts';
import { abs, type I, K, max, N, type R, sqrt, type V, X } from './lanes.ts';
import {
  BURNED,
  CP,
  CV_R,
  D_CELLS,
  D_FASTEST,
  D_HEAT,
  D_K,
  D_SUMS,
  D_X,
  E,
  E_BURNED,
  E_FUEL,
  ENERGY,
  FACE_AREA,
  FLUX,
  FUEL,
  GAMMA,
  MOMENTUM,
  P,
  PER_R,
  PER_RHO,
  PER_VOLUME,
  R_BURNED,
  R_FUEL,
  RHO,
  RHO_BURNED,
  RHO_FUEL,
  T,
  TOTAL_PRESSURE,
  U,
  VOLUME,
  WALL_FORCE,
  WALL_HEAT,
} from './layout.ts';

/** Advances the cells of a duct by dt [s]. */
export function update(duct: I, dt: V): void {
  const n: I = N[duct + D_CELLS];
  const s: I = n + 2;
  const k: I = N[duct + D_K];
  const sums: I = N[duct + D_SUMS];
  let heat: V = 0;
  let fastest: V = 0;
  let spoilt: V = 0; // not a number as soon as one speed is
  for (let i: I = 0; i < n; i++) {
    const x: I = N[duct + D_X] + i;
    const perVolume: R = K[k + i + PER_VOLUME * s];
    const step: V = dt * perVolume;
    const aL: V = K[k + i + FACE_AREA * s] * step;
    const aR: V = K[k + i + FACE_AREA * s + 1] * step;
    const f: I = x + FLUX * s;
    const p: V = X[x + TOTAL_PRESSURE * s + 1];
    const warmth: V = dt * X[x + WALL_HEAT * s + 1];
    X[x + RHO * s + 1] += aL * X[f] - aR * X[f + 1];
    X[x + MOMENTUM * s + 1] +=
      aL * (X[f + s] - p) - aR * (X[f + s + 1] - p) + dt * X[x + WALL_FORCE * s + 1];
    X[x + ENERGY * s + 1] += aL * X[f + 2 * s] - aR * X[f + 2 * s + 1] + warmth;
    X[x + RHO_BURNED * s + 1] += aL * X[f + 3 * s] - aR * X[f + 3 * s + 1];
    X[x + RHO_FUEL * s + 1] += aL * X[f + 4 * s] - aR * X[f + 4 * s + 1];
    heat = heat + warmth * K[k + i + VOLUME * s];
    refreshCell(x, s);
    fastest = max(fastest, cellFastest);
    spoilt = spoilt + 0 * cellFastest;
  }
  X[sums + D_HEAT] += heat;
  X[sums + D_FASTEST] = fastest + spoilt;
}

/** |u| + c of the cell last refreshed [m/s]. */
let cellFastest: V = 0;

/** What follows from the conserved quantities of the cell at x. */
export function refreshCell(x: I, s: I): void {
  const rho: V = X[x + RHO * s + 1];
  const perRho: V = 1 / rho;
  const u: V = X[x + MOMENTUM * s + 1] * perRho;
  const e: V = X[x + ENERGY * s + 1] * perRho - 0.5 * u * u;
  const burned: V = X[x + RHO_BURNED * s + 1] * perRho;
  const fuel: V = X[x + RHO_FUEL * s + 1] * perRho;
  const guess: V = X[x + T * s + 1];
  caloric(guess, burned, fuel);
  const r: V = gasConstant(burned, fuel);
  const inverse: V = 1 / (gasCv * r);
  const perCv: V = inverse * r;
  const perR: V = inverse * gasCv;
  const cvR: V = gasCv * perR;
  const temperature: V = guess + (e - gasE) * perCv;
  const gamma: V = 1 + r * perCv;
  const rt: V = r * temperature;
  X[x + PER_RHO * s + 1] = perRho;
  X[x + U * s + 1] = u;
  X[x + E * s + 1] = e;
  X[x + BURNED * s + 1] = burned;
  X[x + FUEL * s + 1] = fuel;
  X[x + T * s + 1] = temperature;
  X[x + GAMMA * s + 1] = gamma;
  X[x + P * s + 1] = rho * rt;
  X[x + PER_R * s + 1] = perR;
  X[x + CV_R * s + 1] = cvR;
  X[x + CP * s + 1] = gasCv + r;
  // Taken at the guess: its error is of second order in what T changes in a step.
  X[x + E_BURNED * s + 1] = gasEBurned - cvR * temperature * K[R_BURNED];
  X[x + E_FUEL * s + 1] = gasEFuel - cvR * temperature * K[R_FUEL];
  cellFastest = abs(u) + sqrt(gamma * rt);
}
