/**
 * Gas at rest on the far side of a boundary: the open air, a box, a cylinder.
 */
import type { Gas } from '../gas/gas.ts';
import type { EndFlow } from './ductEnd.ts';

/** A large body of gas as a boundary sees it. */
export interface Reservoir {
  /** Pressure [Pa]. */
  readonly pressure: number;
  /** Temperature [K]. */
  readonly temperature: number;
  /** Mass fraction of burned products [-]. */
  readonly burned: number;
  /** Mass fraction of fuel vapour [-]. */
  readonly fuel: number;
  /** Specific gas constant [J/kg K]. */
  readonly R: number;
  /** Ratio of specific heats [-]. */
  readonly gamma: number;
  /** Specific enthalpy [J/kg]. */
  readonly enthalpy: number;
  /**
   * Takes what a duct end gives (or gives, where negative) during dt [s]; `area` is that of the end
   * where it is open to the reservoir [m^2].
   */
  receive(flow: EndFlow, dt: number, area: number): void;
}

/** A reservoir whose state never changes, with a ledger of what it took. */
export class OpenAir implements Reservoir {
  readonly pressure: number;
  readonly temperature: number;
  readonly burned: number;
  readonly fuel: number;
  readonly R: number;
  readonly gamma: number;
  readonly enthalpy: number;
  /** What the ducts have given since the last reset: mass [kg], energy [J]. */
  readonly taken: EndFlow = { mass: 0, energy: 0, burned: 0, fuel: 0 };

  constructor(
    gas: Gas,
    state: { pressure: number; temperature: number; burned?: number; fuel?: number },
  ) {
    const { burned = 0, fuel = 0, temperature } = state;
    this.pressure = state.pressure;
    this.temperature = temperature;
    this.burned = burned;
    this.fuel = fuel;
    this.R = gas.gasConstant(burned, fuel);
    this.gamma = gas.gamma(temperature, burned, fuel);
    this.enthalpy = gas.enthalpy(temperature, burned, fuel);
  }

  receive(flow: EndFlow, dt: number): void {
    this.taken.mass += flow.mass * dt;
    this.taken.energy += flow.energy * dt;
    this.taken.burned += flow.burned * dt;
    this.taken.fuel += flow.fuel * dt;
  }
}
