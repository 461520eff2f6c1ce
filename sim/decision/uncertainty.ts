/**
 * How sure the answer is: the recommended length and the baseline on a designed sample of engines
 * whose inputs differ within their spreads, both lengths on the same engines.
 *
 * Each input is taken as even between its ends, nothing beyond them (JCGM 100:2008, 4.3.7, where only
 * limits are known), and independent of the others. Which input to measure next: the gain is fitted
 * by least squares as
 *
 *   gain = b0 + sum_k b_k u_k + rest,    u_k from -1 to 1 over the spread of input k,
 *
 * so that b_k is the change of the gain over half its spread and b_k^2 / 3 its share of the variance.
 * `explained` says how much of the variance that plane carries: where it is low, the ranking is poor.
 */

import { Matrix, solve } from 'ml-matrix';
import { square } from '../elementary/powers.ts';
import type { EngineSpecification } from '../specification.ts';
import type { PointOutcome } from '../sweep/runner.ts';
import { withLength } from '../sweep/sweep.ts';
import {
  type FloorHeld,
  floorsHeld,
  type Moved,
  movedBy,
  type Pair,
  type Read,
  readAt,
  reading,
  type Sampling,
  weighed,
  within,
} from './sampleCurves.ts';
import { type Estimate, type Spread, shareOf, spreadOf, varianceOf } from './sampleFigures.ts';
import { bandsOf, scores, type Target, targetMean } from './target.ts';

export interface UncertaintyQuestion {
  /** What the inputs are called. */
  inputs: readonly string[];
  samples: readonly InputSample[];
  /** Trumpet lengths to hold against each other [m]. */
  recommended: number;
  baseline: number;
  /** Other lengths that might win [m]; known in the bands alone. */
  rivals?: readonly number[];
  /** Where other keys are held against each other: both engines of each sample, and their names. */
  variants?: {
    engines: readonly (readonly [EngineSpecification, EngineSpecification])[];
    names: readonly [recommended: string, baseline: string];
  };
  /** Speeds computed [rpm], rising. */
  speeds: readonly number[];
  /** How curves are read between them; straight where absent. Its speeds are those computed. */
  sampling?: Sampling;
  target: Target;
}

/** One engine that the inputs allow. */
export interface InputSample {
  /** Place of each input within its spread, -1 to 1. */
  at: readonly number[];
  engine: EngineSpecification;
}

/** How one input moves the gain. */
export interface InputEffect {
  input: string;
  /** Change of the gain from the middle of the spread to its upper end [% points]. */
  effect: number;
  /** Share of the gain's variance [-]. */
  share: number;
}

export interface UncertaintyStudy {
  samples: number;
  /** Samples left out because a point of theirs failed. */
  failed: number;
  speeds: number[];
  recommended: LengthSpread;
  baseline: LengthSpread;
  /** Gain of the recommended length over the baseline in the bands [%]. */
  gainPercent: Spread;
  /** Greatest loss against the baseline in the bands [%]. */
  bandLossPercent: Spread;
  /** One entry a floor of the target. */
  floors: FloorHeld[];
  /** What the last halvings moved; absent where nothing is read between the speeds. */
  moved?: Moved;
  /** Probability that the recommended length beats the baseline in the bands. */
  better: Estimate;
  /** How often which length has the greatest mean, most often first; absent where no rival was asked. */
  wins?: { length: number; share: Estimate }[];
  /** Inputs by how much the gain hangs on them, most first: what to measure next. */
  effects: InputEffect[];
  /** Share of the gain's variance that the fitted plane explains [-]. */
  explained: number;
}

/** One length with its spread of scores. */
export interface LengthSpread {
  /** Trumpet length [m]; NaN for variants, which have a name. */
  length: number;
  name?: string;
  /** Spread at each speed. */
  curve: Spread[];
  /** Spread of the mean over the bands. */
  bandMean: Spread;
}

/** Fewest samples that the fit of so many inputs can bear. */
export function fewestSamples(inputs: number): number {
  return Math.max(16, Math.ceil(1.5 * inputs) + 2);
}

/** The pair of every sample, in the order in which `uncertaintyOf` takes their outcomes. */
export function sampleEngines({ samples, recommended, baseline, variants }: UncertaintyQuestion) {
  if (variants) return variants.engines.flat();
  return samples.flatMap(({ engine }) =>
    [recommended, baseline].map((length) => withLength(engine, length)),
  );
}

/** The rivals of every sample, in the order in which `uncertaintyOf` takes their outcomes. */
export function rivalEngines({ samples, rivals = [] }: UncertaintyQuestion) {
  return samples.flatMap(({ engine }) => rivals.map((length) => withLength(engine, length)));
}

/** The speeds that the bands rest on [rpm]: those inside, and the next to either side. */
export function bandSpeeds(speeds: readonly number[], target: Target): number[] {
  return speeds.filter((speed, i) => {
    const [before, after] = [speeds[i - 1] ?? speed, speeds[i + 1] ?? speed];
    return bandsOf(target).some(({ from, to }) => after > from && before < to);
  });
}

