/**
 * Beyond length: engines that differ in one key of the scenario, or in two, each at all speeds and
 * weighed against the engine as it is.
 */
import { combinations } from '../../combinations.ts';
import { bestBetween } from '../../decision/bestBetween.ts';
import { bestOf } from '../../decision/choice.ts';
import { paretoSet } from '../../decision/pareto.ts';
import { scores, type Target } from '../../decision/target.ts';
import { type TradeOff, tradeOff } from '../../decision/tradeOff.ts';
import type { EngineSpecification } from '../../specification.ts';
import type { PointOutcome, PointRunner } from '../../sweep/runner.ts';
import { type SweepObserver, sweep } from '../../sweep/sweep.ts';

/** A key of the scenario and the values it takes in turn. */
export interface VariedKey {
  path: string;
  /** In the unit inside the program. */
  values: readonly number[];
  /** The same in the words of a scenario. */
  texts: readonly string[];
}

export interface VariantQuestion {
  /** The engine as it is. */
  baseline: EngineSpecification;
  /** One key, or two. */
  keys: readonly VariedKey[];
  /** One engine a combination of values; the last key runs fastest. */
  engines: readonly EngineSpecification[];
  /** Speeds [rpm], rising. */
  speeds: readonly number[];
  target: Target;
}

/** One combination of values. */
export type WeighedVariant = TradeOff & {
  /** What the scenario would say, one text a key. */
  texts: string[];
  /** In the unit inside the program, one a key. */
  values: number[];
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

export interface VariantStudy {
  keys: readonly VariedKey[];
  speeds: number[];
  target: Target;
  baseline: PointOutcome[];
  /** In the order of the engines. */
  weighed: WeighedVariant[];
  recommended: WeighedVariant;
  /** Dearest first. */
  pareto: WeighedVariant[];
  /** Top of the parabola along a single key; a run there would confirm it. */
  between?: number;
  /** How the best of the second key moves with the first, where there are two. */
  bestSecond?: BestSecond[];
}

export async function variantStudy(
  question: VariantQuestion,
  runner: PointRunner,
  observer: SweepObserver = {},
): Promise<VariantStudy> {
  const { baseline, keys, engines, speeds, target } = question;
  const table = await sweep([...engines, baseline], speeds, runner, observer);
  const own = table.pop()!;
  const figures = (outcomes: readonly PointOutcome[]) => scores(outcomes, target.score);
  const places = combinations(keys.map((key) => key.values.length));
  const weighed = table.map((outcomes, i) => ({
    texts: keys.map((key, k) => key.texts[places[i]![k]!]!),
    values: keys.map((key, k) => key.values[places[i]![k]!]!),
    outcomes,
    ...tradeOff(speeds, figures(outcomes), figures(own), target),
  }));
  return {
    keys,
    speeds: [...speeds],
    target,
    baseline: own,
    weighed,
    recommended: weighed[bestOf(weighed)]!,
    pareto: paretoSet(weighed),
    ...(keys.length === 1 && { between: topOf(keys[0]!, weighed) }),
    ...(keys.length === 2 && { bestSecond: bestSeconds(keys, weighed) }),
  };
}

function bestSeconds(keys: readonly VariedKey[], weighed: readonly WeighedVariant[]): BestSecond[] {
  const [first, second] = keys as [VariedKey, VariedKey];
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
