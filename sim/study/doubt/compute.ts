/** How sure the answer is: both lengths on a designed sample of the engines that the inputs allow. */
import {
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
}

export async function uncertaintyStudy(
  question: UncertaintyQuestion,
  runner: PointRunner,
  observer: SweepObserver = {},
): Promise<UncertaintyStudy> {
  const table = await sweep(sampleEngines(question), question.speeds, runner, observer);
  return uncertaintyOf(question, table);
}

/** The doubt of an answer, from a sample of the scenario it belongs to. */
export async function doubtOf(
  { recommended, baseline }: LengthStudy,
  { speeds, target }: Scenario,
  { inputs, samples, seed }: DoubtSample,
  runner: PointRunner,
  observer: SweepObserver = {},
): Promise<Doubt> {
  const question = {
    inputs: inputs.map(({ path }) => path),
    samples,
    recommended: recommended.length,
    baseline: baseline.length,
    speeds,
    target,
  };
  return { study: await uncertaintyStudy(question, runner, observer), inputs, seed };
}

/** The doubt of a variant against the engine as it is, each with the same sample of inputs. */
export async function variantDoubt(
  names: readonly [recommended: string, baseline: string],
  [ours, theirs]: readonly [DoubtSample, DoubtSample],
  { speeds, target }: Scenario,
  runner: PointRunner,
  observer: SweepObserver = {},
): Promise<Doubt> {
  const { inputs, samples, seed } = ours;
  const question = {
    inputs: inputs.map(({ path }) => path),
    samples,
    recommended: Number.NaN,
    baseline: Number.NaN,
    variants: {
      names,
      engines: samples.map(({ engine }, i) => [engine, theirs.samples[i]!.engine] as const),
    },
    speeds,
    target,
  };
  return { study: await uncertaintyStudy(question, runner, observer), inputs, seed };
}
