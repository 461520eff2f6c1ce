/**
 * The keys of a scenario file as a typed tree. A leaf tells everything of its key: dimension, limits,
 * usual range, default with its origin, how far it is likely to be off, its place in a form. Reader,
 * JSON Schema, reference, facts, doubt and forms are derived from the tree and from nothing else.
 */
import { DIMENSIONS, type DimensionName } from './dimension.ts';
import { type Quantity, type QuantityContext, readQuantity } from './quantity.ts';

/** What is taken where a key is left out: a value, or a rule told in words and computed in `take`. */
export type Absent =
  | { value: string; why: string; rule?: never }
  | { rule: string; why: string; value?: never };

/** How far a value is likely to be off where the file does not say, by the tool it is read with. */
export interface Doubt {
  /** Half-width with its unit, or in per cent of the value. */
  half: string;
  /** What it comes from; common practice without a source unless it names one. */
  why: string;
}

/** Groups of a form, in its order. */
export const FORM_GROUPS = [
  'Engine',
  'Intake',
  'Throttle body',
  'Valves',
  'Exhaust',
  'Day and fuel',
  'Where you need it',
  'Lengths to try',
] as const;

export interface FormField {
  group: (typeof FORM_GROUPS)[number];
  label: string;
}

/** How a leaf is described. */
export interface LeafOptions extends QuantityContext {
  /** Lowest and highest value that is taken, both inclusive. */
  limits: readonly [string, string];
  /** Range outside which a value is taken with a warning. */
  usual?: readonly [string, string];
  /** Whether only whole numbers are taken. */
  whole?: boolean;
  doubt?: Doubt;
  form?: FormField;
  /** Whether it is a condition of the day rather than a part of the engine: nothing to recommend. */
  condition?: boolean;
}

/** What leaving a leaf out means: an error, a default value, a default by rule, or something else. */
export type Presence = 'needed' | 'value' | 'rule' | 'open';

/** One value with its unit, and all that is known about it. */
export interface Leaf<P extends Presence = Presence> extends LeafOptions {
  kind: 'leaf';
  presence: P;
  optional: boolean;
  dimension: DimensionName;
  description: string;
  absent?: Absent;
}

/** A word out of a list. */
export interface Choice<W extends string = string> {
  kind: 'choice';
  optional: boolean;
  description: string;
  words: readonly W[];
  absent?: { value: W; why: string };
}

/** Free text. */
export interface Text {
  kind: 'text';
  optional: boolean;
  description: string;
  shortest: number;
  longest?: number;
}

/** Rows of one kind. */
export interface List<R extends Key = Key> {
  kind: 'list';
  optional: boolean;
  description: string;
  row: R;
  least: number;
  most: number;
  /** Column whose values must rise; empty where the rows are the values. */
  rising?: string;
}

export interface Keys {
  [name: string]: Key;
}

/** Keys of which one set is given, not two. */
export interface EitherOr {
  /** What the sets say, for messages. */
  what: string;
  /** A key that stands in several sets goes with each of them. */
  ways: readonly (readonly string[])[];
  remedy: string;
  /** Whether none at all may be given. */
  none: boolean;
}

/** A group of keys; a key that it does not know is an error. */
export interface Section<K extends Keys = Keys> {
  kind: 'section';
  optional: boolean;
  description: string;
  keys: K;
  rules: readonly EitherOr[];
}

export type Key = Leaf | Choice | Text | List | Section;

type PresenceOf<O> = O extends { absent: { value: string } }
  ? 'value'
  : O extends { absent: { rule: string } }
    ? 'rule'
    : 'open';

/** A value that must be given. */
export function quantity(
  dimension: DimensionName,
  description: string,
  options: LeafOptions,
): Leaf<'needed'> {
  return { kind: 'leaf', presence: 'needed', optional: false, dimension, description, ...options };
}

/** A value that may be left out: `absent` is its default; without one, leaving it out has a meaning. */
export function maybe<const O extends LeafOptions & { absent?: Absent }>(
  dimension: DimensionName,
  description: string,
  options: O,
): Leaf<PresenceOf<O>> {
  const { absent } = options;
  const presence = !absent ? 'open' : absent.value === undefined ? 'rule' : 'value';
  const leaf = { kind: 'leaf', presence, optional: true, dimension, description, ...options };
  return leaf as unknown as Leaf<PresenceOf<O>>;
}

/** A word out of `words`; one with a default may be left out. */
export function choice<const W extends string>(
  words: readonly W[],
  description: string,
  absent?: { value: NoInfer<W>; why: string },
): Choice<W> {
  const optional = absent !== undefined;
  return { kind: 'choice', optional, description, words, ...(absent && { absent }) };
}

export function text(description: string, longest?: number, shortest = 1): Text {
  const bound = longest === undefined ? {} : { longest };
  return { kind: 'text', optional: false, description, shortest, ...bound };
}

export function list<R extends Key>(
  row: R,
  description: string,
  options: { least?: number; most: number; rising?: string },
): List<R> {
  return { kind: 'list', optional: false, description, row, least: 1, ...options };
}

export function section<const K extends Keys>(
  description: string,
  keys: K,
  ...rules: EitherOrOf<K>[]
): Section<K> {
  return { kind: 'section', optional: false, description, keys, rules };
}

