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
  let first: EngineSpecification | undefined;
  const at = (index: number) => {
    made[index] ??= sharing(read(changes[index]!), first);
    first ??= made[index];
    return made[index];
  };
  return { length: changes.length, at, all: () => changes.map((_, index) => at(index)) };
}

/** A value with every part that is as in a model taken from the model: of many engines most parts are one. */
function sharing<T>(value: T, model: T | undefined): T {
  if (!(value instanceof Object) || !(model instanceof Object)) return value;
  const keys = Object.keys(value) as (keyof T)[];
  for (const key of keys) value[key] = sharing(value[key], model[key]);
  const same = keys.every((key) => Object.is(value[key], model[key]));
  return same && keys.length === Object.keys(model).length ? model : value;
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
