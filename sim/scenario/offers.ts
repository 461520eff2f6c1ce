/**
 * What a scenario might say besides: every key that its tree does not hold, with what stands in for it meanwhile
 * and what could be written. A section that needs keys of its own is offered whole, with those; a list is too.
 */
import { DIMENSIONS } from './dimension.ts';
import { absentText, type Key, ownKeys, type Section } from './key.ts';
import { below, join } from './keyPath.ts';
import { scenarioKeys } from './schema.ts';

/** A key that could be added. */
export interface Offer {
  path: string;
  description: string;
  /** Default and its origin in words; empty where leaving it out has a meaning of its own. */
  absent: string;
  /** How far the default is likely to be off, in words; empty where nothing is known of it. */
  doubt: string;
  /** Lowest and highest value in words, of a quantity. */
  limits?: string;
  /** The default, where it is no rule. */
  value?: string;
  /** What might be written: a text, or rows and keys. */
  example: unknown;
}

export interface OfferedSection {
  name: string;
  offers: Offer[];
}

/** Every offer by the first name of its path, in the order of the schema. */
export function offersOf(tree: unknown): OfferedSection[] {
  return Object.entries(scenarioKeys.keys).flatMap(([name, key]) => {
    const offers = name.startsWith('$') ? [] : offersAt(key, below(tree, name), name);
    return offers.length > 0 ? [{ name, offers }] : [];
  });
}

function offersAt(key: Key, node: unknown, path: string): Offer[] {
  if (key.kind !== 'section') return node === undefined ? [offer(key, path)] : [];
  if (node === undefined && needed(key).length > 0) return [offer(key, path)];
  const shut = shutOut(key, node);
  return Object.entries(key.keys)
    .filter(([name]) => !shut.has(name))
    .flatMap(([name, child]) => offersAt(child, below(node, name), join(path, name)));
}

function offer(key: Key, path: string): Offer {
  const { description } = key;
  const doubt = key.kind === 'leaf' ? key.doubt : undefined;
  const value = 'absent' in key ? key.absent?.value : undefined;
  return {
    path,
    description,
    absent: 'absent' in key ? absentText(key.absent).trim() : '',
    doubt: doubt ? `+- ${doubt.half} (${doubt.why})` : '',
    ...(key.kind === 'leaf' && { limits: key.limits.join(' to ') }),
    ...(value !== undefined && { value }),
    example: exampleOf(key),
  };
}

/** Keys of an either-or of which another way stands in the file. */
function shutOut({ rules }: Section, node: unknown): Set<string> {
  const given = (name: string) => below(node, name) !== undefined;
  return new Set(
    rules.flatMap((rule) => {
      const { ways } = rule;
      const begun = ways.filter((_, way) => ownKeys(rule, way).some(given));
      return begun.length === 0 ? [] : ways.flat().filter((name) => !begun.flat().includes(name));
    }),
  );
}

/** Keys that a section cannot do without; of an either-or the first way. */
function needed({ keys, rules }: Section): string[] {
  const either = new Set(rules.flatMap(({ ways }) => ways.flat()));
  const first = rules.filter(({ none }) => !none).flatMap(({ ways }) => ways[0]!);
  const alone = Object.keys(keys).filter((name) => !keys[name]!.optional && !either.has(name));
  return [...new Set([...alone, ...first])];
}

/** The least that can stand at a key. */
function exampleOf(key: Key): unknown {
  switch (key.kind) {
    case 'leaf':
      return key.absent?.value ?? key.example ?? DIMENSIONS[key.dimension].example;
    case 'choice':
      return key.absent?.value ?? key.words[0]!;
    case 'text':
      return '';
    case 'list':
      return Array.from({ length: Math.max(1, key.least) }, () => exampleOf(key.row));
    case 'section':
      return Object.fromEntries(needed(key).map((name) => [name, exampleOf(key.keys[name]!)]));
  }
}
