/** Values of other keys than the length, as the scenario names them under sweep.vary, when asked. */
import {
  type VariantStudy,
  variantEngines,
  variantStudy,
  withConditions,
} from '../../sim/index.ts';
import { askedStudy } from './asked.ts';
import type { Picture } from './picture.ts';

export const varied = askedStudy<VariantStudy>(async ({ scenario, source }, runner, seen) => {
  const { engine: baseline, speeds, target, sweep } = scenario;
  const keys = withConditions(sweep.vary ?? []);
  const engines = variantEngines(source.text, source.file, keys);
  return variantStudy({ baseline, keys, engines, speeds, target }, runner, seen);
});

/** Whether the scenario names keys to vary. */
export const hasVaried = ({ scenario }: Picture): boolean => (scenario.sweep.vary?.length ?? 0) > 0;
