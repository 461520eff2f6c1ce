/** The tree of keys as a zod schema, which reads a file and gives the JSON Schema for editors. */
import { z } from 'zod';
import {
  absentText,
  type Choice,
  type EitherOr,
  type Key,
  type Leaf,
  type List,
  ownKeys,
  readLeaf,
  type Section,
  type Text,
} from './key.ts';
import { quantityPattern } from './quantity.ts';

export function zodOf(key: Key): z.ZodType {
  const schema = bare(key);
  return key.optional ? schema.optional() : schema;
}

function bare(key: Key): z.ZodType {
  if (key.kind === 'leaf') return zodLeaf(key);
  if (key.kind === 'choice') return zodChoice(key);
  if (key.kind === 'text') return zodText(key);
  return key.kind === 'list' ? zodList(key) : zodSection(key);
}

function zodLeaf(leaf: Leaf) {
  const { dimension, description, absent, limits } = leaf;
  return z
    .unknown()
    .transform((raw, context) => {
      const read = readLeaf(raw, leaf);
      if (!('problem' in read)) return read;
      const { problem: message, ...params } = read;
      context.addIssue({ code: 'custom', message, params });
      return z.NEVER;
    })
    .meta({
      type: dimension === 'ratio' ? ['number', 'string'] : 'string',
      pattern: quantityPattern(dimension, leaf),
      description: `${description} From ${limits[0]} to ${limits[1]}.${absentText(absent)}`,
    });
}

function zodChoice({ words, description, absent }: Choice) {
  const full = `${description} One of: ${words.join(', ')}.${absentText(absent)}`;
  return z.enum(words as [string, ...string[]]).meta({ description: full });
}

function zodText({ shortest, longest, description }: Text) {
  const bounded = z.string().min(shortest);
  return (longest === undefined ? bounded : bounded.max(longest)).meta({ description });
}

function zodList({ row, least, most, description }: List) {
  return z.array(zodOf(row)).min(least).max(most).meta({ description });
}

function zodSection({ keys, rules, description }: Section) {
  const shape = Object.entries(keys).map(([name, key]) => [name, zodOf(key)]);
  const allOf = rules.map(eitherOrSchema);
  const said = { description, ...(allOf.length > 0 && { allOf }) };
  return z.strictObject(Object.fromEntries(shape)).meta(said);
}

/** An either-or as JSON Schema: each way has its keys and none that tells another way. */
function eitherOrSchema(rule: EitherOr): object {
  const own = rule.ways.map((_, way) => ownKeys(rule, way));
  const without = (keys: string[]) => ({
    not: { anyOf: keys.map((key) => ({ required: [key] })) },
  });
  const ways = rule.ways.map((keys, way) => ({
    required: keys,
    ...without(own.filter((_, other) => other !== way).flat()),
  }));
  return { oneOf: rule.none ? [...ways, without(own.flat())] : ways };
}
