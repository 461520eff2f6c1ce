/**
 * The curves of samples, read where the answer was resolved: between the speeds computed each is smooth
 * (smooth.ts), and what its last halvings move is known of every sample.
 */
import { type Estimate, quantile, shareOf } from './sampleFigures.ts';
import { smoothAt } from './smooth.ts';
import type { Floor, Target } from './target.ts';
import { type TradeOff, tradeOff } from './tradeOff.ts';

/** At which speeds samples are computed and read [rpm], each rising. */
export interface Sampling {
  /** Computed. */
  speeds: readonly number[];
  /** Close together: where curves are read. */
  read: readonly number[];
  /** Of those computed, what was there before the last halvings. */
  before: readonly number[];
}

/** Two curves on the same engine, a value a speed computed. */
export interface Pair {
  ours: readonly number[];
  theirs: readonly number[];
}

/** Speeds computed, and how they are read; straight between them where that is not said. */
export interface Read {
  speeds: readonly number[];
  sampling?: Sampling;
}

/** Speeds at which curves are read [rpm]. */
export const readAt = ({ speeds, sampling }: Read): readonly number[] => sampling?.read ?? speeds;

/** A curve where it is read. */
export function reading({ speeds, sampling }: Read, values: readonly number[]): readonly number[] {
  return sampling ? smoothAt(speeds, values, sampling.read) : values;
}

/** The same at the speeds that lie within others. */
export function within({ sampling }: Read, speeds: readonly number[]): Read {
  if (!sampling) return { speeds };
  const [first, last] = [speeds[0]!, speeds.at(-1)!];
  const read = sampling.read.filter((speed) => speed >= first && speed <= last);
  return { speeds, sampling: { ...sampling, read } };
}

/** The first curve of a pair against the second. */
export function weighed(asked: Read, { ours, theirs }: Pair, target: Target): TradeOff {
  return tradeOff(readAt(asked), reading(asked, ours), reading(asked, theirs), target);
}

/** How often a floor holds. */
export interface FloorHeld {
  floor: Floor;
  held: Estimate;
}

export function floorsHeld(trades: readonly TradeOff[], { floors = [] }: Target): FloorHeld[] {
  return floors.map((floor, k) => {
    const held = trades.filter((one) => one.floors[k]!.marginPercent >= 0);
    return { floor, held: shareOf(held.length, trades.length) };
  });
}

/** What the last halvings moved: of nineteen samples in twenty no more than the gain and the worst loss in the bands [points]. */
export interface Moved {
  gain: number;
  loss: number;
  /** Samples in which a floor changed its verdict. */
  floors: number;
}

const MOST = 0.95;

/** `trades`: the same pairs as weighed. */
export function movedBy(
  { speeds, sampling }: Required<Read>,
  pairs: readonly Pair[],
  trades: readonly TradeOff[],
  target: Target,
): Moved {
  const kept = new Set(sampling.before);
  const thinned = (values: readonly number[]) => values.filter((_, j) => kept.has(speeds[j]!));
  const asked = { speeds: thinned(speeds), sampling };
  const earlier = pairs.map(({ ours, theirs }) => {
    return weighed(asked, { ours: thinned(ours), theirs: thinned(theirs) }, target);
  });
  const most = (of: 'gainPercent' | 'bandLossPercent') => {
    const moves = trades.map((one, i) => Math.abs(one[of] - earlier[i]![of]));
    return quantile(moves, MOST).value;
  };
  const holds = ({ floors }: TradeOff) => floors.map(({ marginPercent }) => marginPercent >= 0);
  const changed = trades.filter((one, i) => String(holds(one)) !== String(holds(earlier[i]!)));
  return { gain: most('gainPercent'), loss: most('bandLossPercent'), floors: changed.length };
}
