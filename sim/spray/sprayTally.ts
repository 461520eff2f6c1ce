/** What a spray did over one cycle, and the figures drawn from it. */
import type { IntakeLine } from './intakeLine.ts';
import type { ParcelTally } from './parcelContacts.ts';
import type { Pulse } from './pulse.ts';
import { openTime } from './spraySource.ts';
import type { WallFilm } from './wallFilm.ts';

/** Bins of equal inflow over one induction. */
const BINS = 20;

/** Air and fuel through the valve, by the order of inflow. */
export class MixtureRecord {
  /** Gas that went in during the last cycle [kg], which sets the bins of this one. */
  private lastInflow = 0;
  private inflow = 0;
  private air = new Float64Array(BINS);
  private fuel = new Float64Array(BINS);

  /** Gas [kg] of which `vapour` [kg] is fuel, and liquid fuel [kg], into the cylinder; back-flow is left out. */
  add(gas: number, vapour: number, liquid: number): void {
    const share = this.lastInflow > 0 ? this.inflow / this.lastInflow : 0;
    const bin = Math.min(BINS - 1, (share * BINS) | 0);
    this.fuel[bin]! += liquid;
    if (gas <= 0) return;
    this.inflow += gas;
    this.air[bin]! += gas - vapour;
    this.fuel[bin]! += vapour;
  }

  /** Fuel over air of the first and the last fifth of the induction, over that of the whole [-]. */
  spread(): { early: number; late: number } {
    const ratio = (from: number, to: number) => {
      const air = this.air.slice(from, to).reduce((sum, x) => sum + x, 0);
      return air > 0 ? this.fuel.slice(from, to).reduce((sum, x) => sum + x, 0) / air : 0;
    };
    const whole = ratio(0, BINS);
    const fifth = BINS / 5;
    if (!(whole > 0)) return { early: 0, late: 0 };
    return { early: ratio(0, fifth) / whole, late: ratio(BINS - fifth, BINS) / whole };
  }

  /** Gas that went in so far [kg]. */
  get total(): number {
    return this.inflow;
  }

  newCycle(): void {
    this.lastInflow = this.inflow;
    this.inflow = 0;
    this.air.fill(0);
    this.fuel.fill(0);
  }
}

/** Figures of a spray over one cycle. */
export interface SprayCycle {
  /** Fuel injected [kg]. */
  injected: number;
  /** Fuel in the cylinder at valve closing, vapour and liquid [kg]. */
  delivered: number;
  /** Fuel that the mixture asks for [kg]. */
  needed: number;
  /** Vapour in the cylinder at closing over the fuel delivered [-]. */
  evaporatedShare: number;
  /** Vapour given off upstream of the valve over the fuel injected [-]. */
  evaporatedUpstream: number;
  /** Share of the outermost injector [-]. */
  outerShare: number;
  /** Each injector's pulse, dead time included [s], in the order of the list. */
  pulse: number[];
  /** Mean time from nozzle to valve closing of what is not film [s]. */
  residenceTime: number;
  /** Fuel over air early and late in the induction, over the mean [-]. */
  mixture: { early: number; late: number };
  /** Film on the walls [kg], share of the fuel that lands on them [-], time constant [s]. */
  filmMass: number;
  filmShare: number;
  filmTime: number;
  /** How far deposit and removal of the films differ, over the fuel injected [-]. */
  filmImbalance: number;
  /** By how much drops and vapour under way grew or shrank, over the fuel injected [-]. */
  stockGrowth: number;
  /** What films and fog were set by from outside in that cycle or between it and the one before, over the fuel injected [-]. */
  filmAdjusted: number;
  /** Drops blown out of the mouth, and those of them that came back, over the fuel injected [-]. */
  standOff: number;
  returned: number;
  /** Drops that missed the mouth, and all fuel lost for good, over the fuel injected [-]. */
  missed: number;
  lost: number;
  /** Vapour given off over the fuel injected [-], by distance in front of the valve [m], falling. */
  along: { distance: number[]; share: number[] };
}

/** What the figures of a cycle are drawn from. */
export interface CycleParts {
  /** Fuel needed; in the cylinder as vapour and as liquid; kept from the gas; lost [kg]. */
  needed: number;
  vapour: number;
  liquid: number;
  withheld: number;
  lost: number;
  /** Speed [rpm]. */
  speed: number;
  /** Fuel under way, summed over the cycle [kg s]. */
  inventory: number;
  /** What films and fog were set by from outside [kg]. */
  adjusted: number;
  /** By how much drops and vapour under way grew [kg]. */
  growth: number;
  film: WallFilm;
  line: IntakeLine;
  pulses: readonly Pulse[];
  mixture: MixtureRecord;
  tally: ParcelTally;
}

export function sprayCycle(parts: CycleParts): SprayCycle {
  const { needed, vapour, liquid, withheld, film, line, pulses, tally, inventory } = parts;
  const injected = pulses.reduce((sum, pulse) => sum + pulse.given, 0);
  const over = (mass: number) => (injected > 0 ? mass / injected : 0);
  const cycleTime = 120 / parts.speed;
  const filmMass = film.held().mass;
  const delivered = vapour + liquid + withheld;
  const left = film.evaporated + film.ranOff;
  return {
    injected,
    delivered,
    needed,
    evaporatedShare: delivered > 0 ? (vapour + withheld) / delivered : 0,
    evaporatedUpstream: over(line.evaporatedInAll()),
    outerShare: over(pulses[pulses.length - 1]!.given),
    pulse: pulses.map(({ injector, given }) =>
      given > 0 ? openTime(injector, given) + injector.deadTime : 0,
    ),
    // Little's law: what is under way over what passes in a unit of time.
    residenceTime: injected > 0 ? inventory / injected : 0,
    mixture: parts.mixture.spread(),
    filmMass,
    filmShare: over(film.deposited),
    filmTime: left > 0 ? (filmMass / left) * cycleTime : 0,
    filmImbalance: over(Math.abs(film.imbalance())),
    stockGrowth: over(Math.abs(parts.growth)),
    filmAdjusted: over(Math.abs(parts.adjusted)),
    standOff: over(tally.blownOut),
    returned: over(tally.cameBack),
    missed: over(tally.missed),
    lost: over(parts.lost),
    along: {
      distance: Array.from({ length: line.cells }, (_, k) => line.length - line.middle(k)),
      share: Array.from(line.evaporated, over),
    },
  };
}
