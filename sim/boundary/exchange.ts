/**
 * Flow between a duct end and a reservoir through a throat of given effective area: the one model
 * behind open ends, valves and pipes into volumes.
 *
 * Out of the duct: the gas accelerates from the end's own stagnation state to the reservoir's
 * pressure in the throat (or to the choked pressure); continuity between end and throat.
 * Into the duct: the gas accelerates from the reservoir to the throat, whose pressure is that of
 * the duct's end (constant-pressure model: no recovery behind the throat), or chokes; then
 *
 *   A rho v = m,   h(T) + v^2/2 = h(T_reservoir),
 *
 * at most at the speed of sound. Both are closed by the wave that runs into the duct
 * (outgoingWave.ts). Energy carried is exact (reservoir enthalpy in, total enthalpy of the end
 * out); gamma is frozen within the throat.
 * Source: Benson (1982), The Thermodynamics and Gas Dynamics of Internal-Combustion Engines, vol. 1,
 * ch. 4 (from memory).
 */
import type { Gas } from '../gas/gas.ts';
import type { ArrivingGas, End } from './ductEnd.ts';
import { nozzleFlux, throatFlux } from './nozzle.ts';
import {
  type GasBehind,
  gasBehind,
  sonicPressure,
  stagnantPressure,
  velocityBehind,
} from './outgoingWave.ts';
import type { Reservoir } from './reservoir.ts';
import { type Residual, RootSearch } from './rootSearch.ts';

/** A throat this close to the duct's own area counts as no throat. */
const FULL_BORE = 1 - 1e-9;
/** A throat below this share of the duct's area counts as shut. */
const SHUT = 1e-9;
/**
 * Pressures this close [relative] differ by round-off. A flow law with a square root would make
 * 1e-6 m/s of it; at a shut end it stays what it is.
 */
export const STILL = 1e-13;

const behind: GasBehind = { rho: 0, v: 0 };

/** Flow between one end and one reservoir; remembers where it last found the answer. */
export class Exchange {
  private readonly end: End;
  private readonly reservoir: Reservoir;
  private readonly outflow = new Outflow();
  private readonly inflow = new Inflow();
  private readonly outSearch = new RootSearch(true);
  private readonly inSearch = new RootSearch(false);

  constructor(end: End, reservoir: Reservoir) {
    this.end = end;
    this.reservoir = reservoir;
  }

  /**
   * Solves the end and writes it. `areaIn` is the throat's effective area [m^2] for flow into the
   * duct, `areaOut` for flow out of it; both are held to the duct's own.
   */
  solve(areaIn: number, areaOut: number, gas: Gas): void {
    const { end, reservoir } = this;
    const rest = stagnantPressure(end.arriving);
    const out = reservoir.pressure < rest;
    const share = (out ? areaOut : areaIn) / end.area;
    const still = Math.abs(reservoir.pressure - rest) <= STILL * rest;
    if (still || share < SHUT) shut(end, rest);
    else if (out) this.flowOut(share, rest, gas);
    else this.flowIn(Math.min(share, 1), rest);
  }

  private flowOut(share: number, rest: number, gas: Gas): void {
    const { end, outflow } = this;
    const a = end.arriving;
    const outside = this.reservoir.pressure;
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
    outflow.set(a, share, outside);
    writeOut(end, this.outSearch.find(outflow, lowest, rest), gas);
  }

  private flowIn(share: number, rest: number): void {
    const { end, reservoir: from, inflow } = this;
    const { gamma, R, pressure: p0, temperature: T0 } = from;
    inflow.set(end.arriving, share, from);
    const choked = share * nozzleFlux(p0, T0, R, gamma, 0);
    const low = Math.max(rest, sonicInflowPressure(choked, T0, R, gamma));
    const stuck = low >= p0 || (low > rest && inflow.at(low) >= 0);
    const p = stuck ? low : this.inSearch.find(inflow, low, p0);
    const flux = share * nozzleFlux(p0, T0, R, gamma, p);
    const v = inflowVelocity(p, flux, T0, R, gamma);
    const rho = v > 0 ? flux / v : p0 / (R * T0);
    end.write(rho, -v, p, from.burned, from.fuel, -flux * end.area * from.enthalpy);
  }
}

/** Mass flux that reaches the end less what the throat passes, against the end's pressure. */
class Outflow implements Residual {
  private gas!: ArrivingGas;
  private share = 0;
  private outside = 0;

  set(gas: ArrivingGas, share: number, outside: number): void {
    this.gas = gas;
    this.share = share;
    this.outside = outside;
  }

  at(p: number): number {
    const { gas, share, outside } = this;
    const { gamma, R } = gas;
    gasBehind(gas, p, behind);
    const { rho, v } = behind;
    const T = p / (rho * R);
    const heat = 1 + ((gamma - 1) * v * v) / (2 * gamma * R * T);
    return rho * v - share * throatFlux(p, T, heat, R, gamma, outside);
  }
}

/** Speed at which the wave takes gas less that at which the throat gives it. */
class Inflow implements Residual {
  private gas!: ArrivingGas;
  private share = 0;
  private from!: Reservoir;

  set(gas: ArrivingGas, share: number, from: Reservoir): void {
    this.gas = gas;
    this.share = share;
    this.from = from;
  }

  at(p: number): number {
    const { gamma, R, pressure, temperature } = this.from;
    const flux = this.share * nozzleFlux(pressure, temperature, R, gamma, p);
    return -velocityBehind(this.gas, p) - inflowVelocity(p, flux, temperature, R, gamma);
  }
}

/** A shut end: the arriving gas comes to rest. */
export function shut(end: End, rest = stagnantPressure(end.arriving)): void {
  const { burned, fuel } = end.arriving;
  gasBehind(end.arriving, rest, behind);
  end.write(behind.rho, 0, rest, burned, fuel, 0);
}

/** Writes outflow of the arriving gas at end pressure p. */
export function writeOut(end: End, p: number, gas: Gas): void {
  const a = end.arriving;
  gasBehind(a, p, behind);
  const { rho, v } = behind;
  const h = gas.enthalpy(p / (rho * a.R), a.burned, a.fuel);
  end.write(rho, v, p, a.burned, a.fuel, rho * v * end.area * (h + 0.5 * v * v));
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
