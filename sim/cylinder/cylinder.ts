/**
 * A cylinder: a volume of uniform gas whose size the crank sets, with work, wall heat and burning.
 *
 *   d(m e)/dt = -sum E_out - p dV/dt - h A (T - Tw) + q dm_burned/dt
 *
 * Source: the first law for an open system; wall heat as wallHeat.ts, burn as wiebe.ts.
 * The burn turns the charge (air and fuel) into products along Wiebe's law; fuel joins the charge
 * as vapour at valve closing. Balances are kept exactly: what the ledger says is what the state got.
 */
import type { Moment } from '../boundary/node.ts';
import { Volume } from '../boundary/volume.ts';
import type { Gas } from '../gas/gas.ts';
import {
  type CrankGeometry,
  cylinderSurface,
  cylinderVolume,
  meanPistonSpeed,
  sweptVolume,
} from './crank.ts';
import { CYCLE, wrapAngle } from './valveLift.ts';
import { type ClosingState, closedSpeed, exchangeSpeed, woschniCoefficient } from './wallHeat.ts';
import type { Burn } from './wiebe.ts';

export interface CylinderOptions {
  name: string;
  crank: CrankGeometry;
  /** Speed [rpm]. */
  speed: number;
  /** Wall temperature [K]; leave out for an adiabatic cylinder. */
  wallTemperature?: number;
  /** How the charge burns; leave out for a motored cylinder. */
  burn?: Burn;
  /** Heat released per mass of fuel [J/kg]. */
  fuelHeat?: number;
  /** Crank angles [deg] between which the valves are shut: intake closing to exhaust opening. */
  shut: { from: number; to: number };
  /** Crank angle of this cylinder's firing behind the first's [deg]. */
  phase?: number;
}

/** What a cylinder holds at intake valve closing. */
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
}

export class Cylinder extends Volume {
  readonly crank: CrankGeometry;
  readonly ledger: CylinderLedger = {
    work: 0,
    wallHeat: 0,
    burnHeat: 0,
    fuelMass: 0,
    fuelEnergy: 0,
  };
  private readonly options: CylinderOptions;
  private readonly swept: number;
  private readonly pistonSpeed: number;
  private closing: ClosingState;
  private chargeAir = 0;
  private chargeFuel = 0;
  private heatingFuel = 0;

  constructor(options: CylinderOptions, startAngle: number) {
    super(options.name, cylinderVolume(options.crank, startAngle - (options.phase ?? 0)));
    this.options = options;
    this.crank = options.crank;
    this.swept = sweptVolume(options.crank);
    this.pistonSpeed = meanPistonSpeed(options.crank, options.speed);
    this.closing = { pressure: 1e5, temperature: 300, volume: this.volumeHalf };
  }

  /** This cylinder's own crank angle [deg], 0 at its firing, for the engine's [deg]. */
  ownAngle(crankAngle: number): number {
    return wrapAngle(crankAngle - (this.options.phase ?? 0));
  }

  override predict(gas: Gas, moment: Moment): void {
    this.volumeHalf = cylinderVolume(this.crank, this.ownAngle(moment.crankAngle));
    super.predict(gas, moment);
  }

  override advance(moment: Moment): void {
    const angle = this.ownAngle(moment.crankAngle);
    const from = angle - 0.5 * moment.crankStep;
    const to = angle + 0.5 * moment.crankStep;
    const work =
      this.pressure * (cylinderVolume(this.crank, to) - cylinderVolume(this.crank, from));
    const wall = this.wallFlow(angle) * moment.dt;
    const burn = this.burnBetween(from, to);
    this.gain.energy += burn - work - wall;
    this.ledger.work += work;
    this.ledger.wallHeat += wall;
    this.ledger.burnHeat += burn;
    super.advance(moment);
  }

  /** Takes over the state of the same cylinder beside another mesh. */
  copy(other: Cylinder, gas: Gas): void {
    Object.assign(this.contents, other.contents);
    Object.assign(this.rate, other.rate);
    this.closing = other.closing;
    this.chargeAir = other.chargeAir;
    this.chargeFuel = other.chargeFuel;
    this.heatingFuel = other.heatingFuel;
    this.volumeHalf = other.volumeHalf;
    this.temperature = other.temperature;
    this.show(gas, 0);
  }

  /** Notes and returns what is trapped at valve closing, before any fuel is added. */
  close(gas: Gas, crankAngle: number): TrappedCharge {
    const { contents } = this;
    this.volumeHalf = cylinderVolume(this.crank, this.ownAngle(crankAngle));
    this.show(gas, 0);
    this.closing = {
      pressure: this.pressure,
      temperature: this.temperature,
      volume: this.volumeHalf,
    };
    return {
      pressure: this.pressure,
      temperature: this.temperature,
      air: contents.mass - contents.burned - contents.fuel,
      burned: contents.burned,
      fuel: contents.fuel,
    };
  }

  /**
   * Adds fuel vapour [kg] at the charge's temperature; what the cylinder then holds will burn, and
   * so will `liquid` [kg], which joins the gas before the burn. No more than `most` [kg] releases
   * heat: fuel beyond it finds no air.
   */
  addFuel(gas: Gas, fuelMass: number, liquid = 0, most = Number.POSITIVE_INFINITY): void {
    const { contents, ledger } = this;
    const energy = fuelMass * gas.internalEnergy(this.temperature, 0, 1);
    contents.mass += fuelMass;
    contents.fuel += fuelMass;
    contents.energy += energy;
    ledger.fuelMass += fuelMass;
    ledger.fuelEnergy += energy;
    this.chargeFuel = contents.fuel + liquid;
    this.heatingFuel = Math.min(this.chargeFuel, most);
    this.chargeAir = contents.mass - contents.burned - contents.fuel;
  }

  /** Heat flow to the wall [W] at the shown state. */
  private wallFlow(angle: number): number {
    const { wallTemperature: wall, shut } = this.options;
    if (wall === undefined) return 0;
    const closed = wrapAngle(angle - shut.from) < wrapAngle(shut.to - shut.from);
    const speed = closed
      ? closedSpeed(this.pistonSpeed, this.swept, this.closing, this.pressure, this.volumeHalf)
      : exchangeSpeed(this.pistonSpeed);
    const h = woschniCoefficient(this.crank.bore, this.pressure, this.temperature, speed);
    return h * cylinderSurface(this.crank, angle) * (this.temperature - wall);
  }

  /** Turns charge into products between two crank angles [deg]; returns the heat released [J]. */
  private burnBetween(from: number, to: number): number {
    const { burn, fuelHeat = 0 } = this.options;
    if (!burn) return 0;
    // Angles counted from -360 to 360, since the burn straddles firing top dead centre.
    const centred = from > CYCLE / 2 ? from - CYCLE : from;
    const share = burn.share(centred + to - from) - burn.share(centred);
    if (share <= 0) return 0;
    this.gain.burned += share * (this.chargeAir + this.chargeFuel);
    this.gain.fuel -= share * this.chargeFuel;
    return share * this.heatingFuel * fuelHeat;
  }
}
