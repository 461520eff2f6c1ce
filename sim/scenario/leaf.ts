/**
 * The leaves of the scenario schema: one value with its unit, limits, usual range and default, and
 * the words that the reference and editors show. Everything known about a key stands at the key.
 */
import { z } from 'zod';
import { DIMENSIONS, type DimensionName } from './dimension.ts';
import { type Quantity, type QuantityContext, quantityPattern, readQuantity } from './quantity.ts';

/** What is taken where a key is left out: a value, or a rule that `resolve` computes. */
export type Absent =
  | { value: string; why: string; rule?: never }
  | { rule: string; why: string; value?: never };

/** How a leaf is described. */
export interface LeafOptions extends QuantityContext {
  /** Lowest and highest value that is taken, both inclusive. */
  limits: readonly [string, string];
  /** Range outside which a value is taken with a warning. */
  usual?: readonly [string, string];
  /** The default; a leaf without one must be given, unless it is `optional`. */
  absent?: Absent;
  /** Set where leaving the key out has a meaning of its own. */
  optional?: boolean;
  /** Whether only whole numbers are taken. */
  whole?: boolean;
}

/** All that is known about one leaf. */
export interface Leaf extends LeafOptions {
  dimension: DimensionName;
  description: string;
}

/** Leaf schema -> what is known about it; the reference and the resolver read from here. */
export const LEAVES = z.registry<Leaf>();

const quantityLeaf = (leaf: Leaf) => {
  const { dimension, description, absent, limits } = leaf;
  const schema = z
    .unknown()
    .transform((raw, context) => readLeaf(raw, leaf, context))
    .meta({
      type: dimension === 'ratio' ? ['number', 'string'] : 'string',
      pattern: quantityPattern(dimension, leaf),
      description: `${description} From ${limits[0]} to ${limits[1]}.${absentText(absent)}`,
    });
  return schema;
};

/** A value that must be given. */
export function quantity(dimension: DimensionName, description: string, options: LeafOptions) {
  const leaf = { dimension, description, ...options };
  return quantityLeaf(leaf).register(LEAVES, leaf);
}

/** A value that may be left out; `options` say what that means. */
export function maybe(
  dimension: DimensionName,
  description: string,
  options: LeafOptions & ({ absent: Absent } | { optional: true }),
) {
  const leaf = { dimension, description, ...options };
  return quantityLeaf(leaf).optional().register(LEAVES, leaf);
}

/** A word out of a list. */
export interface Choice {
  description: string;
  words: readonly string[];
  absent?: { value: string; why: string };
}

/** Choice schema -> what is known about it. */
export const CHOICES = z.registry<Choice>();

/** A word out of `words`; one with a default may be left out. */
export function choice(
  words: readonly [string, ...string[]],
  description: string,
  absent?: Choice['absent'],
) {
  const known: Choice = { description, words, ...(absent && { absent }) };
  const full = `${description} One of: ${words.join(', ')}.${absentText(absent)}`;
  const schema = z.enum(words).meta({ description: full });
  return (absent ? schema.optional() : schema).register(CHOICES, known);
}

/** A group of keys; a key that it does not know is an error. */
export function section<Shape extends z.ZodRawShape>(description: string, shape: Shape) {
  return z.strictObject(shape).meta({ description });
}

/** Default in words, as a sentence to append. */
export function absentText(absent: Absent | undefined): string {
  return absent === undefined ? '' : ` Default: ${absent.value ?? absent.rule} (${absent.why}).`;
}

export function isQuantity(value: unknown): value is Quantity {
  return value instanceof Object && 'spread' in value && 'value' in value;
}

/** A limit or default text of the schema itself in the unit inside the program. */
export function leafValue(text: string, leaf: Leaf): number {
  const read = readQuantity(text, leaf.dimension, leaf);
  if ('problem' in read) throw new Error(`schema: ${read.problem} (${leaf.description})`);
  return read.value;
}

/** What a builder might write at this leaf. */
function exampleOf(leaf: Leaf): string {
  return leaf.example ?? leaf.absent?.value ?? DIMENSIONS[leaf.dimension].example;
}

function readLeaf(raw: unknown, leaf: Leaf, context: z.RefinementCtx): Quantity {
  const example = exampleOf(leaf);
  const read =
    raw === undefined ? missing(leaf) : readQuantity(raw, leaf.dimension, { ...leaf, example });
  const limit = `${leaf.limits[0]} to ${leaf.limits[1]}`;
  if ('problem' in read) {
    context.addIssue(custom(read.problem, read.remedy, limit));
    return z.NEVER;
  }
  const broken = brokenLimit(read, leaf);
  if (broken !== undefined) {
    context.addIssue(custom(broken, `keep within the limit. ${leaf.description}`, limit));
    return z.NEVER;
  }
  return leaf.usual && !read.gauge && !within(read.value, leaf.usual, leaf)
    ? { ...read, unusual: `${leaf.usual[0]} to ${leaf.usual[1]}` }
    : read;
}

/** A custom zod issue that carries limit and remedy as data. */
export function custom(message: string, remedy: string, limit?: string) {
  return { code: 'custom' as const, message, params: { remedy, limit } };
}

function missing(leaf: Leaf) {
  return {
    problem: 'is missing',
    remedy: `add it, for example: ${exampleOf(leaf)}. ${leaf.description}`,
  };
}

function brokenLimit(read: Quantity, leaf: Leaf): string | undefined {
  if (leaf.whole && !Number.isInteger(read.value)) return `${read.text} is not a whole number`;
  if (read.gauge || within(read.value, leaf.limits, leaf)) return undefined;
  return `${read.text} is out of range`;
}

function within(value: number, range: readonly [string, string], leaf: Leaf): boolean {
  return value >= leafValue(range[0], leaf) && value <= leafValue(range[1], leaf);
}
