/**
 * One injector at work: a pulse a cycle, cut into parcels of like mass.
 *
 * A cycle is counted from the angle at which the pulse starts, or ends, so that it is neither missed
 * nor given twice when its length changes. Each pulse makes the same drops as the one before.
 */
import { cube } from '../elementary/powers.ts';
import type { InjectorSpecification } from '../injectors.ts';
import { type LiquidFuel, liquidEnergy } from './liquidFuel.ts';
import type { Parcels } from './parcels.ts';
import type { SprayLedger } from './sprayLedger.ts';
import { evenlySpread, parcelVelocity, rosinRammler } from './spraySource.ts';

export interface PulseOptions {
  fuel: LiquidFuel;
  /** Speed of the jet [m/s]. */
  speed: number;
  /** Temperature of the fuel [K]. */
  temperature: number;
  /** Parcels a pulse [-]. */
  parcels: number;
  /** Place of the nozzle from the acoustic mouth [m]. */
  s: number;
  /** Engine speed [rpm]. */
  rpm: number;
}

const CYCLE = 720;

export class Pulse {
  readonly injector: InjectorSpecification;
  /** Fuel given since the cycle began [kg]. */
  given = 0;
  private readonly o: PulseOptions;
  private readonly unitMass: Float64Array;
  private readonly size: (volume: number) => number;
  private ordered = 0;
  private left = 0;
  private gathered = 0;
  /** Nothing is given before the stated angle has passed once. */
  private fired = true;
  private lastAngle = 0;
  /** Of the pulse under way [kg]: the next may be ordered while it lasts. */
  private parcelMass = 0;
  private parcelCount = 0;

  constructor(injector: InjectorSpecification, options: PulseOptions) {
    this.injector = injector;
    this.o = options;
    const { fuel } = options;
    this.size = rosinRammler(injector.sauterDiameter, injector.spread);
    // One cubic metre of the fresh liquid, to be scaled to a drop.
    this.unitMass = Float64Array.from(fuel.parts, ({ share }) => share * fuel.density);
  }

  /** Sets the next pulse's fuel [kg]; no more than the injector can give in a cycle. */
  command(fuelMass: number): void {
    this.ordered = Math.min(fuelMass, (this.injector.flow * 120) / this.o.rpm);
  }

  /** Starts the books of a new cycle. */
  newCycle(): void {
    this.given = 0;
  }

  /** Gives what is due in dt [s] up to this cylinder's crank angle [deg]. */
  release(dt: number, ownAngle: number, parcels: Parcels, ledger: SprayLedger): void {
    const angle = since(ownAngle, this.injector.timing.angle);
    if (angle < this.lastAngle) this.fired = false;
    this.lastAngle = angle;
    if (!this.fired && angle >= this.startAngle()) {
      this.fired = true;
      this.left += this.ordered;
      this.parcelMass = this.left / this.o.parcels;
      this.parcelCount = 0;
    }
    if (this.left <= 0) return;
    const mass = Math.min(this.left, this.injector.flow * dt);
    this.left -= mass;
    this.gathered += mass;
    if (this.gathered >= this.parcelMass || this.left <= 0) {
      const count = Math.max(1, Math.floor(this.gathered / this.parcelMass));
      const each = this.gathered / count;
      for (let j = 0; j < count; j++) this.launch(each, parcels, ledger);
      this.gathered = 0;
    }
  }

  /** Angle at which the pulse starts, counted from its stated angle [deg]. */
  private startAngle(): number {
    const { timing, flow } = this.injector;
    return timing.edge === 'end' ? CYCLE - (this.ordered / flow) * 6 * this.o.rpm : 0;
  }

  private launch(mass: number, parcels: Parcels, ledger: SprayLedger): void {
    const { injector, o, unitMass } = this;
    const k = this.parcelCount++;
    const d = this.size(evenlySpread(k, 0));
    const volume = (Math.PI / 6) * cube(d);
    const drop = { mass: unitMass.map((m) => m * volume), T: o.temperature };
    const one = drop.mass.reduce((sum, m) => sum + m, 0);
    const [u, v, w] = parcelVelocity(injector, o.speed, k);
    const count = mass / one;
    parcels.list.push({
      where: 'intake',
      s: o.s,
      y: injector.offset,
      z: 0,
      u,
      v,
      w,
      drop,
      count,
      k,
      chances: 0,
      blownOut: false,
    });
    this.given += mass;
    ledger.injectedMass += mass;
    ledger.injectedEnergy +=
      count * liquidEnergy(o.fuel, drop.mass, drop.T) + 0.5 * mass * (u * u + v * v + w * w);
  }
}

function since(angle: number, from: number): number {
  const turned = (angle - from) % CYCLE;
  return turned < 0 ? turned + CYCLE : turned;
}