/**
 * @param table outcomes of `sampleEngines`, [engine][speed]
 * @param rivalTable outcomes of `rivalEngines` at `bandSpeeds`
 */
export function uncertaintyOf(
  question: UncertaintyQuestion,
  table: readonly (readonly PointOutcome[])[],
  rivalTable: readonly (readonly PointOutcome[])[] = [],
): UncertaintyStudy {
  const { inputs, samples, speeds, sampling, target, variants } = question;
  const curves: Pair[] = samples.map((_, i) => ({
    ours: scores(table[2 * i]!, target.score),
    theirs: scores(table[2 * i + 1]!, target.score),
  }));
  const whole = curves.map(({ ours, theirs }) => [...ours, ...theirs].every(Number.isFinite));
  const kept = curves.filter((_, i) => whole[i]);
  const at = samples.filter((_, i) => whole[i]).map((sample) => sample.at);
  const trades = kept.map((pair) => weighed(question, pair, target));
  const gains = trades.map(({ gainPercent }) => gainPercent);
  const told = (length: number, name: string | undefined, which: keyof Pair) => ({
    ...contender(length, name),
    ...spreadsOf(
      kept.map((pair) => pair[which]),
      question,
    ),
  });
  return {
    samples: kept.length,
    failed: samples.length - kept.length,
    speeds: [...speeds],
    recommended: told(question.recommended, variants?.names[0], 'ours'),
    baseline: told(question.baseline, variants?.names[1], 'theirs'),
    gainPercent: spreadOf(gains),
    bandLossPercent: spreadOf(trades.map(({ bandLossPercent }) => bandLossPercent)),
    floors: floorsHeld(trades, target),
    ...(sampling && { moved: movedBy({ speeds, sampling }, kept, trades, target) }),
    better: shareOf(gains.filter((gain) => gain > 0).length, gains.length),
    ...(rivalTable.length > 0 && { wins: winsOf(question, curves, whole, rivalTable) }),
    ...effectsOf(inputs, at, gains),
  };
}

/** How often each length has the greatest mean in the bands, over the samples that are whole. */
function winsOf(
  question: UncertaintyQuestion,
  curves: readonly Pair[],
  whole: readonly boolean[],
  table: readonly (readonly PointOutcome[])[],
) {
  const { speeds, target, recommended, baseline, rivals = [] } = question;
  const near = within(question, bandSpeeds(speeds, target));
  const mean = (values: readonly number[], of: Read = question) =>
    targetMean(readAt(of), reading(of, values), target);
  const lengths = [...new Set([recommended, baseline]), ...rivals];
  const wins = new Map(lengths.map((length) => [length, 0]));
  const count = whole.filter(Boolean).length;
  curves.forEach(({ ours, theirs }, i) => {
    if (!whole[i]) return;
    const means = new Map([
      [baseline, mean(theirs)],
      [recommended, mean(ours)],
    ]);
    rivals.forEach((length, k) => {
      means.set(length, mean(scores(table[i * rivals.length + k]!, target.score), near));
    });
    const best = lengths.reduce((a, b) => (means.get(b)! > means.get(a)! ? b : a));
    wins.set(best, wins.get(best)! + 1);
  });
  return [...wins]
    .map(([length, times]) => ({ length, share: shareOf(times, count) }))
    .sort((a, b) => b.share.value - a.share.value || a.length - b.length);
}

const contender = (length: number, name: string | undefined) =>
  name === undefined ? { length } : { length, name };

function spreadsOf(
  curves: readonly (readonly number[])[],
  asked: Pick<UncertaintyQuestion, 'speeds' | 'sampling' | 'target'>,
) {
  const { speeds, target } = asked;
  const means = curves.map((curve) => targetMean(readAt(asked), reading(asked, curve), target));
  return {
    curve: speeds.map((_, j) => spreadOf(curves.map((curve) => curve[j]!))),
    bandMean: spreadOf(means),
  };
}

/** The plane through the sample and what each input has in it. */
export function effectsOf(
  inputs: readonly string[],
  at: readonly (readonly number[])[],
  gains: readonly number[],
): Pick<UncertaintyStudy, 'effects' | 'explained'> {
  const total = varianceOf(gains);
  if (inputs.length === 0 || !(total > 0) || at.length <= inputs.length + 1) {
    return { effects: [], explained: Number.NaN };
  }
  const rows = new Matrix(at.map((row) => [1, ...row]));
  const plane = solve(rows, Matrix.columnVector([...gains]), true);
  const fitted = rows.mmul(plane).to1DArray();
  const rest = gains.reduce((sum, gain, i) => sum + square(gain - fitted[i]!), 0);
  const effects = inputs.map((input, k) => {
    const effect = plane.get(k + 1, 0);
    return { input, effect, share: square(effect) / 3 / total };
  });
  // Adjusted for the inputs fitted, so that many inputs do not look like much explained.
  const explained = 1 - rest / (gains.length - inputs.length - 1) / total;
  return { effects: effects.sort((a, b) => b.share - a.share), explained };
}
