/** From the runs of the placements to a share against speed, a switch-over speed and the reason. */
import type { InjectorSpecification } from '../specification.ts';
import { isFailure, type PointOutcome } from '../sweep/runner.ts';
import { mostShare } from './pulseWidth.ts';

export type PlacementReason =
  /** The outer injector gains more than the uncertainty at every speed, or from some speed on. */
  | 'pays-everywhere'
  | 'pays-from'
  /** It gains in a band in the middle, and not at the top. */
  | 'pays-between'
  /** It gains somewhere, but nowhere more than the uncertainty: stay near the valve. */
  | 'below-uncertainty'
  /** It loses at every speed. */
  | 'never-pays';

export interface PlacementChoice {
  /** Share of the outer injector at each speed [-]. */
  share: number[];
  /** Volumetric efficiency of that choice less that of `near` [-]; undefined where a run failed. */
  gain: (number | undefined)[];
  /** Speed at which the outer injector comes in, and goes out again below the top [rpm]. */
  switchOver?: number;
  switchBack?: number;
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

/**
 * At each speed the least outer share whose run comes within the uncertainty of the best: walls stay
 * dry and nothing hangs in front of the mouth where that gains nothing.
 */
export function placementChoice(input: ChoiceInput): PlacementChoice {
  const { speeds, uncertainty } = input;
  const picks = speeds.map((_, i) => pick(input, i));
  const gains = speeds.map((_, i) => bestGain(input, i));
  const on = picks.map(({ share }) => share > 0);
  const known = gains.filter((gain): gain is number => gain !== undefined);
  const first = on.indexOf(true);
  const last = on.lastIndexOf(true);
  const top = speeds.length - 1;
  return {
    share: picks.map(({ share }) => share),
    gain: picks.map(({ gain }) => gain),
    ...(first > 0 && { switchOver: crossing(speeds, gains, first - 1, uncertainty.value) }),
    ...(last >= 0 &&
      last < top && { switchBack: crossing(speeds, gains, last, uncertainty.value) }),
    reason: reasonOf(first, last, top, known, uncertainty.value),
    limitedByFlow: picks.some(({ limited }) => limited),
  };
}

function reasonOf(
  first: number,
  last: number,
  top: number,
  gains: number[],
  uncertainty: number,
): PlacementReason {
  if (first < 0) {
    return gains.some((gain) => gain > -uncertainty) ? 'below-uncertainty' : 'never-pays';
  }
  if (last < top) return 'pays-between';
  return first === 0 ? 'pays-everywhere' : 'pays-from';
}

function pick(input: ChoiceInput, i: number) {
  const { speeds, near, stagedShare, uncertainty, outer } = input;
  const base = near[i]!;
  if (isFailure(base)) return { share: 0, gain: undefined, limited: false };
  const need = base.spray?.needed ?? 0;
  const cap = need > 0 ? mostShare(outer, need, speeds[i]!) : 1;
  const options = [
    { share: 0, gain: 0 },
    { share: stagedShare[i]!, gain: gainOver(base.volumetricEfficiency, input.both[i]!) },
    { share: 1, gain: gainOver(base.volumetricEfficiency, input.above[i]!) },
  ].filter((option): option is { share: number; gain: number } => option.gain !== undefined);
  const best = Math.max(...options.map(({ gain }) => gain));
  const enough = options
    .filter(({ gain }) => gain >= best - uncertainty.value)
    .reduce((a, b) => (b.share < a.share ? b : a));
  const share = Math.min(enough.share, cap);
  // Between runs the gain is taken to grow with the share.
  const gain = enough.share > 0 ? (enough.gain * share) / enough.share : 0;
  return { share, gain, limited: share < enough.share };
}

/** The greater gain of the two ways to use the outer injector [-]. */
function bestGain({ near, above, both }: ChoiceInput, i: number): number | undefined {
  const base = near[i]!;
  if (isFailure(base)) return undefined;
  const gains = [above[i]!, both[i]!]
    .map((point) => gainOver(base.volumetricEfficiency, point))
    .filter((gain): gain is number => gain !== undefined);
  return gains.length > 0 ? Math.max(...gains) : undefined;
}

function gainOver(base: number, point: PointOutcome): number | undefined {
  return isFailure(point) ? undefined : point.volumetricEfficiency - base;
}

/** Speed between points i and i + 1 at which the gain passes the uncertainty [rpm]. */
function crossing(
  speeds: readonly number[],
  gains: readonly (number | undefined)[],
  i: number,
  level: number,
): number {
  const [a, b] = [gains[i], gains[i + 1]];
  const [from, to] = [speeds[i]!, speeds[i + 1]!];
  if (a === undefined || b === undefined || a === b) return to;
  const at = Math.min(Math.max((level - a) / (b - a), 0), 1);
  return from + at * (to - from);
}
