/** A cylinder as data, and what happens at its valve closing; its steps are in step/cylinder.ts. */
import { type Contents, Volume } from '../boundary/reservoir.ts';
import { CYCLE, wrapAngle } from '../crankAngle.ts';
import { power } from '../elementary/powers.ts';
import type { Gas } from '../gas/gas.ts';
import * as AT from '../step/layout.ts';
import { burnStretch } from './burnDuration.ts';
import { type CrankGeometry, cylinderVolume, meanPistonSpeed } from './crank.ts';
import type { Rings } from './rings.ts';
import { type StatedBurn, wiebeWithin } from './wiebe.ts';

export interface CylinderOptions {
  name: string;
  crank: CrankGeometry;
  /** Wall temperature [K]; leave out for an adiabatic cylinder. */
  wallTemperature?: number;
  /** How the charge burns; leave out for a motored cylinder. */
  burn?: StatedBurn;
  /** Heat released per mass of fuel [J/kg]. */
  fuelHeat?: number;
  /** Crank angles [deg] between which the valves are shut: intake closing to exhaust opening. */
  shut: { from: number; to: number };
  /** Crank angle of this cylinder's firing behind the first's [deg]. */
  phase?: number;
  /** What lies beside the chamber (step/crevice.ts); leave out for none. */
  rings?: Rings;
}

/** What a cylinder holds at intake valve closing, crevices with it. */
export interface TrappedCharge {
  /** Pressure [Pa]. */
  pressure: number;
  /** Temperature [K]. */
  temperature: number;
  /** Fresh air [kg]. */
  air: number;
  /** Burned products of the last cycle [kg]. */
  burned: number;
  /** Fuel vapour [kg]. */
  fuel: number;
}

/** What has gone in and out other than through the valves, since the last reset [J] and [kg]. */
export interface CylinderLedger {
  work: number;
  wallHeat: number;
  burnHeat: number;
  fuelMass: number;
  fuelEnergy: number;
  /** Lost past the rings. */
  blownMass: number;
  blownEnergy: number;
}

export class Cylinder extends Volume {
  readonly options: CylinderOptions;
  readonly crank: CrankGeometry;
  readonly phase: number;

  /** `startAngle`: the engine's crank angle at the start [deg]. */
  constructor(options: CylinderOptions, startAngle: number) {
    const size = cylinderVolume(options.crank, startAngle - (options.phase ?? 0));
    super(options.name, size, new Float64Array(AT.CYLINDER_SLOTS));
    this.options = options;
    this.crank = options.crank;
    this.phase = options.phase ?? 0;
    this.slots.set([1e5, 300, size], AT.C_CLOSE_P);
    this.setBurn(1);
  }

  /** Sets the engine's speed [rpm]. */
  setSpeed(speed: number): void {
    this.slots[AT.C_PISTON] = meanPistonSpeed(this.crank, speed);
  }

  /** This cylinder's own crank angle [deg], 0 at its firing, for the engine's [deg]. */
  ownAngle(crankAngle: number): number {
    return wrapAngle(crankAngle - this.phase);
  }

  get ledger(): CylinderLedger {
    const [work, wallHeat, burnHeat, fuelMass, fuelEnergy, blownMass, blownEnergy] =
      this.slots.subarray(AT.C_WORK);
    return {
      work: work!,
      wallHeat: wallHeat!,
      burnHeat: burnHeat!,
      fuelMass: fuelMass!,
      fuelEnergy: fuelEnergy!,
      blownMass: blownMass!,
      blownEnergy: blownEnergy!,
    };
  }

  resetLedger(): void {
    this.slots.fill(0, AT.C_WORK, AT.C_BLOWN + 2);
  }

  /** What the crevices hold, at the wall's temperature. */
  crevices(gas: Gas): Contents {
    const [mass, burned, fuel] = this.slots.subarray(AT.C_HELD);
    if (!mass) return { mass: 0, energy: 0, burned: 0, fuel: 0 };
    const { wallTemperature } = this.options;
    const e = gas.internalEnergy(wallTemperature!, burned! / mass, fuel! / mass);
    return { mass, energy: mass * e, burned: burned!, fuel: fuel! };
  }

  /** All of the cylinder, crevices with it. */
  private held(gas: Gas): Contents {
    const [here, there] = [this.contents, this.crevices(gas)];
    return {
      mass: here.mass + there.mass,
      energy: here.energy + there.energy,
      burned: here.burned + there.burned,
      fuel: here.fuel + there.fuel,
    };
  }

  /** Notes and returns what is trapped at valve closing, before any fuel is added. */
  close(gas: Gas, crankAngle: number): TrappedCharge {
    const { slots } = this;
    slots[AT.V_SIZE] = cylinderVolume(this.crank, this.ownAngle(crankAngle));
    this.show(gas);
    const { pressure, temperature } = this;
    slots.set([pressure, temperature, this.size], AT.C_CLOSE_P);
    const { mass, burned, fuel } = this.held(gas);
    const pistonSpeed = slots[AT.C_PISTON]!;
    this.setBurn(burnStretch({ residual: burned / mass, pressure, temperature, pistonSpeed }));
    return { pressure, temperature, air: mass - burned - fuel, burned, fuel };
  }

  /** Own crank angle at which the charge starts to burn [deg]; below 0 before firing. */
  get burnStart(): number {
    return this.slots[AT.C_BURN_FROM]!;
  }

  /** Sets the burn of the charge: so many times as long as stated, never before the valve has closed. */
  private setBurn(stretch: number): void {
    const { burn, shut } = this.options;
    if (!burn) return;
    const duration = burn.duration * power(stretch, burn.response);
    const { start, end } = wiebeWithin(burn.middle, duration, shut.from - CYCLE);
    this.slots.set([start, 1 / (end - start)], AT.C_BURN_FROM);
  }

  /**
   * Adds fuel vapour [kg] at the charge's temperature; what the cylinder then holds will burn, and
   * so will `liquid` [kg], which joins the gas before the burn. No more than `most` [kg] releases
   * heat: fuel beyond it finds no air.
   */
  addFuel(gas: Gas, fuelMass: number, liquid = 0, most = Number.POSITIVE_INFINITY): void {
    const energy = fuelMass * gas.internalEnergy(this.temperature, 0, 1);
    this.add({ mass: fuelMass, fuel: fuelMass, energy });
    this.slots[AT.C_FUEL_MASS]! += fuelMass;
    this.slots[AT.C_FUEL_ENERGY]! += energy;
    const fuel = this.held(gas).fuel + liquid;
    this.slots[AT.C_AIR_SHARE] = fuel > 0 ? Math.min(fuel, most) / fuel : 0;
  }
}
