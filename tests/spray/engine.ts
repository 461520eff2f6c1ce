/** The endurance six with its injectors, coarse enough for tests. */
import { readFileSync } from 'node:fs';
import type { InjectorsSpecification } from '../../sim/injectors.ts';
import { readScenario } from '../../sim/scenario/read.ts';
import type { EngineSpecification } from '../../sim/specification.ts';
import { withShare } from '../../sim/study/inject/compute.ts';

const scenario = readScenario(
  readFileSync('scenarios/endurance-six.yaml', 'utf8'),
  'endurance-six.yaml',
);

export const { engine } = scenario;
export const injectors = scenario.injectors!;

/** With the outer injector's share [-] and altered injectors. */
export function sprayed(
  share: number,
  change: Partial<InjectorsSpecification> = {},
): EngineSpecification {
  return withShare(engine, { ...injectors, ...change }, share);
}
