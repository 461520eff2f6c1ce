/**
 * Flow between a duct end and a reservoir through a throat of given effective area: the one model
 * behind open ends, valves and pipes into volumes.
 *
 * Out of the duct: the gas accelerates from the end's own stagnation state to the reservoir's
 * pressure in the throat (or to the choked pressure); continuity between end and throat.
 * Into the duct: the gas accelerates from the reservoir to the throat, whose pressure is that of
 * the duct's end (constant-pressure model: no recovery behind the throat), or chokes; then
 *
 *   A rho v = m,   h(T) + v^2/2 = h(T_reservoir).
 *
 * Both are closed by the wave that runs into the duct (outgoingWave.ts). Energy carried is exact
 * (reservoir enthalpy in, total enthalpy of the end out); gamma is frozen within the throat.
 * Source: Benson (1982), The Thermodynamics and Gas Dynamics of Internal-Combustion Engines, vol. 1,
 * ch. 4 (from memory).
 */
import type { Gas } from '../gas/gas.ts';
import type { End } from './ductEnd.ts';
import { nozzleFlux } from './nozzle.ts';
import { densityBehind, sonicPressure, stagnantPressure, velocityBehind } from './outgoingWave.ts';
import type { Reservoir } from './reservoir.ts';
import { findRoot } from './rootSearch.ts';

/** A throat this close to the duct's own area counts as no throat. */
const FULL_BORE = 1 - 1e-9;
/** A throat below this share of the duct's area counts as shut. */
const SHUT = 1e-9;

/**
 * Solves the end and writes it. `areaIn` is the throat's effective area [m^2] for flow into the
 * duct, `areaOut` for flow out of it; both are held to the duct's own.
 */
export function exchange(
  end: End,
  reservoir: Reservoir,
  areaIn: number,
  areaOut: number,
  gas: Gas,
): void {
  const rest = stagnantPressure(end.arriving);
  if (reservoir.pressure === rest) shut(end, rest);
  else if (reservoir.pressure < rest) flowOut(end, reservoir.pressure, areaOut, rest, gas);
  else flowIn(end, reservoir, areaIn, rest);
}

/** A shut end: the arriving gas comes to rest. */
export function shut(end: End, rest = stagnantPressure(end.arriving)): void {
  const { burned, fuel } = end.arriving;
  end.write(densityBehind(end.arriving, rest), 0, rest, burned, fuel, 0);
}

function flowOut(end: End, outside: number, area: number, rest: number, gas: Gas): void {
  const a = end.arriving;
  const share = area / end.area;
  if (share < SHUT) {
    shut(end, rest);
    return;
  }
  if (a.v >= a.c) {
    // Faster than sound: nothing outside is felt.
    writeOut(end, a.p, gas);
    return;
  }
  const lowest = Math.max(outside, sonicPressure(a));
  if (share >= FULL_BORE) {
    writeOut(end, lowest, gas);
    return;
  }
  const gamma = a.gamma;
  const g = (gamma - 1) / (2 * gamma);
  const surplus = (p: number): number => {
    const v = velocityBehind(a, p);
    if (v <= 0) return -nozzleFlux(p, p / (densityBehind(a, p) * a.R), a.R, gamma, outside);
    const rho = densityBehind(a, p);
    const T = p / (rho * a.R);
    const heat = 1 + (g * v * v) / (a.R * T);
    const p0 = p * heat ** (gamma / (gamma - 1));
    return rho * v - share * nozzleFlux(p0, T * heat, a.R, gamma, outside);
  };
  writeOut(end, findRoot(surplus, lowest, rest, end.lastPressure, true), gas);
}

/** Writes outflow of the arriving gas at end pressure p. */
export function writeOut(end: End, p: number, gas: Gas): void {
  const a = end.arriving;
  const rho = densityBehind(a, p);
  const v = velocityBehind(a, p);
  const h = gas.enthalpy(p / (rho * a.R), a.burned, a.fuel);
  end.write(rho, v, p, a.burned, a.fuel, rho * v * end.area * (h + 0.5 * v * v));
}

function flowIn(end: End, from: Reservoir, area: number, rest: number): void {
  const a = end.arriving;
  const share = Math.min(area / end.area, 1);
  if (share < SHUT) {
    shut(end, rest);
    return;
  }
  const { gamma, R, pressure: p0, temperature: T0 } = from;
  const speedIn = (p: number): number =>
    inflowVelocity(p, share * nozzleFlux(p0, T0, R, gamma, p), T0, R, gamma);
  const surplus = (p: number): number => -velocityBehind(a, p) - speedIn(p);
  const low = Math.max(
    rest,
    sonicInflowPressure(share * nozzleFlux(p0, T0, R, gamma, 0), T0, R, gamma),
  );
  const p =
    low >= p0 || surplus(low) >= 0 ? low : findRoot(surplus, low, p0, end.lastPressure, false);
  const flux = share * nozzleFlux(p0, T0, R, gamma, p);
  const v = inflowVelocity(p, flux, T0, R, gamma);
  const rho = v > 0 ? flux / v : p0 / (R * T0);
  end.write(rho, -v, p, from.burned, from.fuel, -flux * end.area * from.enthalpy);
}

/**
 * Pressure [Pa] at which gas of mass flux `flux` [kg/s m^2] and total temperature T0 [K] enters a
 * duct at the speed of sound: the duct's end chokes there, whatever lower pressure lies beyond.
 */
export function sonicInflowPressure(flux: number, T0: number, R: number, gamma: number): number {
  return flux * Math.sqrt((2 * R * T0) / (gamma * (gamma + 1)));
}

/**
 * Velocity [m/s] of gas that carries mass flux `flux` [kg/s m^2] at pressure p [Pa], total
 * temperature T0 [K]: from v = flux R T / p and T = T0 - v^2 (gamma-1)/(2 gamma R), the slower root.
 */
export function inflowVelocity(
  p: number,
  flux: number,
  T0: number,
  R: number,
  gamma: number,
): number {
  if (flux <= 0) return 0;
  const cp = (gamma * R) / (gamma - 1);
  const b = p / (flux * R);
  return (2 * T0) / (b + Math.sqrt(b * b + (2 * T0) / cp));
}
