/** Engines that differ in one key or several, each resolved as if the file said so. */
import { combinations } from '../combinations.ts';
import type { EngineSpecification } from '../specification.ts';
import type { Change } from './change.ts';
import type { Axis } from './range.ts';
import { engineReader } from './read.ts';

/** One engine a combination of values, the last key running fastest; made when it is asked for. */
export interface Variants {
  readonly length: number;
  /** @throws ScenarioError where the combination breaks a rule of the scenario */
  at(index: number): EngineSpecification;
  /** Every one of them. */
  all(): EngineSpecification[];
}

export function variantsOf(text: string, name: string, axes: readonly Axis[]): Variants {
  const changes = variantChanges(axes);
  const read = engineReader(text, name, changes[0]!);
  const made: EngineSpecification[] = [];
  const at = (index: number) => {
    made[index] ??= read(changes[index]!);
    return made[index];
  };
  return { length: changes.length, at, all: () => changes.map((_, index) => at(index)) };
}

/**
 * Every engine of the variants.
 *
 * @throws ScenarioError where a combination breaks a rule of the scenario
 */
export function variantEngines(
  text: string,
  name: string,
  axes: readonly Axis[],
): EngineSpecification[] {
  return variantsOf(text, name, axes).all();
}

/** What each combination changes. */
export function variantChanges(axes: readonly Axis[]): Change[][] {
  const rows = combinations(axes.map((axis) => axis.texts.length));
  return rows.map((row) => axes.map(({ path, texts }, k) => ({ path, text: texts[row[k]!]! })));
}
