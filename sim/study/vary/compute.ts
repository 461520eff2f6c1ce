/** Beyond length: engines that differ in one key of the scenario, or in two, each at all speeds. */
import type { Target } from '../../decision/target.ts';
import { type VariantStudy, type VariedKey, weighVariants } from '../../decision/variants.ts';
import type { EngineSpecification } from '../../specification.ts';
import type { PointRunner } from '../../sweep/runner.ts';
import { type SweepObserver, sweep } from '../../sweep/sweep.ts';

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
}

export async function variantStudy(
  { baseline, keys, engines, speeds, target }: VariantQuestion,
  runner: PointRunner,
  observer: SweepObserver = {},
): Promise<VariantStudy> {
  const table = await sweep([...engines, baseline], speeds, runner, observer);
  return weighVariants(keys, table.slice(0, -1), table.at(-1)!, speeds, target);
}
