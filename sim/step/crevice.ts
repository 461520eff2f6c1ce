/**
 * Crevices of a cylinder (top land, ring grooves, gasket, plug) and what leaks past its rings.
 *
 *   m_c = p V_c / (R Tw)                                     gas in crevices, at the wall's temperature
 *   m_l = C p sqrt(1 - ((r - b) / (1 - b))^2) / sqrt(R Tw),  r = p_crankcase / p not below b = 0.528
 *
 * What goes in is the cylinder's mean gas, at its enthalpy; what comes back or leaks is the crevice's
 * mixture, at the wall's temperature. Both leave heat at the wall. Nothing burns in a crevice; what comes
 * back unburned burns late (cylinder.ts), and what is still there when the exhaust opens never gives heat.
 * Nothing comes back from the crankcase.
 * Sources: Heywood (1988), sec. 8.6 and 9.2.2 (one crevice at cylinder pressure and wall temperature),
 * after Namazian & Heywood, SAE 820088, and Gatowski et al., SAE 841359 (from memory); the nozzle's
 * ellipse as in ISO 6358 (from memory). Woschni's law was fitted to all heat, so that part of what
 * crevices take is counted twice.
 */
import { caloric, gasE, gasEBurned, gasEFuel } from './gas.ts';
import { type B, type I, K, max, min, type R, sqrt, type V, X } from './lanes.ts';
import {
  C_BLOWN,
  C_CRANKCASE_P,
  C_CREVICE,
  C_HELD,
  C_LEAK,
  C_WALL,
  C_WALL_T,
  DT,
  G_BURNED,
  G_ENERGY,
  G_FUEL,
  G_MASS,
  Q_BURNED,
  Q_FUEL,
  Q_H,
  Q_P,
  Q_RT,
  R_AIR,
  R_BURNED,
  R_FUEL,
  V_T,
} from './layout.ts';

/** Pressure ratio below which a nozzle is choked. */
const CHOKED: R = 0.528;
/** No crevice holds as little as this [kg]. */
const NO_GAS: R = 1e-15;

/** What leaks past the rings in this step [kg]. */
function leaks(x: I, k: I, rt: V): V {
  const p: V = X[x + Q_P];
  const over: V = max(min(K[k + C_CRANKCASE_P] / p, 1) - CHOKED, 0) / (1 - CHOKED);
  return (K[k + C_LEAK] * p * sqrt(1 - over * over) * X[DT]) / sqrt(rt);
}

/** Moves gas between cylinder, crevice and crankcase; where `spent`, nothing there can burn any more. */
export function breatheCrevice(x: I, k: I, spent: B): void {
  const tw: R = K[k + C_WALL_T];
  const r: V = X[x + Q_RT] / X[x + V_T];
  const leak: V = leaks(x, k, r * tw);
  const held: V = X[x + C_HELD];
  const heldBurned: V = X[x + C_HELD + 1];
  const heldFuel: V = X[x + C_HELD + 2];
  const need: V = (K[k + C_CREVICE] * X[x + Q_P]) / r + leak - held;
  const into: V = max(need, 0);
  const back: V = max(-need, 0);

  const mass: V = held + into;
  const perMass: V = 1 / max(mass, NO_GAS);
  const burned: V = spent ? 1 : (heldBurned + into * X[x + Q_BURNED]) * perMass;
  const fuel: V = spent ? 0 : (heldFuel + into * X[x + Q_FUEL]) * perMass;
  const left: V = mass - leak - back;
  const leftBurned: V = left * burned;
  const leftFuel: V = left * fuel;

  caloric(0 * held + tw, 0 * held, 0 * held, true);
  const rw: V = K[R_AIR] + burned * K[R_BURNED] + fuel * K[R_FUEL];
  const h: V = gasE + burned * gasEBurned + fuel * gasEFuel + rw * tw;
  const flow: V = into * X[x + Q_H] - back * h;
  const gain: V =
    (left - held) * gasE +
    (leftBurned - heldBurned) * gasEBurned +
    (leftFuel - heldFuel) * gasEFuel;

  X[x + C_HELD] = left;
  X[x + C_HELD + 1] = leftBurned;
  X[x + C_HELD + 2] = leftFuel;
  X[x + C_BLOWN] += leak;
  X[x + C_BLOWN + 1] += leak * h;
  X[x + C_WALL] += flow - leak * h - gain;
  X[x + G_MASS] += back - into;
  X[x + G_ENERGY] += -flow;
  X[x + G_BURNED] += back * burned - into * X[x + Q_BURNED];
  X[x + G_FUEL] += back * fuel - into * X[x + Q_FUEL];
}
