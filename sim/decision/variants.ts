/**
 * Engines that differ in one key of the scenario, or in two, weighed against the engine as it is. A
 * condition of the day is no choice: it is never recommended, what it costs is.
 */
import { combinations } from '../combinations.ts';
import type { PointOutcome } from '../sweep/runner.ts';
import type { LengthCurve } from '../sweep/sweep.ts';
import { bestBetween } from './bestBetween.ts';
import { bestOf } from './choice.ts';
import { paretoSet } from './pareto.ts';
import type { Target } from './target.ts';
import type { TradeOff, WeighedLength } from './tradeOff.ts';

/** A key of the scenario and the values it takes in turn. */
export interface VariedKey {
  path: string;
  /** In the unit inside the program. */
  values: readonly number[];
  /** The same in the words of a scenario. */
  texts: readonly string[];
  /** Whether it is a condition, not a choice. */
  condition?: boolean;
}

/** One combination of values. */
export type WeighedVariant = TradeOff & {
  /** Where it is known between the speeds of the sweep; absent where none is. */
  known?: WeighedLength['known'];
  /** All its points. */
  curve: LengthCurve;
  /** What the scenario would say, one text a key. */
  texts: string[];
  /** In the unit inside the program, one a key. */
  values: number[];
  /** At the speeds of the sweep. */
  outcomes: PointOutcome[];
};

/** For one value of the first key, the best of the second. */
export interface BestSecond {
  text: string;
  /** Best of the values tried, with its mean score. */
  best: WeighedVariant;
  /** Where the parabola through the best and its neighbours tops, in the unit inside the program. */
  between: number;
}

/** What one value of a condition leaves in the bands, with the best choice under it. */
export interface Cost {
  text: string;
  bandMean: number;
  /** Against the kindest of its values [%]. */
  changePercent: number;
}

export interface VariantStudy {
  keys: readonly VariedKey[];
  speeds: number[];
  target: Target;
  baseline: PointOutcome[];
  /** In the order of the engines. */
  weighed: WeighedVariant[];
  /** Absent where a condition is varied. */
  recommended?: WeighedVariant;
  /** Dearest first; empty where a condition is varied. */
  pareto: WeighedVariant[];
  /** Top of the parabola along a single key; a run there would confirm it. */
  between?: number;
  /** How the best of the second key moves with the first, where there are two and it is a choice. */
  bestSecond?: BestSecond[];
  /** What the values of a condition cost, one entry a value of the first key. */
  costs?: Cost[];
}

/**
 * @param keys one key, or two; a condition beside a choice comes first
 * @param curves one a combination of values, weighed, the last key running fastest
 * @param speeds rising [rpm]
 */
export function weighVariants(
  keys: readonly VariedKey[],
  curves: readonly (TradeOff & Pick<WeighedVariant, 'known' | 'curve'>)[],
  baseline: readonly PointOutcome[],
  speeds: readonly number[],
  target: Target,
): VariantStudy {
  const places = combinations(keys.map((key) => key.values.length));
  const weighed = curves.map((one, i) => ({
    texts: keys.map((key, k) => key.texts[places[i]![k]!]!),
    values: keys.map((key, k) => key.values[places[i]![k]!]!),
    outcomes: one.curve.outcomes,
    ...one,
  }));
  const [first, second] = keys;
  const bestSecond =
    keys.length === 2 && !second!.condition ? bestSeconds(first!, second!, weighed) : undefined;
  const conditions = keys.some(({ condition }) => condition === true);
  return {
    keys,
    speeds: [...speeds],
    target,
    baseline: [...baseline],
    weighed,
    ...(!conditions && { recommended: weighed[bestOf(weighed)]! }),
    pareto: conditions ? [] : paretoSet(weighed.filter(({ known = 'all' }) => known === 'all')),
    ...(keys.length === 1 && !conditions && { between: topOf(first!, weighed) }),
    ...(bestSecond && { bestSecond }),
    ...(conditions && { costs: costsOf(bestSecond?.map(({ best }) => best) ?? weighed) }),
  };
}

/** @param variants one a value of the condition, or one a combination of two */
function costsOf(variants: readonly WeighedVariant[]): Cost[] {
  const kindest = Math.max(...variants.map(({ bandMean }) => bandMean).filter(Number.isFinite));
  return variants.map(({ texts, bandMean }) => ({
    text: texts.join(', '),
    bandMean,
    changePercent: 100 * (bandMean / kindest - 1),
  }));
}

function bestSeconds(
  first: VariedKey,
  second: VariedKey,
  weighed: readonly WeighedVariant[],
): BestSecond[] {
  const width = second.values.length;
  return first.texts.map((text, i) => {
    const row = weighed.slice(i * width, (i + 1) * width);
    return { text, best: row[bestOf(row)]!, between: topOf(second, row) };
  });
}

/** Top of the parabola along the key, whatever way its values run. */
function topOf(key: VariedKey, row: readonly WeighedVariant[]): number {
  const order = key.values.map((_, i) => i).sort((a, b) => key.values[a]! - key.values[b]!);
  return bestBetween(
    order.map((i) => key.values[i]!),
    order.map((i) => row[i]!.bandMean),
  );
}
