/** The endurance six with its injectors, coarse enough for tests. */
import { readFileSync } from 'node:fs';
import { withShare } from '../../sim/decision/placement.ts';
import { readScenario } from '../../sim/scenario/read.ts';
import type { EngineSpecification, InjectorsSpecification } from '../../sim/specification.ts';

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
