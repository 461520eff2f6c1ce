/** How sure the answer is: both lengths on a designed sample of the engines that the inputs allow. */
import type { LengthUnit } from '../../decision/lengthUnit.ts';
import type { Sampling } from '../../decision/sampleCurves.ts';
import { type Fit, fits } from '../../decision/shelf.ts';
import {
  bandSpeeds,
  rivalEngines,
  sampleEngines,
  type UncertaintyQuestion,
  type UncertaintyStudy,
  uncertaintyOf,
} from '../../decision/uncertainty.ts';
import type { DoubtfulInput, DoubtSample } from '../../scenario/doubt.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import type { PointRunner } from '../../sweep/runner.ts';
import { type SweepObserver, sweep } from '../../sweep/sweep.ts';
import type { LengthStudy } from '../length/compute.ts';

/** A study of the doubt with what it was asked. */
export interface Doubt {
  study: UncertaintyStudy;
  inputs: readonly DoubtfulInput[];
  seed: number;
  /** Samples asked for, where the inputs wanted more. */
  asked?: number;
  /** Unit in which lengths are told; millimetres where absent. */
  unit?: LengthUnit;
}

export async function uncertaintyStudy(
  question: UncertaintyQuestion,
  runner: PointRunner,
  observer: SweepObserver = {},
): Promise<UncertaintyStudy> {
  const { speeds, target } = question;
  const table = await sweep(sampleEngines(question), speeds, runner, observer);
  const rivals = rivalEngines(question);
  if (rivals.length === 0) return uncertaintyOf(question, table);
  const near = bandSpeeds(speeds, target);
  return uncertaintyOf(question, table, await sweep(rivals, near, runner, observer));
}

/** The doubt of an answer, from a sample of the scenario it belongs to. */
export async function doubtOf(
  study: LengthStudy,
  { speeds, target, fit }: Scenario,
  sample: DoubtSample,
  runner: PointRunner,
  observer: SweepObserver = {},
): Promise<Doubt> {
  const { recommended, baseline, sampling, unit } = study;
  const { inputs, samples } = sample;
  const question = {
    inputs: inputs.map(({ path }) => path),
    samples,
    rivals: rivalsOf(study, fit),
    recommended: recommended.length,
    baseline: baseline.length,
    ...sampledAt(speeds, sampling),
    target,
  };
  const found = await uncertaintyStudy(question, runner, observer);
  return { study: found, ...asAsked(sample), ...(unit && { unit }) };
}

/** Means that spreads of the inputs may lift over the best [share of it], and how many are tried. */
const RIVAL = 0.03;
const MOST_RIVALS = 3;

/** Lengths that might win on another engine within the spreads [m], nearest to the best first. */
function rivalsOf({ weighed, recommended, baseline, decision }: LengthStudy, fit?: Fit): number[] {
  const known = new Set([recommended.length, baseline.length]);
  return weighed
    .filter(({ length, meetsFloors }) => !known.has(length) && meetsFloors && fits(length, fit))
    .filter(({ bandMean }) => bandMean >= (1 - RIVAL) * decision.bandMean)
    .sort((a, b) => b.bandMean - a.bandMean)
    .slice(0, MOST_RIVALS)
    .map(({ length }) => length);
}

/** At the speeds of the file, or where the answer was resolved. */
const sampledAt = (speeds: readonly number[], sampling?: Sampling) =>
  sampling ? { speeds: sampling.speeds, sampling } : { speeds };

const asAsked = ({ inputs, samples, seed, asked }: DoubtSample) => ({
  inputs,
  seed,
  ...(asked < samples.length && { asked }),
});

/** The doubt of a variant against the engine as it is, each with the same sample of inputs. */
export async function variantDoubt(
  names: readonly [recommended: string, baseline: string],
  [ours, theirs]: readonly [DoubtSample, DoubtSample],
  { speeds, target, sampling }: Pick<Scenario, 'speeds' | 'target'> & { sampling?: Sampling },
  runner: PointRunner,
  observer: SweepObserver = {},
): Promise<Doubt> {
  const { inputs, samples } = ours;
  const question = {
    inputs: inputs.map(({ path }) => path),
    samples,
    recommended: Number.NaN,
    baseline: Number.NaN,
    variants: {
      names,
      engines: samples.map(({ engine }, i) => [engine, theirs.samples[i]!.engine] as const),
    },
    ...sampledAt(speeds, sampling),
    target,
  };
  return { study: await uncertaintyStudy(question, runner, observer), ...asAsked(ours) };
}
