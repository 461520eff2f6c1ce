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
import type { ArrivingGas, End } from './ductEnd.ts';
import { nozzleFlux, throatFlux } from './nozzle.ts';
import {
  densityBehind,
  type GasBehind,
  gasBehind,
  sonicPressure,
  stagnantPressure,
  velocityBehind,
} from './outgoingWave.ts';
import type { Reservoir } from './reservoir.ts';
import { findRoot } from './rootSearch.ts';

/** A throat this close to the duct's own area counts as no throat. */
const FULL_BORE = 1 - 1e-9;
/** A throat below this share of the duct's area counts as shut. */
const SHUT = 1e-9;

/** Where the searches below put what they find: one search at a time. */
const wave: GasBehind = { v: 0, rho: 0 };

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
  const p = findRoot((x) => surplusOut(a, share, outside, x), lowest, rest, end.lastPressure, true);
  writeOut(end, p, gas);
}

/** What the end gives at pressure p [Pa] over what the throat passes to `outside` [kg/s m^2]. */
function surplusOut(a: ArrivingGas, share: number, outside: number, p: number): number {
  const { gamma, R } = a;
  gasBehind(a, p, wave);
  const v = Math.max(wave.v, 0);
  const T = p / (wave.rho * R);
  const heat = 1 + ((gamma - 1) * v * v) / (2 * gamma * R * T);
  return wave.rho * v - share * throatFlux(p, T, heat, R, gamma, outside);
}

/** Writes outflow of the arriving gas at end pressure p. */
export function writeOut(end: End, p: number, gas: Gas): void {
  const a = end.arriving;
  gasBehind(a, p, wave);
  const { rho, v } = wave;
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
  const choked = share * nozzleFlux(p0, T0, R, gamma, 0);
  const low = Math.max(rest, sonicInflowPressure(choked, T0, R, gamma));
  const p =
    low >= p0 || surplusIn(a, share, from, low) >= 0
      ? low
      : findRoot((x) => surplusIn(a, share, from, x), low, p0, end.lastPressure, false);
  const flux = share * nozzleFlux(p0, T0, R, gamma, p);
  const v = inflowVelocity(p, flux, T0, R, gamma);
  const rho = v > 0 ? flux / v : p0 / (R * T0);
  end.write(rho, -v, p, from.burned, from.fuel, -flux * end.area * from.enthalpy);
}

/** Speed at which the duct takes gas at pressure p [Pa] over that at which the throat gives it. */
function surplusIn(a: ArrivingGas, share: number, from: Reservoir, p: number): number {
  const { gamma, R, pressure: p0, temperature: T0 } = from;
  const flux = share * nozzleFlux(p0, T0, R, gamma, p);
  return -velocityBehind(a, p) - inflowVelocity(p, flux, T0, R, gamma);
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
