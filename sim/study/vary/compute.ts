/**
 * Beyond length: engines that differ in one key of the scenario, or in two, each at all speeds, and
 * between them where the answer turns on it.
 */

import type { Sampling } from '../../decision/sampleCurves.ts';
import type { Target } from '../../decision/target.ts';
import { type VariantStudy, type VariedKey, weighVariants } from '../../decision/variants.ts';
import type { EngineSpecification } from '../../specification.ts';
import type { PointRunner } from '../../sweep/runner.ts';
import type { LengthCurve, SweepObserver } from '../../sweep/sweep.ts';
import { Contest, type Resolution } from '../contest.ts';
import { Curves } from '../curves.ts';

export interface VariantQuestion {
  /** The engine as it is. */
  baseline: EngineSpecification;
  /** One key, or two; a condition beside a choice comes first. */
  keys: readonly VariedKey[];
  /** One engine a combination of values; the last key runs fastest. */
  engines: readonly EngineSpecification[];
  /** Speeds [rpm], rising. */
  speeds: readonly number[];
  target: Target;
  /** Whether points are computed between the speeds where the answer turns on them. */
  refine?: boolean;
}

export interface VariedStudy extends VariantStudy {
  /** The engine as it is, all its points. */
  asItIs: LengthCurve;
  /** How well the curves are known between the speeds; absent where nothing was refined. */
  resolution?: Resolution;
  /** At which speeds samples are known as well as the answer; absent where nothing was refined. */
  sampling?: Sampling;
}

export async function variantStudy(
  { baseline, keys, engines, speeds, target, refine = false }: VariantQuestion,
  runner: PointRunner,
  observer: SweepObserver = {},
): Promise<VariedStudy> {
  const own = engines.length;
  const engineOf = (place: number) => engines[place] ?? baseline;
  const curves = new Curves({ speeds, target, own, engineOf }, runner, observer);
  const places = engines.map((_, place) => place);
  // What a condition costs is asked of every value, not of the best alone.
  const everyOne = keys.some(({ condition }) => condition);
  const mayWin = (place: number) => place !== own;
  const contest = new Contest({ refine, mayWin }, curves);
  await curves.add([...places, own]);
  if (refine && everyOne) await curves.refine([...places, own], 'bands');
  const resolution = await contest.conclude();
  const weighed = places.map((place) => {
    const { length: _, ...one } = curves.weigh(curves.at(place));
    return { ...one, curve: curves.at(place) };
  });
  const study = weighVariants(keys, weighed, curves.baseline.outcomes, speeds, target);
  const sampling = curves.sampling();
  return {
    ...study,
    asItIs: curves.baseline,
    ...(resolution && { resolution }),
    ...(sampling && { sampling }),
  };
}
