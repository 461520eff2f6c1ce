/** One value outside a file, such as an option of the command line, read as the file would be. */
import type { EngineSpecification } from '../specification.ts';
import { type Leaf, type LeafProblem, readLeaf } from './key.ts';
import { keyAt, type LeafPath } from './keyPath.ts';
import { type Axis, type RangeProblem, readAxis } from './range.ts';
import { scenarioKeys } from './schema.ts';
import { LEAST_STRAIGHT } from './sections/trumpet.ts';

/** Every key of a scenario that holds a number. */
export type ScenarioPath = LeafPath<typeof scenarioKeys>;

/**
 * Reads a text as the key at `path` would, with its units and limits; what the key means is not what the text does.
 *
 * @returns the value in the unit inside the program, or the first problem
 */
export function readValue(path: ScenarioPath, text: string): { value: number } | LeafProblem {
  const read = readLeaf(text, { ...(keyAt(scenarioKeys, path) as Leaf), description: '' });
  return 'problem' in read ? read : { value: read.value };
}

/** Shortest trumpet that an engine's bellmouth leaves room for [m]. */
export function shortestLength({ intake }: EngineSpecification): number {
  return intake.trumpet.bellmouth.depth + LEAST_STRAIGHT;
}

/** Reads `KEY=VALUES`, a key to vary with the values it is to take. */
export function readVariedKey(text: string): Axis | RangeProblem {
  const [, key = '', values = ''] = /^([^=]+)=(.+)$/.exec(text.trim()) ?? [];
  if (key === '') {
    const remedy = 'write KEY=VALUES, for example intake.trumpet.diameter=42mm..48mm/2mm';
    return { problem: 'is no key with values', remedy };
  }
  return readAxis(scenarioKeys, key.trim(), values);
}
