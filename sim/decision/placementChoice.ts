/**
 * From the runs of the placements to a share against speed, a switch-over speed and the reason.
 *
 * Colder, heavier gas shifts the ripple of the filling curve, so that the outer injector gains at
 * one speed what it loses at the next. A control unit switches once. So one switch-over speed is
 * sought from which on, up to the highest speed, the gains add up to the most; it stands if their
 * mean exceeds its uncertainty,
 *
 *   u^2 = u_model^2 + s^2 / n      s scatter of the gains over all speeds, n speeds in the range
 *
 * the second part being what a ripple sampled at n speeds leaves open in a mean.
 */
import { hypot, square } from '../elementary/powers.ts';
import type { InjectorSpecification } from '../injectors.ts';
import { isFailure, type PointOutcome } from '../sweep/runner.ts';
import { mostShare } from './pulseWidth.ts';

export type PlacementReason =
  /** The outer injector gains more than the uncertainty over all speeds, or from some speed on. */
  | 'pays-everywhere'
  | 'pays-from'
  /** It gains, but less than the uncertainty: stay near the valve. */
  | 'below-uncertainty'
  /** It gains over no range up to the highest speed. */
  | 'never-pays';

export interface PlacementChoice {
  /** Share of the outer injector at each speed [-]. */
  share: number[];
  /** Volumetric efficiency of that choice less that of `near` [-]; undefined where a run failed. */
  gain: (number | undefined)[];
  /** Lowest speed computed at which the outer injector is used [rpm]. */
  switchOver?: number;
  /** Mean gain from there on, or of the best range that did not suffice [-], and its uncertainty. */
  meanGain: number;
  meanUncertainty: number;
  /** Start of the best range, whether it sufficed or not [rpm]; absent where there is none. */
  bestStart?: number;
  /** Speeds in its range at which it loses more than the uncertainty [rpm]. */
  losesAt: number[];
  reason: PlacementReason;
  /** Whether the outer injector is too small to give its share alone at some speed. */
  limitedByFlow: boolean;
}

export interface ChoiceInput {
  speeds: readonly number[];
  near: readonly PointOutcome[];
  above: readonly PointOutcome[];
  both: readonly PointOutcome[];
  stagedShare: readonly number[];
  uncertainty: { value: number };
  outer: InjectorSpecification;
}

/** One way to use the outer injector: its share and gain at each speed. */
interface Usage {
  share: number[];
  gain: (number | undefined)[];
  limited: boolean;
}

/** A usage from speed number `start` on. */
interface Range {
  usage: Usage;
  start: number;
  sum: number;
  mean: number;
  /** Speeds at which the outer injector gives anything. */
  count: number;
}

export function placementChoice(input: ChoiceInput): PlacementChoice {
  const { speeds, above, both, stagedShare, uncertainty } = input;
  const usages = [
    usageOf(input, both, stagedShare),
    usageOf(
      input,
      above,
      speeds.map(() => 1),
    ),
  ];
  const ranges = usages
    .flatMap((usage) => speeds.map((_, start) => rangeOf(usage, start)))
    .filter(({ count }) => count > 0);
  const doubt = (range: Range) =>
    hypot(uncertainty.value, scatterOf(range.usage) / Math.sqrt(range.count));
  const enough = ranges.filter((range) => range.mean > doubt(range));
  // Of equal sums the later start: nothing is wetted for nothing.
  const best = (list: Range[]) =>
    list.reduce<Range | undefined>((a, b) => (a && a.sum > b.sum ? a : b), undefined);
  const chosen = best(enough);
  if (!chosen) {
    const range = best(ranges);
    return stayNear(input, range, range ? doubt(range) : uncertainty.value);
  }
  const { usage, start, mean } = chosen;
  const on = (i: number) => i >= start && usage.share[i]! > 0;
  const gain = usage.gain.map((value, i) => (on(i) ? value : 0));
  return {
    share: usage.share.map((share, i) => (on(i) ? share : 0)),
    gain,
    switchOver: speeds[speeds.findIndex((_, i) => on(i))]!,
    meanGain: mean,
    meanUncertainty: doubt(chosen),
    bestStart: speeds[start]!,
    losesAt: speeds.filter((_, i) => (gain[i] ?? 0) < -uncertainty.value),
    reason: on(0) ? 'pays-everywhere' : 'pays-from',
    limitedByFlow: usage.limited,
  };
}

function stayNear(
  { speeds, near }: ChoiceInput,
  range: Range | undefined,
  uncertainty: number,
): PlacementChoice {
  const meanGain = range?.mean ?? 0;
  return {
    share: speeds.map(() => 0),
    gain: near.map((point) => (isFailure(point) ? undefined : 0)),
    meanGain,
    meanUncertainty: uncertainty,
    ...(range && { bestStart: speeds[range.start]! }),
    losesAt: [],
    reason: meanGain > 0 ? 'below-uncertainty' : 'never-pays',
    limitedByFlow: false,
  };
}

/** Standard deviation of the gains over all speeds at which the outer injector gives anything [-]. */
function scatterOf({ gain, share }: Usage): number {
  const known = gain.filter((g, i): g is number => g !== undefined && share[i]! > 0);
  if (known.length < 2) return 0;
  const mean = known.reduce((sum, g) => sum + g, 0) / known.length;
  const squares = known.reduce((sum, g) => sum + square(g - mean), 0);
  return Math.sqrt(squares / (known.length - 1));
}

/** Shares held to what the outer injector can flow; between runs gain is taken to grow with share. */
function usageOf(
  { speeds, near, outer }: ChoiceInput,
  points: readonly PointOutcome[],
  wanted: readonly number[],
): Usage {
  const caps = speeds.map((speed, i) => cap(outer, near[i]!, speed));
  const share = wanted.map((value, i) => Math.min(value, caps[i]!));
  return {
    share,
    gain: points.map((point, i) => {
      const base = near[i]!;
      if (isFailure(point) || isFailure(base)) return undefined;
      const full = point.volumetricEfficiency - base.volumetricEfficiency;
      return wanted[i]! > 0 ? (full * share[i]!) / wanted[i]! : 0;
    }),
    limited: share.some((value, i) => value < wanted[i]!),
  };
}

function cap(outer: InjectorSpecification, near: PointOutcome, speed: number): number {
  const need = isFailure(near) ? 0 : (near.spray?.needed ?? 0);
  return need > 0 ? mostShare(outer, need, speed) : 1;
}

/** Sum and mean of the known gains from `start` on, where the outer injector gives anything. */
function rangeOf(usage: Usage, start: number): Range {
  const gains = usage.gain.filter(
    (gain, i): gain is number => i >= start && gain !== undefined && usage.share[i]! > 0,
  );
  const sum = gains.reduce((total, gain) => total + gain, 0);
  const count = gains.length;
  return { usage, start, sum, mean: count > 0 ? sum / count : 0, count };
}
