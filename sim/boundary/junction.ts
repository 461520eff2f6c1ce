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
import { type Residual, RootSearch } from './rootSearch.ts';

export function junction(ends: readonly End[]): Node {
  const mixing = new Mixing(ends);
  const search = new RootSearch(true);
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
      const p = high === low ? low : search.find(mixing, low, high);
      mixing.write(p, gas);
    },
  };
}

/** Mass balance of the joint against its pressure. */
class Mixing implements Residual {
  private readonly ends: readonly End[];
  private readonly waves: GasBehind[];
  /** Inflow to the joint [kg/s], sum m cp T0 by frozen cp [W], sum m cp and sum m R [W/K]. */
  private mass = 0;
  private heat = 0;
  private capacity = 0;
  private constant = 0;

  constructor(ends: readonly End[]) {
    this.ends = ends;
    this.waves = ends.map(() => ({ rho: 0, v: 0 }));
  }

  /** Inflow less outflow [kg/s] at pressure p [Pa]. */
  at(p: number): number {
    const { ends, waves } = this;
    this.mix(p);
    let balance = this.mass;
    for (let i = 0; i < ends.length; i++) {
      const { v } = waves[i]!;
      if (v < 0) balance += v * ends[i]!.area * this.density(i, p);
    }
    return balance;
  }

  /** Writes every end at pressure p [Pa]. */
  write(p: number, gas: Gas): void {
    const { ends, waves } = this;
    // The search leaves a trace of imbalance; the takers share it, so that nothing is lost.
    const taken = -(this.at(p) - this.mass);
    const balance = taken > 0 ? this.mass / taken : 0;
    let mass = 0;
    let energy = 0;
    let burned = 0;
    let fuel = 0;
    for (let i = 0; i < ends.length; i++) {
      if (waves[i]!.v < 0) continue;
      writeOut(ends[i]!, p, gas);
      const { flow } = ends[i]!;
      mass += flow.mass;
      energy += flow.energy;
      burned += flow.burned;
      fuel += flow.fuel;
    }
    for (let i = 0; i < ends.length; i++) {
      const end = ends[i]!;
      const { rho, v } = waves[i]!;
      if (v >= 0) continue;
      if (mass > 0) {
        const mixed = balance * this.density(i, p);
        const taking = mixed * v * end.area;
        end.write(mixed, v, p, burned / mass, fuel / mass, (taking * energy) / mass);
      } else {
        end.write(rho, 0, p, end.arriving.burned, end.arriving.fuel, 0);
      }
    }
  }

  private mix(p: number): void {
    const { ends, waves } = this;
    this.mass = 0;
    this.heat = 0;
    this.capacity = 0;
    this.constant = 0;
    for (let i = 0; i < ends.length; i++) {
      const a = ends[i]!.arriving;
      gasBehind(a, p, waves[i]!);
      const { rho, v } = waves[i]!;
      if (v <= 0) continue;
      const m = rho * v * ends[i]!.area;
      const cp = (a.gamma * a.R) / (a.gamma - 1);
      this.mass += m;
      this.heat += m * (cp * (p / (rho * a.R)) + 0.5 * v * v);
      this.capacity += m * cp;
      this.constant += m * a.R;
    }
  }

  /** Density of the mixture where it enters end i [kg/m^3]; the end's own if nothing flows in. */
  private density(i: number, p: number): number {
    const { rho, v } = this.waves[i]!;
    if (!(this.mass > 0)) return rho;
    const T = (this.heat - 0.5 * this.mass * v * v) / this.capacity;
    return (p * this.mass) / (this.constant * T);
  }
}
