/** Engines that differ in one key or several, each resolved as if the file said so. */
import { combinations } from '../combinations.ts';
import type { EngineSpecification } from '../specification.ts';
import type { Change } from './change.ts';
import type { Axis } from './range.ts';
import { engineReader } from './read.ts';

/**
 * One engine a combination of values; the last key runs fastest.
 *
 * @throws ScenarioError where a combination breaks a rule of the scenario
 */
export function variantEngines(
  text: string,
  name: string,
  axes: readonly Axis[],
): EngineSpecification[] {
  const changes = variantChanges(axes);
  return changes.map(engineReader(text, name, changes[0]!));
}

/** What each combination changes. */
export function variantChanges(axes: readonly Axis[]): Change[][] {
  const rows = combinations(axes.map((axis) => axis.texts.length));
  return rows.map((row) => axes.map(({ path, texts }, k) => ({ path, text: texts[row[k]!]! })));
}
