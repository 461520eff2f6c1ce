/**
 * Several duct ends that meet at one static pressure. Gas flowing in mixes; every duct that takes
 * gas takes the mixture, at the mixture's total enthalpy:
 *
 *   sum m = 0,   h0 = sum_in m h0 / sum_in m,   Y = sum_in m Y / sum_in m.
 *
 * Source: the constant-pressure model of Benson (1982), vol. 1, ch. 6 (from memory). It knows no
 * angles between pipes and no junction losses.
 */
import type { Gas } from '../gas/gas.ts';
import type { End } from './ductEnd.ts';
import { writeOut } from './exchange.ts';
import type { Node } from './node.ts';
import { type GasBehind, gasBehind, stagnantPressure } from './outgoingWave.ts';
import { findRoot } from './rootSearch.ts';

/** The mixture of what flows in, summed over ends, and the gas behind each end's wave. */
interface Mixture {
  /** Inflow to the junction [kg/s]. */
  mass: number;
  /** Total enthalpy flow by frozen cp: sum m cp T0 [W]. */
  heat: number;
  /** sum m cp [W/K]. */
  capacity: number;
  /** sum m R [W/K]. */
  constant: number;
  /** Each end's, velocities counted out of the ducts. */
  behind: GasBehind[];
}

export function junction(ends: readonly End[]): Node {
  const behind = ends.map(() => ({ v: 0, rho: 0 }));
  const mixture: Mixture = { mass: 0, heat: 0, capacity: 0, constant: 0, behind };
  return {
    ends,
    exchange: (gas) => {
      let low = Number.POSITIVE_INFINITY;
      let high = 0;
      for (const end of ends) {
        const rest = stagnantPressure(end.arriving);
        if (rest < low) low = rest;
        if (rest > high) high = rest;
      }
      const p =
        high === low
          ? low
          : findRoot((x) => surplus(ends, x, mixture), low, high, ends[0]!.lastPressure, true);
      mix(ends, p, mixture);
      writeAll(ends, p, mixture, gas);
    },
  };
}

/** Net mass flow into the junction [kg/s] at pressure p [Pa]; fills the mixture. */
function surplus(ends: readonly End[], p: number, mixture: Mixture): number {
  mix(ends, p, mixture);
  return mixture.mass - takenBy(ends, p, mixture);
}

function mix(ends: readonly End[], p: number, mixture: Mixture): void {
  mixture.mass = 0;
  mixture.heat = 0;
  mixture.capacity = 0;
  mixture.constant = 0;
  for (let i = 0; i < ends.length; i++) {
    const a = ends[i]!.arriving;
    const behind = mixture.behind[i]!;
    gasBehind(a, p, behind);
    const { v, rho } = behind;
    if (v <= 0) continue;
    const m = rho * v * ends[i]!.area;
    const cp = (a.gamma * a.R) / (a.gamma - 1);
    mixture.mass += m;
    mixture.heat += m * (cp * (p / (rho * a.R)) + 0.5 * v * v);
    mixture.capacity += m * cp;
    mixture.constant += m * a.R;
  }
}

/** What the ends that take gas would take of the mixture [kg/s]. */
function takenBy(ends: readonly End[], p: number, mixture: Mixture): number {
  let taken = 0;
  for (let i = 0; i < ends.length; i++) {
    const { v, rho } = mixture.behind[i]!;
    if (v < 0) taken -= v * ends[i]!.area * mixtureDensity(rho, p, v, mixture);
  }
  return taken;
}

/** Density [kg/m^3] of the mixture where it enters a duct at velocity v; the duct's own if none. */
function mixtureDensity(own: number, p: number, v: number, mixture: Mixture): number {
  if (!(mixture.mass > 0)) return own;
  const T = (mixture.heat - 0.5 * mixture.mass * v * v) / mixture.capacity;
  return (p * mixture.mass) / (mixture.constant * T);
}

function writeAll(ends: readonly End[], p: number, mixture: Mixture, gas: Gas): void {
  let mass = 0;
  let energy = 0;
  let burned = 0;
  let fuel = 0;
  for (let i = 0; i < ends.length; i++) {
    if (mixture.behind[i]!.v < 0) continue;
    const end = ends[i]!;
    writeOut(end, p, gas);
    mass += end.flow.mass;
    energy += end.flow.energy;
    burned += end.flow.burned;
    fuel += end.flow.fuel;
  }
  // The search leaves a trace of imbalance; the takers share it, so that nothing is lost.
  const taken = takenBy(ends, p, mixture);
  const balance = taken > 0 ? mass / taken : 0;
  for (let i = 0; i < ends.length; i++) {
    const { v, rho: own } = mixture.behind[i]!;
    if (v >= 0) continue;
    const end = ends[i]!;
    const a = end.arriving;
    if (!(mass > 0)) {
      end.write(own, 0, p, a.burned, a.fuel, 0);
      continue;
    }
    const rho = balance * mixtureDensity(own, p, v, mixture);
    const m = -rho * v * end.area;
    end.write(rho, v, p, burned / mass, fuel / mass, (-m * energy) / mass);
  }
}
