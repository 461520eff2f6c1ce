/**
 * How much fog stands in front of a mouth once it is settled, by a life table of what cycles do to it: what
 * came i closings ago keeps a share s_i of its mass until the next one, so in the end
 *
 *   M_0 = what a cycle brings,  M_i+1 = s_i M_i      [kg]
 *
 * and the oldest stands for all that would be older still, 1 / (1 - s) times itself with the share s that the older
 * half keeps. Fog that neither grows nor shrinks stays as it is: this has the fixed point of the cycle itself,
 * whatever the cycle did, and only the way there is short. Source: life table, as for any stock; our own.
 */
import { massOf, type Parcel } from './parcel.ts';

/** Closings from one leap to the next: between them fog and mixture answer to the last one. Our own choice, no source. */
const EVERY = 4;
/** Most of the older half that is taken to stay until the next closing [-]. Our own choice, no source. */
const MOST_KEPT = 0.99;

export class FogLeap {
  /** Closings since the last leap. */
  private closings = 0;
  /** Closings since each parcel came; what stands there, and stood at the closing before, by those [kg]. */
  private ages: ReadonlyMap<Parcel, number> = new Map();
  private now: readonly number[] = [];
  private stood: readonly number[] = [];

  /** Notes at a closing what stands there. */
  note(parcels: readonly Parcel[]): void {
    const fog = parcels.filter(({ where, s }) => where === 'intake' && s < 0);
    this.ages = new Map(fog.map((parcel) => [parcel, (this.ages.get(parcel) ?? -1) + 1]));
    this.stood = this.now;
    this.now = massByAge(this.ages);
    this.closings++;
  }

  /** Where a leap is due, sets the fog just noted to what it would come to; gives the mass that joins [kg]. */
  make(): number {
    if (this.closings < EVERY) return 0;
    this.closings = 0;
    const { now } = this;
    this.now = this.settled();
    for (const [parcel, age] of this.ages)
      if (now[age]! > 0) parcel.count *= this.now[age]! / now[age]!;
    return sum(this.now) - sum(now);
  }

  /** What would stand there in the end, by age [kg]. */
  private settled(): number[] {
    const { now, stood } = this;
    const masses = [...now];
    for (let age = 1; age < now.length; age++)
      masses[age] = stood[age - 1]! > 0 ? (now[age]! / stood[age - 1]!) * masses[age - 1]! : 0;
    const middle = Math.ceil(now.length / 2);
    const kept = sum(now.slice(middle)) / sum(stood.slice(middle - 1));
    if (kept > 0) masses[masses.length - 1]! /= 1 - Math.min(kept, MOST_KEPT);
    return masses;
  }
}

const sum = (masses: readonly number[]) => masses.reduce((all, mass) => all + mass, 0);

function massByAge(ages: ReadonlyMap<Parcel, number>): number[] {
  const masses = new Array<number>(Math.max(-1, ...ages.values()) + 1).fill(0);
  for (const [parcel, age] of ages) masses[age]! += massOf(parcel);
  return masses;
}
