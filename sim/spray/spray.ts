/**
 * The spray of one cylinder: injectors, drops, films and what they do to the gas, advanced beside
 * the network. Gas steps are gathered until they make a spray step; sources then go to the ducts and
 * the cylinder as they stand (first-order splitting; the step is far below every time scale but the
 * smallest drops', which are advanced implicitly).
 */
import { ChargeGas } from './chargeGas.ts';
import { FilmLeap } from './filmLeap.ts';
import { FogLeap } from './fogLeap.ts';
import { IntakeLine } from './intakeLine.ts';
import { totalMass } from './liquidFuel.ts';
import { Metering, shares } from './metering.ts';
import { MouthCloud } from './mouthCloud.ts';
import { energyOf, massOf } from './parcel.ts';
import type { Parcels } from './parcels.ts';
import type { Pulse } from './pulse.ts';
import { type SprayLedger, sprayLedger } from './sprayLedger.ts';
import type { SprayOptions } from './sprayOptions.ts';
import { filmOf, NO_SUMS, parcelsOf, pulsesOf, type Sums, since } from './sprayParts.ts';
import { MixtureRecord, type SprayCycle, sprayCycle } from './sprayTally.ts';
import { outerShare } from './staging.ts';
import type { WallFilm } from './wallFilm.ts';

/** Longest spray step [s]; gas steps are gathered up to it. */
export const SPRAY_STEP = 1e-4;
/** Films and mixture count as settled within this share of the fuel [-]: sampling by parcels scatters
 * by 1 to 2 %. */
export const FILM_SETTLED = 0.02;
const CYCLE = 720;

export class Spray {
  readonly ledger: SprayLedger = sprayLedger();
  readonly line: IntakeLine;
  readonly film: WallFilm;
  readonly parcels: Parcels;
  readonly cloud: MouthCloud;
  readonly charge: ChargeGas;
  /** Figures of the last cycle. */
  cycle: SprayCycle | undefined;
  private readonly o: SprayOptions;
  private pulses: Pulse[];
  private mixture = new MixtureRecord();
  private metering = new Metering();
  private readonly leap: FilmLeap;
  private fog = new FogLeap();
  private waiting = 0;
  /** What had crossed valve and mouth at the last step. */
  private valveSums: Sums = NO_SUMS;
  private mouthSums: Sums = NO_SUMS;
  private vapourIn = 0;
  private gasIn = 0;
  private liquidIn = 0;
  private inventory = 0;
  /** Heat drawn and vapour given off in the ducts over the gas that went in, last cycle. */
  private heatRate = 0;
  private vapourRate = 0;
  private lostBefore = 0;
  /** Drops and vapour under way at the last closing [kg]. */
  private stock = 0;
  /** What films and fog were set by since the cycle began [kg]. */
  private adjusted = 0;
  private liquidBurning = false;

  constructor(options: SprayOptions) {
    const { mouth, intakeValve, fuel, gas } = options;
    this.o = options;
    this.line = new IntakeLine(mouth.duct, intakeValve.duct);
    this.cloud = new MouthCloud(mouth.area, options.sweptVolume);
    this.charge = new ChargeGas(options.cylinder, fuel, gas);
    this.film = filmOf(options, this.line);
    this.leap = new FilmLeap(this.film);
    this.parcels = parcelsOf(options, this);
    this.parcels.contacts.onValve = (mass) => {
      this.liquidIn += mass;
    };
    this.pulses = pulsesOf(options);
    this.meter(options.fullAir / options.airFuelRatio, 1);
  }

  /** Follows the gas for dt [s], at most a spray step, that ended at this cylinder's crank angle [deg]. */
  follow(dt: number, ownAngle: number): void {
    const { mouth, intakeValve } = this.o;
    this.waiting += dt;
    const valve = since(intakeValve.sums, this.valveSums);
    this.gasIn += valve.out - valve.in;
    this.vapourIn += valve.fuel;
    this.breathe(since(mouth.sums, this.mouthSums));
    this.valveSums = intakeValve.sums;
    this.mouthSums = mouth.sums;
    this.step(ownAngle);
  }

