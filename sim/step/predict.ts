/**
 * MUSCL-Hancock, first half: both face values of each cell from limited slopes, and their advance by
 * half a time step with
 *
 *   rho_t = -(rho u A)_x / A
 *   u_t   = -(u^2 / 2)_x - p_x / rho - k u |u|,            k = 2 f / D + K' / 2
 *   p_t   = -u p_x - gamma p (u A)_x / A + (gamma - 1) (rho k u^2 |u| + q)
 *   Y_t   = -u Y_x
 *
 * Where the area changes, slopes are taken about slow steady flow (taper.ts), and the wall pushes
 * with the pressure of steady flow along the cell, p + rho u^2/2 = const:
 *
 *   integral p dA = (p + rho u^2/2) (A_high - A_low) + rho (u A)^2/2 (1/A_high - 1/A_low).
 *
 * Beyond an end cell lies the state found at that end in the last step, half a cell away. Half a step
 * late, it puts the end cell's mean off by O(dx), but not what it gives to the boundary
 * (tests/order/ends.test.ts). Friction and heat at the wall: wall.ts.
 * Source: van Leer (1984), Toro (2009) sec. 14.4 (from memory); sources at half time, midpoint rule.
 */

import { faceEnergies } from './faces.ts';
import { abs, all, any, type I, K, min, N, type R, type V, X } from './lanes.ts';
import {
  BURNED,
  CP,
  D_CELLS,
  D_DX,
  D_K,
  D_SUMS,
  D_TAPER,
  D_THIN,
  D_VAPOUR,
  D_WALL,
  D_X,
  FACE_AREA,
  FUEL,
  GAMMA,
  HIGH_RATIO,
  K_ROWS,
  LEFT,
  LOSS,
  LOW_RATIO,
  MEAN_AREA,
  P,
  PER_R,
  PER_RHO,
  PER_VOLUME,
  RHO,
  RIGHT,
  ROWS,
  RUB,
  STIR,
  T,
  TO_HIGH,
  TO_LOW,
  TOTAL_PRESSURE,
  U,
  WALL_FORCE,
  WALL_HEAT,
  WALL_TEMPERATURE,
} from './layout.ts';
import { limited } from './limiter.ts';
import { steadyShare } from './taper.ts';
import { wallLaws } from './wall.ts';

/** A face value below this share of its cell's is not trusted: the cell falls to first order. */
const LEAST_SHARE: R = 0.1;

/** Fills face states and wall sources of a duct for a step dt [s]. */
export function predict(duct: I, dt: V): void {
  const n: I = N[duct + D_CELLS];
  const x: I = N[duct + D_X] + ROWS;
  const k: I = N[duct + D_K];
  const taper: I = N[duct + D_TAPER];
  const rubs: boolean = N[duct + D_WALL] !== 0;
  const half: V = -0.5 * dt;
  const halfPerDx: V = half * K[N[duct + D_DX] + 1];
  const vapour: boolean = any(X[N[duct + D_SUMS] + D_VAPOUR] > 0);
  const thin: boolean = N[duct + D_THIN] >= 0;
  if (rubs || thin) for (let i: I = 0; i < n; i++) wallLaws(x + i * ROWS, k + i * K_ROWS);
  for (let i: I = 0; i < n; i++) {
    const bent: boolean = N[taper + i] !== 0;
    predictCell(
      x + i * ROWS,
      k + i * K_ROWS,
      half,
      halfPerDx,
      i === 0,
      i === n - 1,
      bent,
      rubs,
      vapour,
    );
  }
  for (let i: I = 0; i < n; i++) faceEnergies(x + i * ROWS, vapour);
}

/**
 * One cell: `half` is half a step, negative; `first`, `last`: of its duct; `bent`: its area changes;
 * `rubs`: its wall acts; `vapour`: there is some.
 */
