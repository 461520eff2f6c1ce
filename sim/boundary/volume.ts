/**
 * A finite volume of gas at rest: an airbox, a plenum, a collector box, a resonator.
 *
 *   dm/dt = -sum m_out,   d(m e)/dt = -sum E_out + Q,   p = m R T / V
 *
 * Source: the first law for an open system, ideal gas. Boundaries see its state half a step ahead, extrapolated with the rates of the last step, so that
 * duct and volume advance together at second order. Through ducts of total area A that are open to
 * it the pressure follows the arriving waves at the rate c A / V; the extrapolation is stable for
 * steps up to V / (c A).
 */
import type { Gas } from '../gas/gas.ts';
import type { EndFlow } from './ductEnd.ts';
import type { Moment } from './node.ts';
import type { Reservoir } from './reservoir.ts';

/** Contents of a body of gas: masses [kg] and internal energy [J]. */
export interface Contents {
  mass: number;
  energy: number;
  burned: number;
  fuel: number;
}

export class Volume implements Reservoir {
  readonly name: string;
  readonly contents: Contents = { mass: 0, energy: 0, burned: 0, fuel: 0 };
  pressure = 0;
  temperature = 300;
  burned = 0;
  fuel = 0;
  R = 0;
  gamma = 0;
  enthalpy = 0;
  /** Size at half time [m^3]. */
  protected volumeHalf: number;
  /** Received in this step, and in the last one, per second. */
  protected readonly gain: Contents = { mass: 0, energy: 0, burned: 0, fuel: 0 };
  protected readonly rate: Contents = { mass: 0, energy: 0, burned: 0, fuel: 0 };

  /** Area of the duct ends open to it in this step so far, and in the last one [m^2]. */
  private opening = 0;
  private openArea = 0;

  constructor(name: string, volume: number) {
    this.name = name;
    this.volumeHalf = volume;
  }

  /** Fills the volume with one state. */
  fill(
    gas: Gas,
    state: { pressure: number; temperature: number; burned?: number; fuel?: number },
  ): void {
    const { pressure, temperature: T, burned = 0, fuel = 0 } = state;
    const mass = (pressure * this.volumeHalf) / (gas.gasConstant(burned, fuel) * T);
    this.contents.mass = mass;
    this.contents.energy = mass * gas.internalEnergy(T, burned, fuel);
    this.contents.burned = mass * burned;
    this.contents.fuel = mass * fuel;
    this.temperature = T;
    this.show(gas, 0);
  }

  receive(flow: EndFlow, dt: number, area: number): void {
    const { gain } = this;
    this.opening += area;
    gain.mass += flow.mass * dt;
    gain.energy += flow.energy * dt;
    gain.burned += flow.burned * dt;
    gain.fuel += flow.fuel * dt;
  }

  /** Shows boundaries the state half a step ahead. */
  predict(gas: Gas, moment: Moment): void {
    this.show(gas, 0.5 * moment.dt);
  }

  /** Longest stable step at Courant number 1 [s]; infinite while no duct is open to it. */
  longestStep(): number {
    const { gamma, R, temperature, openArea, volumeHalf } = this;
    return volumeHalf / (Math.sqrt(gamma * R * temperature) * openArea);
  }

  /** Takes in what this step has brought. */
  advance({ dt }: Moment): void {
    const { contents, gain, rate } = this;
    contents.mass += gain.mass;
    contents.energy += gain.energy;
    contents.burned += gain.burned;
    contents.fuel += gain.fuel;
    rate.mass = gain.mass / dt;
    rate.energy = gain.energy / dt;
    rate.burned = gain.burned / dt;
    rate.fuel = gain.fuel / dt;
    this.openArea = this.opening;
    this.opening = 0;
    gain.mass = 0;
    gain.energy = 0;
    gain.burned = 0;
    gain.fuel = 0;
  }

  /** Sets the visible state from the contents `ahead` [s] of now. */
  protected show(gas: Gas, ahead: number): void {
    const { contents, rate } = this;
    const mass = contents.mass + ahead * rate.mass;
    this.burned = (contents.burned + ahead * rate.burned) / mass;
    this.fuel = (contents.fuel + ahead * rate.fuel) / mass;
    const e = (contents.energy + ahead * rate.energy) / mass;
    this.temperature = gas.temperature(e, this.burned, this.fuel, this.temperature);
    this.R = gas.gasConstant(this.burned, this.fuel);
    this.gamma = 1 + this.R / gas.heatCapacityVolume(this.temperature, this.burned, this.fuel);
    this.pressure = (mass * this.R * this.temperature) / this.volumeHalf;
    this.enthalpy = e + this.R * this.temperature;
  }
}