  /** Does the spray step that is due. */
  step(ownAngle: number): void {
    const dt = this.waiting;
    if (dt <= 0) return;
    this.waiting = 0;
    const { line, film, charge, parcels, ledger, o } = this;
    const { coupling } = o.injectors;
    line.read();
    charge.read();
    this.collect();
    const { open, close } = o.angles;
    const valveOpen = turn(ownAngle - open) < turn(close - open);
    for (const pulse of this.pulses) pulse.release(dt, ownAngle, parcels, ledger);
    parcels.step(dt, o.mouth.duct.endState('low')[1]!, valveOpen);
    const ranIn = totalMass(charge.wall.mass);
    film.step(dt, valveOpen, ledger, charge.wall, (k, vapour, energy) => {
      line.give(k, vapour, 0, energy, coupling, o.gas, ledger);
    });
    if (film.ranOff > 0) this.liquidIn += Math.max(totalMass(charge.wall.mass) - ranIn, 0);
    this.feelAtValve();
    line.apply(o.gas);
    this.mixture.add(this.gasIn, this.vapourIn, this.liquidIn);
    this.gasIn = 0;
    this.vapourIn = 0;
    this.liquidIn = 0;
    this.count(dt, valveOpen);
    if (this.liquidBurning && turn(ownAngle - close) > turn(o.cylinder.burnStart - close))
      this.finish();
  }

  /**
   * At valve closing: notes the cycle, meters the next. `air` [kg] is what is trapped. Returns the
   * liquid fuel in the cylinder [kg], which will burn too.
   */
  close(air: number, ownAngle: number): number {
    this.step(ownAngle);
    const { charge, ledger, o } = this;
    const needed = air / o.airFuelRatio;
    const liquid = this.parcels.held().inCylinder + totalMass(charge.wall.mass);
    const vapour = o.cylinder.contents.fuel;
    const withheld = this.withheld();
    const lost = ledger.lostMass - this.lostBefore;
    const { film, line, pulses, mixture, inventory, adjusted } = this;
    const { tally } = this.parcels.contacts;
    const growth = this.underWay() - this.stock;
    this.stock += growth;
    const { speed } = o;
    this.cycle = sprayCycle({
      ...{ needed, vapour, liquid, withheld, lost, speed, inventory, adjusted, growth },
      ...{ film, line, pulses, mixture, tally },
    });
    const { injected, delivered } = this.cycle;
    const kept = film.imbalance();
    const next = this.metering.next({ needed, injected, lost, delivered, kept });
    const inflow = this.mixture.total;
    this.heatRate = inflow > 0 ? Math.max(this.line.cooling / inflow, 0) : 0;
    this.vapourRate = inflow > 0 ? Math.max(this.line.evaporatedInAll() / inflow, 0) : 0;
    this.newCycle();
    this.meter(next, air / o.fullAir);
    charge.limited = false;
    this.liquidBurning = true;
    return liquid;
  }

  /** Goes on, at the same crank angle, from where another mesh of this line has come. */
  takeOver(from: Spray): void {
    this.film.takeOver(from.film);
    this.charge.takeOver(from.charge);
    this.cloud.takeOver(from.cloud);
    this.parcels.list = from.parcels.list;
    this.pulses = from.pulses;
    this.mixture = from.mixture;
    this.metering = from.metering.resume();
    this.fog = from.fog;
    this.leap.closings = from.leap.closings > 0 ? 1 : 0;
    this.heatRate = from.heatRate;
    this.vapourRate = from.vapourRate;
    this.liquidBurning = from.liquidBurning;
    this.stock = from.stock;
  }

  /** Between cycles: sets films and fog nearer to where they settle. Nothing else moves. */
  skipAhead(): void {
    const fog = this.fog.make();
    this.stock += fog;
    this.adjusted += this.leap.make() + fog;
  }

  /** Mass [kg] and energy [J] held as drops, films, cloud and liquid in the cylinder. */
  held(): { mass: number; energy: number } {
    const { mass: wall, energy: wallEnergy } = this.charge.wall;
    const parts = [this.parcels.held(), this.film.held(), this.cloud, this.cloud.back];
    return {
      mass: parts.reduce((sum, part) => sum + part.mass, totalMass(wall)),
      energy: parts.reduce((sum, part) => sum + part.energy, wallEnergy),
    };
  }

