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
import { abs, any, type I, K, max, N, type R, sqrt, type V, X } from './lanes.ts';
import {
  BURNED,
  C,
  CP,
  CV_R,
  D_CELLS,
  D_FASTEST,
  D_HEAT,
  D_K,
  D_SUMS,
  D_THIN,
  D_VAPOUR,
  D_X,
  E,
  E_BURNED,
  E_FUEL,
  ENERGY,
  FACE_AREA,
  FLUX,
  FUEL,
  GAMMA,
  K_ROWS,
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
  ROWS,
  RUB,
  T,
  TOTAL_PRESSURE,
  U,
  VOLUME,
  WALL_FORCE,
  WALL_HEAT,
  WALL_TEMPERATURE,
} from './layout.ts';

/** Advances the cells of a duct by dt [s]. */
export function update(duct: I, dt: V): void {
  const n: I = N[duct + D_CELLS];
  const sums: I = N[duct + D_SUMS];
  const vapour: boolean = any(X[sums + D_VAPOUR] > 0);
  const thin: I = N[duct + D_THIN];
  let heat: V = 0;
  let fastest: V = 0;
  let spoilt: V = 0; // not a number as soon as one speed is
  for (let i: I = 0; i < n; i++) {
    const x: I = N[duct + D_X] + (i + 1) * ROWS;
    const k: I = N[duct + D_K] + i * K_ROWS;
    const perVolume: R = K[k + PER_VOLUME];
    const step: V = dt * perVolume;
    const aL: V = K[k + FACE_AREA] * step;
    const aR: V = K[k + FACE_AREA + K_ROWS] * step;
    const p: V = X[x + TOTAL_PRESSURE];
    const warmth: V = dt * X[x + WALL_HEAT];
    X[x + RHO] += aL * X[x + FLUX - ROWS] - aR * X[x + FLUX];
    X[x + MOMENTUM] +=
      aL * (X[x + FLUX - ROWS + 1] - p) - aR * (X[x + FLUX + 1] - p) + dt * X[x + WALL_FORCE];
    X[x + ENERGY] += aL * X[x + FLUX - ROWS + 2] - aR * X[x + FLUX + 2] + warmth;
    X[x + RHO_BURNED] += aL * X[x + FLUX - ROWS + 3] - aR * X[x + FLUX + 3];
    if (vapour) X[x + RHO_FUEL] += aL * X[x + FLUX - ROWS + 4] - aR * X[x + FLUX + 4];
    if (thin >= 0) heat = heat + rubThin(x, thin, K[k + WALL_TEMPERATURE], dt) * K[k + VOLUME];
    heat = heat + warmth * K[k + VOLUME];
    refreshCell(x, vapour);
    fastest = max(fastest, cellFastest);
    spoilt = spoilt + 0 * cellFastest;
  }
  X[sums + D_HEAT] += heat;
  X[sums + D_FASTEST] = fastest + spoilt;
}

/**
 * The wall of a thin line: laminar drag and warming by constant rates, which hold at one frequency
 * (engine/thinLine.ts), or turbulent drag where that is more. Taken at the end of the step, so that no rate is
 * too quick for it. Returns the heat taken in [J/m3].
 */
function rubThin(x: I, thin: I, wall: R, dt: V): V {
  const turbulent: V = 2 * X[x + RUB] * abs(X[x + U]) * K[thin + 2];
  X[x + MOMENTUM] = X[x + MOMENTUM] / (1 + dt * max(turbulent, K[thin]));
  const warming: V = dt * K[thin + 1];
  const perVolume: V = (X[x + RHO] * X[x + CP]) / X[x + GAMMA];
  const warmth: V = (warming / (1 + warming)) * perVolume * (wall - X[x + T]);
  X[x + ENERGY] += warmth;
  return warmth;
}

/** |u| + c of the cell last refreshed [m/s]. */
let cellFastest: V = 0;

/** What follows from the conserved quantities of the cell at x. */
export function refreshCell(x: I, vapour: boolean): void {
  const rho: V = X[x + RHO];
  const perRho: V = 1 / rho;
  const u: V = X[x + MOMENTUM] * perRho;
  const e: V = X[x + ENERGY] * perRho - 0.5 * u * u;
  const burned: V = X[x + RHO_BURNED] * perRho;
  let fuel: V = 0;
  if (vapour) fuel = X[x + RHO_FUEL] * perRho;
  const guess: V = X[x + T];
  caloric(guess, burned, fuel, vapour);
  const r: V = gasConstant(burned, fuel);
  const inverse: V = 1 / (gasCv * r);
  const perCv: V = inverse * r;
  const perR: V = inverse * gasCv;
  const cvR: V = gasCv * perR;
  const temperature: V = guess + (e - gasE) * perCv;
  const gamma: V = 1 + r * perCv;
  const rt: V = r * temperature;
  X[x + PER_RHO] = perRho;
  X[x + U] = u;
  X[x + E] = e;
  X[x + BURNED] = burned;
  X[x + FUEL] = fuel;
  X[x + T] = temperature;
  X[x + GAMMA] = gamma;
  X[x + P] = rho * rt;
  X[x + PER_R] = perR;
  X[x + CV_R] = cvR;
  X[x + CP] = gasCv + r;
  // Taken at the guess: its error is of second order in what T changes in a step.
  X[x + E_BURNED] = gasEBurned - cvR * temperature * K[R_BURNED];
  if (vapour) X[x + E_FUEL] = gasEFuel - cvR * temperature * K[R_FUEL];
  const c: V = sqrt(gamma * rt);
  X[x + C] = c;
  cellFastest = abs(u) + c;
}
