/**
 * Two duct ends with a constriction between them: a throttle plate, an orifice, a step of area.
 *
 * Upstream the gas accelerates from its own stagnation state to the throat of effective area Ae;
 * downstream the duct's end has the throat's pressure (no recovery), or the throat chokes:
 *
 *   m = A1 rho1 v1 = Ae (p01 / sqrt(R T01)) psi(p2 / p01) = A2 rho2 v2,   h01 = h02.
 *
 * For slow flow that is a loss of (A2/Ae)^2 - 1 dynamic heads of the downstream duct, so a stated
 * loss K is met by Ae = A2 / sqrt(1 + K). A bare step of area is a throat of the smaller area with
 * the sudden-expansion loss (1 - A1/A2)^2 of Borda and Carnot on the way out.
 * Source: as exchange.ts; Borda-Carnot in any handbook of hydraulics (Idelchik, diag. 4-1).
 */
import type { Gas } from '../gas/gas.ts';
import type { ArrivingGas, End } from './ductEnd.ts';
import { inflowVelocity, shut, sonicInflowPressure, writeOut } from './exchange.ts';
import type { Node } from './node.ts';
import { throatFlux } from './nozzle.ts';
import {
  densityBehind,
  type GasBehind,
  gasBehind,
  sonicPressure,
  stagnantPressure,
  velocityBehind,
} from './outgoingWave.ts';
import { findRoot } from './rootSearch.ts';

/** Effective throat areas [m^2] from the first end to the second and back. */
export interface ThroatAreas {
  forward(crankAngle: number): number;
  backward(crankAngle: number): number;
}

/** A throat this small beside the ducts counts as shut. */
const SHUT = 1e-9;

export function constriction(first: End, second: End, throat: ThroatAreas): Node {
  return {
    ends: [first, second],
    exchange: (gas, { crankAngle }) => {
      const p1 = stagnantPressure(first.arriving);
      const p2 = stagnantPressure(second.arriving);
      if (p1 >= p2) pass(first, second, throat.forward(crankAngle), p1, p2, gas);
      else pass(second, first, throat.backward(crankAngle), p2, p1, gas);
    },
  };
}

/** Flow from `up` to `down`, whose pressures at rest are pUp >= pDown. */
function pass(up: End, down: End, area: number, pUp: number, pDown: number, gas: Gas): void {
  if (pUp === pDown || area < SHUT * Math.min(up.area, down.area)) {
    shut(up, pUp);
    shut(down, pDown);
    return;
  }
  const a = up.arriving;
  const lowest = Math.max(sonicPressure(a), pDown);
  const p =
    surplus(up, down, area, pDown, pUp, lowest) <= 0
      ? lowest
      : findRoot((x) => surplus(up, down, area, pDown, pUp, x), lowest, pUp, up.lastPressure, true);
  writeOut(up, p, gas);
  comeTo(up, p);
  const pOut = pressureBehind(down, coming, a, pDown, pUp);
  const v = up.flow.mass === 0 ? 0 : -velocityBehind(down.arriving, pOut);
  const rho = v > 0 ? up.flow.mass / (v * down.area) : densityBehind(a, pOut);
  down.write(rho, -v, pOut, a.burned, a.fuel, -up.flow.energy);
}

/** What comes to the throat, and the wave it left: one solution at a time. */
const coming = { mass: 0, T: 0, heat: 1 };
const wave: GasBehind = { v: 0, rho: 0 };

/** Mass flow [kg/s], temperature T [K] and T0 / T of the upstream end at pressure p [Pa]. */
function comeTo(up: End, p: number): void {
  const { gamma, R } = up.arriving;
  gasBehind(up.arriving, p, wave);
  const v = Math.max(wave.v, 0);
  coming.mass = wave.rho * v * up.area;
  coming.T = p / (wave.rho * R);
  coming.heat = 1 + ((gamma - 1) * v * v) / (2 * gamma * R * coming.T);
}

/** What comes with the upstream end at p [Pa] over what the throat passes [kg/s]. */
function surplus(up: End, down: End, area: number, pDown: number, pUp: number, p: number): number {
  const { gamma, R } = up.arriving;
  comeTo(up, p);
  const back = pressureBehind(down, coming, up.arriving, pDown, pUp);
  return coming.mass - area * throatFlux(p, coming.T, coming.heat, R, gamma, back);
}

/** Pressure [Pa] of the downstream end when it takes what is `coming`, between low and high. */
function pressureBehind(
  down: End,
  { mass, T, heat }: typeof coming,
  { R, gamma }: ArrivingGas,
  low: number,
  high: number,
): number {
  if (mass <= 0) return low;
  const flux = mass / down.area;
  const T0 = T * heat;
  if (lag(down.arriving, high, flux, T0, R, gamma) < 0) return high;
  const sonic = Math.max(low, sonicInflowPressure(flux, T0, R, gamma));
  if (sonic >= high || lag(down.arriving, sonic, flux, T0, R, gamma) >= 0) return sonic;
  const { arriving, lastPressure } = down;
  return findRoot((p) => lag(arriving, p, flux, T0, R, gamma), sonic, high, lastPressure, false);
}

/** Speed at which the downstream duct yields at pressure p [Pa] over that of the gas that enters. */
function lag(
  down: ArrivingGas,
  p: number,
  flux: number,
  T0: number,
  R: number,
  gamma: number,
): number {
  return -velocityBehind(down, p) - inflowVelocity(p, flux, T0, R, gamma);
}