type EitherOrOf<K> = EitherOr & { ways: readonly (readonly (keyof K & string)[])[] };

/**
 * One of several sets of keys, and not two: `oneOf('the diameter', [['diameter'], ['a', 'b']], ...)`.
 *
 * @param none whether all may be left out
 */
export function oneOf<const N extends string>(
  what: string,
  ways: readonly (readonly N[])[],
  remedy: string,
  none = false,
): EitherOr & { ways: readonly (readonly N[])[] } {
  return { what, ways, remedy, none };
}

/** The same key, which may be left out. */
export function optional<K extends Text | List | Section>(key: K): K {
  return { ...key, optional: true };
}

/** Keys of one way that no other way has, by which it is known. */
export function ownKeys({ ways }: EitherOr, way: number): string[] {
  return ways[way]!.filter((key) => ways.every((other, i) => i === way || !other.includes(key)));
}

/** Default in words, as a sentence to append. */
export function absentText(absent: Absent | undefined): string {
  return absent === undefined ? '' : ` Default: ${absent.value ?? absent.rule} (${absent.why}).`;
}

/** A limit or default text of the tree itself in the unit inside the program. */
export function leafValue(text: string, leaf: Leaf): number {
  const read = readQuantity(text, leaf.dimension, leaf);
  if ('problem' in read) throw new Error(`schema: ${read.problem} (${leaf.description})`);
  return read.value;
}

/** Lowest and highest value of a leaf in the unit inside the program; read once. */
export function limitsOf(leaf: Leaf): readonly [number, number] {
  return boundsOf(leaf, leaf.limits);
}

/** Usual range of a leaf in the unit inside the program, where it has one. */
export function usualOf(leaf: Leaf): readonly [number, number] | undefined {
  return leaf.usual && boundsOf(leaf, leaf.usual);
}

function boundsOf(leaf: Leaf, texts: readonly [string, string]): readonly [number, number] {
  const known = BOUNDS.get(texts) ?? [leafValue(texts[0], leaf), leafValue(texts[1], leaf)];
  BOUNDS.set(texts, known as [number, number]);
  return known as [number, number];
}

const BOUNDS = new WeakMap<object, readonly [number, number]>();

/** Why a text is no value of a leaf. */
export interface LeafProblem {
  problem: string;
  remedy: string;
  limit?: string;
}

/** What the file holds at a leaf as a quantity within the limits, or what is wrong with it. */
export function readLeaf(raw: unknown, leaf: Leaf): Quantity | LeafProblem {
  const limit = `${leaf.limits[0]} to ${leaf.limits[1]}`;
  const example = leaf.example ?? leaf.absent?.value ?? DIMENSIONS[leaf.dimension].example;
  if (raw === undefined) {
    const remedy = `add it, for example: ${example}. ${leaf.description}`;
    return { problem: 'is missing', remedy, limit };
  }
  const read = readQuantity(raw, leaf.dimension, { ...leaf, example });
  if ('problem' in read) return { ...read, limit };
  const lost = lostAngle(read, leaf);
  if (lost !== undefined) return { ...lost, limit };
  const broken = brokenLimit(read, leaf);
  if (broken !== undefined) {
    return { problem: broken, remedy: `keep within the limit. ${leaf.description}`.trim(), limit };
  }
  const seldom = leaf.usual && !read.gauge && !within(read.value, boundsOf(leaf, leaf.usual));
  return seldom ? { ...read, unusual: `${leaf.usual![0]} to ${leaf.usual![1]}` } : read;
}

/** An angle without a dead centre that is not where such an angle lies was meant from one. */
function lostAngle(read: Quantity, leaf: Leaf): LeafProblem | undefined {
  const { deadCentres, usual } = leaf;
  if (!deadCentres?.top || read.fromDeadCentre || !usual) return undefined;
  if (within(read.value, boundsOf(leaf, usual))) return undefined;
  const [, number = ''] = /^([+-]?[\d.]+)/.exec(read.text) ?? [];
  const { top, bottom } = deadCentres;
  const ways = {
    BTDC: top - read.value,
    ATDC: top + read.value,
    BBDC: bottom - read.value,
    ABDC: bottom + read.value,
  };
  const meant = Object.entries(ways).find(([, at]) => within(at, boundsOf(leaf, usual)))?.[0];
  const example = meant ? `did you mean ${number} deg ${meant}?` : `write for example ${usual[0]}`;
  return {
    problem: `${read.text} names no dead centre; counted from firing top dead centre it lies where none lie`,
    remedy: `${example} BTDC, ATDC, BBDC and ABDC are known. ${leaf.description}`,
  };
}

function brokenLimit(read: Quantity, leaf: Leaf): string | undefined {
  if (leaf.whole && !Number.isInteger(read.value)) return `${read.text} is not a whole number`;
  if (read.gauge || within(read.value, limitsOf(leaf))) return undefined;
  return `${read.text} is out of range`;
}

function within(value: number, [low, high]: readonly [number, number]): boolean {
  return value >= low && value <= high;
}

export function isQuantity(value: unknown): value is Quantity {
  return value instanceof Object && 'spread' in value && 'value' in value;
}
