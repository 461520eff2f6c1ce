/**
 * A volume of uniform gas with ducts open to it:
 *
 *   dm/dt = sum m_in,   d(m e)/dt = sum E_in,   p V = m R T.
 *
 * Boundaries see its state half a step ahead, by the last step's rates. Source: the first law for an
 * open system.
 */

import { caloric, gasConstant, gasCv, gasE } from './gas.ts';
import { type I, max, sqrt, type V, X } from './lanes.ts';
import {
  G_MASS,
  G_OPENING,
  Q_BURNED,
  Q_FUEL,
  Q_GAMMA,
  Q_H,
  Q_P,
  Q_RT,
  V_BURNED,
  V_ENERGY,
  V_FUEL,
  V_MASS,
  V_OPEN,
  V_RATE,
  V_SIZE,
  V_T,
} from './layout.ts';

/** Sets the visible state from the contents `ahead` [s] of now. */
export function showVolume(x: I, ahead: V): void {
  const mass: V = X[x + V_MASS] + ahead * X[x + V_RATE];
  const perMass: V = 1 / mass;
  const burned: V = (X[x + V_BURNED] + ahead * X[x + V_RATE + 2]) * perMass;
  const fuel: V = (X[x + V_FUEL] + ahead * X[x + V_RATE + 3]) * perMass;
  const e: V = (X[x + V_ENERGY] + ahead * X[x + V_RATE + 1]) * perMass;
  let t: V = X[x + V_T];
  for (let i: I = 0; i < 2; i++) {
    caloric(t, burned, fuel, true);
    t = t + (e - gasE) / gasCv;
  }
  caloric(t, burned, fuel, true);
  const r: V = gasConstant(burned, fuel);
  X[x + V_T] = t;
  X[x + Q_BURNED] = burned;
  X[x + Q_FUEL] = fuel;
  X[x + Q_RT] = r * t;
  X[x + Q_GAMMA] = 1 + r / gasCv;
  X[x + Q_P] = (mass * r * t) / X[x + V_SIZE];
  X[x + Q_H] = e + r * t;
}

/** Takes in what this step has brought. */
export function advanceVolume(x: I, dt: V): void {
  const perDt: V = 1 / dt;
  for (let k: I = 0; k < 4; k++) {
    const gain: V = X[x + G_MASS + k];
    X[x + V_MASS + k] += gain;
    X[x + V_RATE + k] = gain * perDt;
    X[x + G_MASS + k] = 0 * gain;
  }
  X[x + V_OPEN] = X[x + G_OPENING];
  X[x + G_OPENING] = 0 * perDt;
}

/** Longest stable step at Courant number 1 [s]; endless while no duct is open to it. */
export function volumeStep(x: I): V {
  const c: V = sqrt(X[x + Q_GAMMA] * X[x + Q_RT]);
  return X[x + V_SIZE] / (c * max(X[x + V_OPEN], 1e-12));
}
