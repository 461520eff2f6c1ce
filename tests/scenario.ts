/** The demo scenarios, resolved, for tests of the whole engine. */
import { readFileSync } from 'node:fs';
import { readScenario } from '../sim/scenario/read.ts';
import type { EngineSpecification } from '../sim/specification.ts';

export type Demo = 'hill-climb' | 'sprint-single' | 'endurance-six' | 'boosted-four';

export function demo(name: Demo | 'uneven-twin') {
  return readScenario(readFileSync(`scenarios/${name}.yaml`, 'utf8'), `${name}.yaml`);
}

/** The engine with its cells this many times as long, settled more tightly than a user needs. */
export function meshed(
  engine: EngineSpecification,
  factor: number,
  settle = 2e-4,
): EngineSpecification {
  const { numerics } = engine;
  return {
    ...engine,
    numerics: {
      ...numerics,
      intakeCell: factor * numerics.intakeCell,
      exhaustCell: factor * numerics.exhaustCell,
      settle,
      maximumCycles: 60,
    },
  };
}

/** The road four, which has a pressure bar and an idle. */
export function roadFour(change: (text: string) => string = (same) => same) {
  const text = change(readFileSync('scenarios/road-four.yaml', 'utf8'));
  const { pressureBar, idle, ...rest } = readScenario(text, 'road-four.yaml');
  return { ...rest, pressureBar: pressureBar!, idle: idle! };
}
