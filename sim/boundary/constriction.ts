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
import type { End } from './ductEnd.ts';
import { inflowVelocity, shut, sonicInflowPressure, writeOut } from './exchange.ts';
import type { Node } from './node.ts';
import { nozzleFlux } from './nozzle.ts';
import { densityBehind, sonicPressure, stagnantPressure, velocityBehind } from './outgoingWave.ts';
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
  const surplus = (p: number): number => upstream(up, p).mass - throatFlow(up, down, area, p);
  const p = surplus(lowest) <= 0 ? lowest : findRoot(surplus, lowest, pUp, up.lastPressure, true);
  writeOut(up, p, gas);
  const { T0 } = upstream(up, p);
  const pOut = downstreamPressure(down, up.flow.mass, T0, a.R, a.gamma, pDown, pUp);
  const v = up.flow.mass === 0 ? 0 : -velocityBehind(down.arriving, pOut);
  const rho = v > 0 ? up.flow.mass / (v * down.area) : densityBehind(a, pOut);
  down.write(rho, -v, pOut, a.burned, a.fuel, -up.flow.energy);
}

/** Mass flow [kg/s] and stagnation state of the upstream end at pressure p [Pa]. */
function upstream(up: End, p: number): { mass: number; p0: number; T0: number } {
  const a = up.arriving;
  const v = Math.max(velocityBehind(a, p), 0);
  const rho = densityBehind(a, p);
  const T = p / (rho * a.R);
  const heat = 1 + ((a.gamma - 1) * v * v) / (2 * a.gamma * a.R * T);
  return {
    mass: rho * v * up.area,
    p0: p * heat ** (a.gamma / (a.gamma - 1)),
    T0: T * heat,
  };
}

/** What the throat passes [kg/s] with the upstream end at p: the downstream end follows along. */
function throatFlow(up: End, down: End, area: number, p: number): number {
  const { gamma, R } = up.arriving;
  const { mass, p0, T0 } = upstream(up, p);
  const back = downstreamPressure(down, mass, T0, R, gamma, stagnantPressure(down.arriving), p0);
  return area * nozzleFlux(p0, T0, R, gamma, Math.min(back, p0));
}

/** Pressure [Pa] of the downstream end when it takes `mass` [kg/s] at total temperature T0 [K]. */
function downstreamPressure(
  down: End,
  mass: number,
  T0: number,
  R: number,
  gamma: number,
  low: number,
  high: number,
): number {
  if (mass <= 0) return low;
  const flux = mass / down.area;
  const lag = (p: number): number =>
    -velocityBehind(down.arriving, p) - inflowVelocity(p, flux, T0, R, gamma);
  if (lag(high) < 0) return high;
  const sonic = Math.max(low, sonicInflowPressure(flux, T0, R, gamma));
  if (sonic >= high || lag(sonic) >= 0) return sonic;
  return findRoot(lag, sonic, high, down.lastPressure, false);
}
