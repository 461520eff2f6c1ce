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

import { abs, all, type I, K, min, N, type R, sqrt, type V, X } from './lanes.ts';
import {
  BURNED,
  CP,
  CV_R,
  D_CELLS,
  D_K,
  D_TAPER,
  D_WALL,
  D_X,
  DIAMETER,
  DX,
  E,
  E_BURNED,
  E_FUEL,
  FACE_AREA,
  FUEL,
  GAMMA,
  HIGH_RATIO,
  LEFT,
  LOSS,
  LOW_RATIO,
  MEAN_AREA,
  MOMENTUM,
  P,
  PER_DIAMETER,
  PER_R,
  PER_RHO,
  PER_VOLUME,
  RHO,
  RIGHT,
  ROUGH_TERM,
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
import { fanning, HEAT_PER_FRICTION } from './wall.ts';

/** A face value below this share of its cell's is not trusted: the cell falls to first order. */
const LEAST_SHARE: R = 0.1;

/** Fills face states and wall sources of a duct for a step dt [s]. */
export function predict(duct: I, dt: V): void {
  const n: I = N[duct + D_CELLS];
  const s: I = n + 2;
  const x: I = N[duct + D_X];
  const k: I = N[duct + D_K];
  const taper: I = N[duct + D_TAPER];
  const rubs: boolean = N[duct + D_WALL] !== 0;
  const half: V = -0.5 * dt;
  const halfPerDx: V = half * K[k + DX * s + 1];
  for (let i: I = 0; i < n; i++) {
    // A face is half a cell away: its difference counts twice.
    const toLow: R = i === 0 ? 2 : 1;
    const toHigh: R = i === n - 1 ? 2 : 1;
    const bent: boolean = N[taper + i] !== 0;
    predictCell(x + i, k + i, s, half, halfPerDx, toLow, toHigh, bent, rubs);
  }
}

/** One cell: `half` is half a step, negative; `bent`: its area changes; `rubs`: its wall acts. */
function predictCell(
  x: I,
  k: I,
  s: I,
  half: V,
  halfPerDx: V,
  toLow: R,
  toHigh: R,
  bent: boolean,
  rubs: boolean,
): void {
  const perVolume: R = K[k + PER_VOLUME * s];

  const r0: V = X[x + RHO * s + 1];
  const u0: V = X[x + U * s + 1];
  const p0: V = X[x + P * s + 1];
  const b0: V = X[x + BURNED * s + 1];
  const f0: V = X[x + FUEL * s + 1];
  const gamma: V = X[x + GAMMA * s + 1];
  const perRho: V = X[x + PER_RHO * s + 1];
  const pv: V = p0 * perRho;

  // Neighbours, and the cell's own gas at its faces; where the area changes, by steady flow.
  let rl: V = X[x + RHO * s];
  let ul: V = X[x + U * s];
  let pl: V = X[x + P * s];
  let rh: V = X[x + RHO * s + 2];
  let uh: V = X[x + U * s + 2];
  let ph: V = X[x + P * s + 2];
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
    const aL: R = K[k + TO_LOW * s];
    const aR: R = K[k + TO_HIGH * s];
    steady = steadyShare(u0 * u0 * perC2);
    const low: R = K[k + LOW_RATIO * s];
    const riseLow: V = 0.5 * (1 - low * low) * steady * rl * ul * ul;
    const rlHere: V = rl + riseLow * perC2;
    ul = ul * (1 + steady * ((low * rl) / rlHere - 1));
    rl = rlHere;
    pl = pl + riseLow;
    const high: R = K[k + HIGH_RATIO * s];
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
    narrowing = K[k + MEAN_AREA * s] * (aR - aL);
  }

  const hr: V = 0.5 * limited(toLow * (r0 - rl), toHigh * (rh - r0));
  const hu: V = 0.5 * limited(toLow * (u0 - ul), toHigh * (uh - u0));
  const hp: V = 0.5 * limited(toLow * (p0 - pl), toHigh * (ph - p0));
  rL = rL - hr;
  rR = rR + hr;
  uL = uL - hu;
  uR = uR + hu;
  pL = pL - hp;
  pR = pR + hp;

  // The wall: drag and heat.
  const speed: V = abs(u0);
  let drag: V = 0;
  let toGas: V = 0;
  let wall: R = 0;
  if (rubs) {
    const friction: V = fanning(
      X[x + MOMENTUM * s + 1],
      X[x + T * s + 1],
      K[k + DIAMETER * s],
      K[k + ROUGH_TERM * s],
    );
    const rub: V = friction * K[k + PER_DIAMETER * s];
    drag = 2 * rub + 0.5 * K[k + LOSS * s];
    wall = K[k + WALL_TEMPERATURE * s];
    if (wall > 0) toGas = r0 * speed * rub * HEAT_PER_FRICTION * X[x + CP * s + 1];
  } else {
    const loss: R = K[k + LOSS * s];
    if (loss > 0) drag = 0 * u0 + 0.5 * loss;
  }

  // The rates above times half a step; `half` is negative.
  const qL: V = K[k + FACE_AREA * s] * uL;
  const qR: V = K[k + FACE_AREA * s + 1] * uR;
  const pull: V = drag * u0 * speed;
  const jump: V = pR - pL;
  const heat: V = toGas * (wall - X[x + T * s + 1]);
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
  const right: I = x + RIGHT * s;
  const left: I = x + LEFT * s + 1;
  X[right] = rightR;
  X[right + s] = rightU;
  X[right + 2 * s] = rightP;
  X[left] = leftR;
  X[left + s] = leftU;
  X[left + 2 * s] = leftP;

  const headM: V = 0.5 * steady * rM * uM * uM;
  X[x + TOTAL_PRESSURE * s + 1] = pM + headM;
  X[x + WALL_FORCE * s + 1] = headM * (perVolume * narrowing) - rM * drag * uM * abs(uM);
  // 1 / rho at half time from that of the cell, to second order.
  X[x + WALL_HEAT * s + 1] =
    toGas * (wall - pM * perRho * (2 - rM * perRho) * X[x + PER_R * s + 1]);

  // A fraction's slope is held back where density changes too, so that it keeps its bounds: halves of
  // the cell with the densities at its faces have the cell's mean fraction.
  const sb: V = limited(toLow * (b0 - X[x + BURNED * s]), toHigh * (X[x + BURNED * s + 2] - b0));
  const sf: V = limited(toLow * (f0 - X[x + FUEL * s]), toHigh * (X[x + FUEL * s + 2] - f0));
  const skew: V = 0.5 * (leftR - rightR) * perRho;
  const lean: V = abs(skew);
  const part: V = 0.5 * (1 - lean * (1 - lean * (1 - lean)));
  const advance: V = halfPerDx * u0;
  const onLow: V = part * (1 + skew) - advance;
  const onHigh: V = part * (1 - skew) + advance;
  const bR: V = b0 - onLow * sb;
  const bL: V = b0 + onHigh * sb;
  const fR: V = f0 - onLow * sf;
  const fL: V = f0 + onHigh * sf;
  X[right + 5 * s] = bR;
  X[right + 6 * s] = fR;
  X[left + 5 * s] = bL;
  X[left + 6 * s] = fL;

  // Internal energy and sound speed at the faces, with the cell's cv.
  const e0: V = X[x + E * s + 1];
  const cvR: V = X[x + CV_R * s + 1];
  const eB: V = X[x + E_BURNED * s + 1];
  const eF: V = X[x + E_FUEL * s + 1];
  const inverse: V = 1 / (rightR * leftR);
  const pvR: V = rightP * leftR * inverse;
  const pvL: V = leftP * rightR * inverse;
  X[right + 3 * s] = e0 + (pvR - pv) * cvR + (bR - b0) * eB + (fR - f0) * eF;
  X[left + 3 * s] = e0 + (pvL - pv) * cvR + (bL - b0) * eB + (fL - f0) * eF;
  X[right + 4 * s] = sqrt(gamma * pvR);
  X[left + 4 * s] = sqrt(gamma * pvL);
}
