/** One value outside a file, such as an option of the command line, read as the file would be. */

import type { EngineSpecification } from '../specification.ts';
import { isQuantity } from './leaf.ts';
import { type Axis, type RangeProblem, readAxis } from './range.ts';
import { schemaAt } from './reading.ts';
import { scenarioSections } from './schema.ts';
import { LEAST_STRAIGHT } from './sections/trumpet.ts';

export type ReadValue = { value: number } | { problem: string; remedy: string; limit?: string };

/**
 * Reads a text as the key at `path` would, with its units and limits.
 *
 * @returns the value in the unit inside the program, or the first problem
 */
export function readValue(path: string, text: string): ReadValue {
  const schema = schemaAt(scenarioSections, path);
  if (schema === undefined) throw new Error(`the schema has no value at ${path}`);
  const parsed = schema.safeParse(text);
  if (parsed.success && isQuantity(parsed.data)) return { value: parsed.data.value };
  const issue = parsed.error?.issues[0];
  const params = issue?.code === 'custom' ? issue.params : undefined;
  return { problem: issue?.message ?? 'is no quantity', remedy: '', ...params };
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
  return readAxis(scenarioSections, key.trim(), values);
}
