/**
 * A hole in the side of a duct: what stands before it sees the cell that it opens into as gas at the cell's
 * own static pressure, half a step ahead, and what crosses is that cell's.
 *
 *   out of the duct:  d(m, E, m Yb, m Yf) = flow of them,  d(m u) = u dm       gas leaves with the velocity it has
 *   into the duct:    the same without d(m u)                                  it comes in at right angles
 *
 * Stagnation state with the cell's cp: R T0 = p / rho + (gamma - 1) / gamma u^2/2,  h0 = e + p / rho + u^2/2.
 * The cell stands out from its neighbours by what flows into it, which the branch feels as a resistance of
 * rho c / (4 S), S of the duct (tests/exact/sideBranch.test.ts): two thousandths of what a 4 mm hose on 42 mm
 * feels by itself. A branch as wide as its duct is joined at a cut, by junction.ts. Source: balance of an open
 * cell.
 */
import { type I, K, max, min, N, type R, type V, X } from './lanes.ts';
import {
  D_VAPOUR,
  ENERGY,
  G_BURNED,
  G_ENERGY,
  G_FUEL,
  G_MASS,
  G_OPENING,
  GAMMA,
  LEFT,
  MOMENTUM,
  Q_BURNED,
  Q_FUEL,
  Q_GAMMA,
  Q_H,
  Q_P,
  Q_RT,
  RHO,
  RHO_BURNED,
  RHO_FUEL,
  RIGHT,
  ROWS,
  TAP_CELL,
  TAP_K,
  TAP_SUMS,
  TAP_X,
  U,
} from './layout.ts';

/** Sets what is seen through the hole from the prediction: the mean of the cell's two ends. */
export function showTapping(tap: I): void {
  const q: I = N[tap + TAP_X];
  const x: I = N[tap + TAP_CELL];
  const low: I = x - ROWS + RIGHT;
  const high: I = x + LEFT;
  const p: V = 0.5 * (X[low + 2] + X[high + 2]);
  const pv: V = (2 * p) / (X[low] + X[high]);
  const u: V = 0.5 * (X[low + 1] + X[high + 1]);
  const head: V = 0.5 * u * u;
  const gamma: V = X[x + GAMMA];
  X[q + Q_P] = p;
  X[q + Q_GAMMA] = gamma;
  X[q + Q_RT] = pv + ((gamma - 1) / gamma) * head;
  X[q + Q_H] = 0.5 * (X[low + 3] + X[high + 3]) + pv + head;
  X[q + Q_BURNED] = 0.5 * (X[low + 4] + X[high + 4]);
  X[q + Q_FUEL] = 0.5 * (X[low + 5] + X[high + 5]);
}

/** Gives the cell what came through the hole, before the duct is updated. */
export function pourTapping(tap: I): void {
  const q: I = N[tap + TAP_X];
  const x: I = N[tap + TAP_CELL];
  const perVolume: R = K[N[tap + TAP_K]];
  const mass: V = X[q + G_MASS] * perVolume;
  X[x + RHO] += mass;
  X[x + MOMENTUM] += min(mass, 0) * X[x + U];
  X[x + ENERGY] += X[q + G_ENERGY] * perVolume;
  X[x + RHO_BURNED] += X[q + G_BURNED] * perVolume;
  const fuel: V = X[q + G_FUEL] * perVolume;
  X[x + RHO_FUEL] += fuel;
  const vapour: I = N[tap + TAP_SUMS] + D_VAPOUR;
  X[vapour] = max(X[vapour], fuel);
  for (let k: I = 0; k < 4; k++) X[q + G_MASS + k] = 0 * mass;
  X[q + G_OPENING] = 0 * mass;
}