function predictCell(
  x: I,
  k: I,
  half: V,
  halfPerDx: V,
  first: boolean,
  last: boolean,
  bent: boolean,
  rubs: boolean,
  vapour: boolean,
): void {
  const perVolume: R = K[k + PER_VOLUME];

  const r0: V = X[x + RHO];
  const u0: V = X[x + U];
  const p0: V = X[x + P];
  const gamma: V = X[x + GAMMA];
  const perRho: V = X[x + PER_RHO];
  const pv: V = p0 * perRho;

  // Neighbours, and the cell's own gas at its faces; where the area changes, by steady flow.
  let rl: V = X[x + RHO - ROWS];
  let ul: V = X[x + U - ROWS];
  let pl: V = X[x + P - ROWS];
  let rh: V = X[x + RHO + ROWS];
  let uh: V = X[x + U + ROWS];
  let ph: V = X[x + P + ROWS];
  let rL: V = r0;
  let uL: V = u0;
  let pL: V = p0;
  let rR: V = r0;
  let uR: V = u0;
  let pR: V = p0;
  let steady: V = 0;
  let narrowing: R = 0;
  if (bent) {
    const perC2: V = 1 / (gamma * pv);
    const aL: R = K[k + TO_LOW];
    const aR: R = K[k + TO_HIGH];
    steady = steadyShare(u0 * u0 * perC2);
    const low: R = K[k + LOW_RATIO];
    const riseLow: V = 0.5 * (1 - low * low) * steady * rl * ul * ul;
    const rlHere: V = rl + riseLow * perC2;
    ul = ul * (1 + steady * ((low * rl) / rlHere - 1));
    rl = rlHere;
    pl = pl + riseLow;
    const high: R = K[k + HIGH_RATIO];
    const riseHigh: V = 0.5 * (1 - high * high) * steady * rh * uh * uh;
    const rhHere: V = rh + riseHigh * perC2;
    uh = uh * (1 + steady * ((high * rh) / rhHere - 1));
    rh = rhHere;
    ph = ph + riseHigh;
    const head: V = 0.5 * steady * r0 * u0 * u0;
    const riseL: V = head * (1 - aL * aL);
    const riseR: V = head * (1 - aR * aR);
    rL = r0 + riseL * perC2;
    rR = r0 + riseR * perC2;
    uL = u0 * (1 + steady * ((aL * r0) / rL - 1));
    uR = u0 * (1 + steady * ((aR * r0) / rR - 1));
    pL = p0 + riseL;
    pR = p0 + riseR;
    narrowing = K[k + MEAN_AREA] * (aR - aL);
  }

  // Beyond an end is a face, half a cell away: what lies a whole cell away is twice as far off.
  if (first) {
    rl = 2 * rl - r0;
    ul = 2 * ul - u0;
    pl = 2 * pl - p0;
  }
  if (last) {
    rh = 2 * rh - r0;
    uh = 2 * uh - u0;
    ph = 2 * ph - p0;
  }
  const hr: V = 0.5 * limited(r0 - rl, rh - r0);
  const hu: V = 0.5 * limited(u0 - ul, uh - u0);
  const hp: V = 0.5 * limited(p0 - pl, ph - p0);
  rL = rL - hr;
  rR = rR + hr;
  uL = uL - hu;
  uR = uR + hu;
  pL = pL - hp;
  pR = pR + hp;

  // The wall: drag and heat.
  const speed: V = abs(u0);
  let drag: V = 0;
  let stir: V = 0;
  let wall: R = 0;
  if (rubs) {
    const rub: V = X[x + RUB];
    drag = 2 * rub + 0.5 * K[k + LOSS];
    wall = K[k + WALL_TEMPERATURE];
    if (wall > 0) stir = X[x + STIR] * X[x + CP];
  } else {
    const loss: R = K[k + LOSS];
    if (loss > 0) drag = 0 * u0 + 0.5 * loss;
  }

  // The rates above times half a step; `half` is negative.
  const qL: V = K[k + FACE_AREA] * uL;
  const qR: V = K[k + FACE_AREA + K_ROWS] * uR;
  const pull: V = drag * u0 * speed;
  const jump: V = pR - pL;
  const heat: V = r0 * speed * stir * (wall - X[x + T]);
  const dr: V = half * perVolume * (rR * qR - rL * qL);
  const du: V = half * pull + halfPerDx * (0.5 * (uR * uR - uL * uL) + jump * perRho);
  const dp: V =
    halfPerDx * u0 * jump +
    half * (perVolume * gamma * p0 * (qR - qL) - (gamma - 1) * (r0 * pull * u0 + heat));

  let rM: V = r0 + dr;
  let uM: V = u0 + du;
  let pM: V = p0 + dp;
  let rightR: V = rL + dr;
  let rightU: V = uL + du;
  let rightP: V = pL + dp;
  let leftR: V = rR + dr;
  let leftU: V = uR + du;
  let leftP: V = pR + dp;
  const leastR: V = LEAST_SHARE * r0 - min(dr, 0);
  const leastP: V = LEAST_SHARE * p0 - min(dp, 0);
  const lowest: V = min(min(min(rL, rR), r0) - leastR, min(min(pL, pR), p0) - leastP);
  if (!all(lowest > 0)) {
    rM = lowest > 0 ? rM : r0;
    uM = lowest > 0 ? uM : u0;
    pM = lowest > 0 ? pM : p0;
    rightR = lowest > 0 ? rightR : r0;
    rightU = lowest > 0 ? rightU : u0;
    rightP = lowest > 0 ? rightP : p0;
    leftR = lowest > 0 ? leftR : r0;
    leftU = lowest > 0 ? leftU : u0;
    leftP = lowest > 0 ? leftP : p0;
  }
  X[x + RIGHT - ROWS] = rightR;
  X[x + RIGHT - ROWS + 1] = rightU;
  X[x + RIGHT - ROWS + 2] = rightP;
  X[x + LEFT] = leftR;
  X[x + LEFT + 1] = leftU;
  X[x + LEFT + 2] = leftP;

  let total: V = pM;
  const flow: V = rM * abs(uM);
  let force: V = -flow * drag * uM;
  if (bent) {
    const head: V = 0.5 * steady * rM * uM * uM;
    total = total + head;
    force = force + head * (perVolume * narrowing);
  }
  X[x + TOTAL_PRESSURE] = total;
  X[x + WALL_FORCE] = force;
  // 1 / rho at half time from that of the cell, to second order.
  X[x + WALL_HEAT] = flow * stir * (wall - pM * perRho * (2 - rM * perRho) * X[x + PER_R]);

  fractions(x, 0.5 * (leftR - rightR) * perRho, halfPerDx * u0, first, last, vapour);
}