  /** Sets the books to zero; what was lost since the last closing stays known. */
  resetLedger(): void {
    this.lostBefore -= this.ledger.lostMass;
    this.valveSums = NO_SUMS;
    this.mouthSums = NO_SUMS;
    for (const key of Object.keys(this.ledger) as (keyof SprayLedger)[]) this.ledger[key] = 0;
  }

  /** Start of the burn: all liquid left in the cylinder joins the gas. */
  private finish(): void {
    const { charge, parcels, o } = this;
    charge.dryWalls(this.ledger);
    for (const parcel of parcels.list) {
      if (parcel.where !== 'cylinder') continue;
      charge.give(massOf(parcel), energyOf(o.fuel, parcel), {
        coupling: o.injectors.coupling,
        ledger: this.ledger,
      });
      parcel.where = 'gone';
    }
    parcels.list = parcels.list.filter(({ where }) => where !== 'gone');
    this.liquidBurning = false;
    charge.limited = true;
  }

  /** Effects that are felt at the valve only, in proportion to what flows in. */
  private feelAtValve(): void {
    const { heat, vapour } = this.o.injectors.coupling;
    if (this.gasIn <= 0 || (heat !== 'valve' && vapour !== 'valve')) return;
    const drawn = heat === 'valve' ? this.heatRate * this.gasIn : 0;
    const joined = vapour === 'valve' ? this.vapourRate * this.gasIn : 0;
    this.charge.atValve(drawn, joined, this.ledger);
  }

  /** Vapour out of the mouth, and back in. */
  private breathe(passed: Sums): void {
    const { cloud, ledger, o } = this;
    const { mouth } = o;
    const perVolume = 1 / mouth.duct.endState('low')[0]!;
    if (passed.out > 0) {
      const vapour = Math.max(passed.fuel, 0);
      const energy = vapour * o.gas.internalEnergy(o.outside.temperature, 0, 1);
      cloud.out((passed.out * perVolume) / mouth.area, vapour, energy, ledger);
    }
    if (passed.in > 0) cloud.in(passed.in * perVolume);
  }

  /** What has come back through the mouth goes to the first cell. */
  private collect(): void {
    const { back } = this.cloud;
    if (back.mass === 0 && back.energy === 0) return;
    this.line.takeBack(back.mass, back.energy);
    back.mass = 0;
    back.energy = 0;
  }

  private meter(fuelMass: number, load: number): void {
    const { injectors, speed } = this.o;
    shares(injectors, outerShare(injectors.staging, speed, load)).forEach((share, j) => {
      this.pulses[j]!.command(share * Math.max(fuelMass, 0));
    });
  }

  /** Drops and vapour between nozzle and valve [kg]. */
  private underWay(): number {
    const { mass, inCylinder } = this.parcels.held();
    return mass - inCylinder + this.line.vapourHeld() + this.cloud.mass;
  }

  private count(dt: number, valveOpen: boolean): void {
    const { mass, inCylinder } = this.parcels.held();
    const liquid = valveOpen ? mass : mass - inCylinder;
    const inCharge = valveOpen ? this.o.cylinder.contents.fuel : 0;
    this.inventory += dt * (liquid + this.line.vapourHeld() + inCharge + this.cloud.mass);
  }

  /** Fuel that went as vapour but was kept from the gas since the last closing [kg]. */
  private withheld(): number {
    if (this.o.injectors.coupling.vapour !== 'off') return 0;
    return this.line.evaporatedInAll() + this.charge.withheld;
  }

  private newCycle(): void {
    const { film, line, parcels, ledger } = this;
    this.leap.closings++;
    this.fog.note(parcels.list);
    film.newCycle();
    line.newCycle();
    this.charge.withheld = 0;
    parcels.newCycle();
    this.mixture.newCycle();
    this.inventory = 0;
    this.adjusted = 0;
    this.lostBefore = ledger.lostMass;
    for (const pulse of this.pulses) pulse.newCycle();
  }
}

function turn(angle: number): number {
  const turned = angle % CYCLE;
  return turned < 0 ? turned + CYCLE : turned;
}
