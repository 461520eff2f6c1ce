/**
 * A scenario tree as the sections read it: values by path, with defaults taken and listed, problems
 * and warnings collected. A value that the schema refused reads as absent, so that checks can go on
 * over a file that is partly wrong and every problem is found at once.
 */
import type { z } from 'zod';
import { CHOICES, isQuantity, LEAVES, type Leaf, leafValue } from './leaf.ts';
import { type Quantity, quantityToText } from './quantity.ts';

/** A default that was taken, in the words a file would use. */
export interface DefaultUsed {
  path: string;
  value: string;
  /** Where the default comes from. */
  why: string;
}

/** Something valid but seldom meant. */
export interface ScenarioWarning {
  path: string;
  message: string;
}

/** A problem between values, before its place in the file is known. */
export interface Problem extends ScenarioWarning {
  remedy: string;
  limit?: string;
}

/** A value with the half-width that the builder gave. */
export interface Spread {
  path: string;
  /** Value and half-width in the unit inside the program. */
  value: number;
  spread: number;
}

export class Reading {
  readonly defaultsUsed: DefaultUsed[] = [];
  readonly warnings: ScenarioWarning[] = [];
  readonly problems: Problem[] = [];
  private readonly tree: unknown;
  readonly schema: z.ZodType;

  constructor(tree: unknown, schema: z.ZodType) {
    this.tree = tree;
    this.schema = schema;
  }

  /** Whether anything stands at the path, right or wrong. */
  has(path: string): boolean {
    return this.at(path) !== undefined;
  }

  /** Whether a section of keys stands at the path. */
  hasSection(path: string): boolean {
    const value = this.at(path);
    return value instanceof Object && !Array.isArray(value) && !isQuantity(value);
  }

  /** How many rows the list at the path has; 0 where there is none. */
  rows(path: string): number {
    const list = this.at(path);
    return Array.isArray(list) ? list.length : 0;
  }

  /** The quantity at the path, or undefined where it is absent or wrong. */
  quantity(path: string): Quantity | undefined {
    const value = this.at(path);
    return isQuantity(value) ? value : undefined;
  }

  /** The given number at the path, or undefined where it is absent or wrong. */
  given(path: string): number | undefined {
    return this.quantity(path)?.value;
  }

  /** The column `key` of the list at `path`; a cell that is wrong reads as NaN. */
  column(path: string, key = ''): number[] {
    const suffix = key === '' ? '' : `.${key}`;
    return Array.from({ length: this.rows(path) }, (_, row) => {
      return this.given(`${path}.${row}${suffix}`) ?? Number.NaN;
    });
  }

  /** Text at the path, or undefined. */
  text(path: string): string | undefined {
    const value = this.at(path);
    return typeof value === 'string' ? value : undefined;
  }

  /**
   * The number at the path, or its default, which is then listed.
   *
   * @param derived computes the default where it is a rule rather than a value
   */
  take(path: string, derived?: () => number): number {
    const given = this.given(path);
    if (given !== undefined) return given;
    const leaf = this.leaf(path);
    const { absent } = leaf;
    if (absent === undefined) throw new Error(`scenario: ${path} has no default`);
    const value = absent.value === undefined ? derived?.() : leafValue(absent.value, leaf);
    if (value === undefined) throw new Error(`scenario: ${path} needs a rule`);
    this.note(path, absent.value ?? quantityToText(value, leaf.dimension), absent.why);
    return value;
  }

  /** The word at the path, or its default, which is then listed. */
  choose(path: string): string {
    const given = this.text(path);
    if (given !== undefined) return given;
    const choice = CHOICES.get(schemaAt(this.schema, path)!);
    if (choice?.absent === undefined) throw new Error(`scenario: ${path} has no default`);
    this.note(path, choice.absent.value, choice.absent.why);
    return choice.absent.value;
  }

  /** Lists a default. */
  note(path: string, value: string, why: string): void {
    this.defaultsUsed.push({ path, value, why });
  }

  warn(path: string, message: string): void {
    this.warnings.push({ path, message });
  }

  problem(path: string, message: string, remedy: string, limit?: string): void {
    this.problems.push({ path, message, remedy, ...(limit !== undefined && { limit }) });
  }

  /** Every quantity with a spread, in the order of the file. */
  spreads(): Spread[] {
    return quantitiesOf(this.tree)
      .filter(([, quantity]) => quantity.spread > 0)
      .map(([path, { value, spread }]) => ({ path, value, spread }));
  }

  /** Adds a warning for every quantity outside its usual range. */
  warnUnusual(): void {
    for (const [path, { text, unusual }] of quantitiesOf(this.tree)) {
      if (unusual === undefined) continue;
      this.warn(path, `${text} is unusual; most engines lie within ${unusual}`);
    }
  }

  private leaf(path: string): Leaf {
    const schema = schemaAt(this.schema, path);
    const leaf = schema && LEAVES.get(schema);
    if (leaf === undefined) throw new Error(`scenario: the schema has no value at ${path}`);
    return leaf;
  }

  private at(path: string): unknown {
    return path.split('.').reduce<unknown>((node, key) => {
      return node instanceof Object && Object.hasOwn(node, key)
        ? (node as Record<string, unknown>)[key]
        : undefined;
    }, this.tree);
  }
}

/** The schema at a path of keys and row numbers, or undefined where there is none. */
export function schemaAt(root: z.ZodType, path: string): z.ZodType | undefined {
  if (path === '') return root;
  return path.split('.').reduce<z.ZodType | undefined>((schema, key) => {
    return schema && childOf(schema, key);
  }, root);
}

/** The names that a section takes, or none where the schema is no section. */
export function keysOf(schema: z.ZodType | undefined): string[] {
  const shape = schema && shapeOf(schema);
  return shape ? Object.keys(shape) : [];
}

function childOf(schema: z.ZodType, key: string): z.ZodType | undefined {
  const inner = unwrap(schema);
  if (inner.type === 'array') return (inner as z.ZodArray).element as z.ZodType;
  const shape = shapeOf(inner);
  return shape && Object.hasOwn(shape, key) ? shape[key] : undefined;
}

export function shapeOf(schema: z.ZodType): Record<string, z.ZodType> | undefined {
  const inner = unwrap(schema);
  return inner.type === 'object' ? ((inner as z.ZodObject).shape as never) : undefined;
}

export function unwrap(schema: z.ZodType): z.ZodType {
  return schema.type === 'optional'
    ? unwrap((schema as z.ZodOptional).unwrap() as z.ZodType)
    : schema;
}

function quantitiesOf(node: unknown, path = ''): [string, Quantity][] {
  if (isQuantity(node)) return [[path, node]];
  if (!(node instanceof Object)) return [];
  return Object.entries(node).flatMap(([key, child]) =>
    quantitiesOf(child, path === '' ? key : `${path}.${key}`),
  );
}