/**
 * Burned gas and vapour at a cell's faces. A fraction's slope is held back where density changes too, by
 * half its rise over the cell and its own, `skew`, so that it keeps its bounds: halves of the cell with
 * the densities at its faces have the cell's mean fraction. `advance`: -u dt / 2 dx.
 */
function fractions(
  x: I,
  skew: V,
  advance: V,
  first: boolean,
  last: boolean,
  vapour: boolean,
): void {
  const b0: V = X[x + BURNED];
  let bl: V = X[x + BURNED - ROWS];
  let bh: V = X[x + BURNED + ROWS];
  if (first) bl = 2 * bl - b0;
  if (last) bh = 2 * bh - b0;
  const sb: V = limited(b0 - bl, bh - b0);
  const lean: V = abs(skew);
  const part: V = 0.5 * (1 - lean * (1 - lean * (1 - lean)));
  const onLow: V = part * (1 + skew) - advance;
  const onHigh: V = part * (1 - skew) + advance;
  X[x + RIGHT - ROWS + 4] = b0 - onLow * sb;
  X[x + LEFT + 4] = b0 + onHigh * sb;
  if (vapour) {
    const f0: V = X[x + FUEL];
    const toLow: R = first ? 2 : 1;
    const toHigh: R = last ? 2 : 1;
    const sf: V = limited(toLow * (f0 - X[x + FUEL - ROWS]), toHigh * (X[x + FUEL + ROWS] - f0));
    X[x + RIGHT - ROWS + 5] = f0 - onLow * sf;
    X[x + LEFT + 5] = f0 + onHigh * sf;
  }
}
