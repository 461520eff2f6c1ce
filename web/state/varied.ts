/** Values of other keys than the length, as the scenario names them under sweep.vary, when asked. */
import { type VariedStudy, variantEngines, variantStudy, withConditions } from '../../sim/index.ts';
import { askedStudy } from './asked.ts';
import type { Picture } from './picture.ts';

export const varied = askedStudy<VariedStudy>(async ({ scenario, source }, runner, seen) => {
  const { engine: baseline, speeds, target, sweep, refine } = scenario;
  const keys = withConditions(sweep.vary ?? []);
  const engines = variantEngines(source.text, source.file, keys);
  return variantStudy({ baseline, keys, engines, speeds, target, refine }, runner, seen);
});

/** Whether the scenario names keys to vary. */
export const hasVaried = ({ scenario }: Picture): boolean => (scenario.sweep.vary?.length ?? 0) > 0;
