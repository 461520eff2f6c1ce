/** Gas at rest on the far side of a boundary: the open air, or a volume that what flows in changes. */
import type { Duct } from '../duct/duct.ts';
import type { Gas } from '../gas/gas.ts';
import * as AT from '../step/layout.ts';
import { type EndFlow, flowAt } from './ductEnd.ts';

export interface RestState {
  /** Pressure [Pa]. */
  pressure: number;
  /** Temperature [K]. */
  temperature: number;
  /** Mass fraction of burned products [-]. */
  burned?: number;
  /** Mass fraction of fuel vapour [-]. */
  fuel?: number;
}

/** Gas at rest as a boundary sees it. */
abstract class AtRest {
  slots: Float64Array;

  constructor(slots: Float64Array) {
    this.slots = slots;
  }

  get pressure(): number {
    return this.slots[AT.Q_P]!;
  }

  /** Mass fractions [-]. */
  get burned(): number {
    return this.slots[AT.Q_BURNED]!;
  }

  get fuel(): number {
    return this.slots[AT.Q_FUEL]!;
  }

  protected showState(gas: Gas, state: RestState): void {
    const { slots } = this;
    const { pressure, temperature: T, burned = 0, fuel = 0 } = state;
    slots[AT.Q_P] = pressure;
    slots[AT.Q_RT] = gas.gasConstant(burned, fuel) * T;
    slots[AT.Q_GAMMA] = gas.gamma(T, burned, fuel);
    slots[AT.Q_H] = gas.enthalpy(T, burned, fuel);
    slots[AT.Q_BURNED] = burned;
    slots[AT.Q_FUEL] = fuel;
  }
}

/** A reservoir whose state never changes, with a ledger of what it took. */
export class OpenAir extends AtRest {
  /** [K]. */
  readonly temperature: number;

  constructor(gas: Gas, state: RestState) {
    super(new Float64Array(AT.AIR_SIZE));
    this.temperature = state.temperature;
    this.showState(gas, state);
  }

  /** What the ducts have given since the last reset: mass [kg], energy [J]. */
  get taken(): EndFlow {
    return flowAt(this.slots, AT.G_MASS);
  }

  resetLedger(): void {
    this.slots.fill(0, AT.G_MASS, AT.G_OPENING + 1);
  }
}

/**
 * A hole in the side of a duct as what stands before it sees it: the cell that it opens into
 * (step/tapping.ts). Any number of ends may stand before one.
 */
export class Tapping extends AtRest {
  readonly duct: Duct;
  /** Which cell, from 0. */
  readonly cell: number;

  /** `x`: distance from the duct's low end [m], within the duct. */
  constructor(duct: Duct, x: number) {
    super(new Float64Array(AT.AIR_SIZE));
    const { dx, cells, length } = duct.mesh;
    if (!(x >= 0 && x <= length)) throw new Error(`"${duct.name}" is tapped beyond its ends`);
    this.duct = duct;
    this.cell = Math.min(Math.floor(x / dx), cells - 1);
  }
}

/** Mass [kg] and internal energy [J] of what a volume holds. */
export interface Contents {
  mass: number;
  energy: number;
  burned: number;
  fuel: number;
}

/** A volume of uniform gas with ducts open to it (step/volume.ts). */
export class Volume extends AtRest {
  readonly name: string;

  /** `size` [m^3]. */
  constructor(name: string, size: number, slots = new Float64Array(AT.VOLUME_SLOTS)) {
    super(slots);
    this.name = name;
    slots[AT.V_SIZE] = size;
  }

  get size(): number {
    return this.slots[AT.V_SIZE]!;
  }

  get temperature(): number {
    return this.slots[AT.V_T]!;
  }

  /** A copy; `add` changes it. */
  get contents(): Contents {
    return flowAt(this.slots, AT.V_MASS);
  }

  /** Adds to what it holds; the rates by which boundaries see ahead stay as they are. */
  add({ mass = 0, energy = 0, burned = 0, fuel = 0 }: Partial<Contents>): void {
    const { slots } = this;
    slots[AT.V_MASS]! += mass;
    slots[AT.V_ENERGY]! += energy;
    slots[AT.V_BURNED]! += burned;
    slots[AT.V_FUEL]! += fuel;
  }

  /** Fills the volume with one state. */
  fill(gas: Gas, state: RestState): void {
    const { pressure, temperature: T, burned = 0, fuel = 0 } = state;
    const mass = (pressure * this.size) / (gas.gasConstant(burned, fuel) * T);
    this.slots.fill(0, AT.V_MASS, AT.V_RATE + 4);
    const energy = mass * gas.internalEnergy(T, burned, fuel);
    this.add({ mass, energy, burned: mass * burned, fuel: mass * fuel });
    this.slots[AT.V_T] = T;
    this.showState(gas, state);
  }

  /** Sets the visible state to what it holds. */
  show(gas: Gas): void {
    const { mass, energy, burned, fuel } = this.contents;
    const [yb, yf] = [burned / mass, fuel / mass];
    const T = gas.temperature(energy / mass, yb, yf, this.temperature);
    const pressure = (mass * gas.gasConstant(yb, yf) * T) / this.size;
    this.slots[AT.V_T] = T;
    this.showState(gas, { pressure, temperature: T, burned: yb, fuel: yf });
  }
}
