/** Zod's issues in the words of a scenario: place, message, limit and remedy. */
import type { z } from 'zod';
import type { ScenarioIssue } from '../errors.ts';
import { closest } from './closest.ts';
import { isFourStroke } from './foreign.ts';
import { keyAt, nodeAt } from './keyPath.ts';
import { scenarioKeys } from './schema.ts';
import type { Problem } from './view.ts';
import type { YamlSource } from './yamlSource.ts';

type ZodIssue = z.core.$ZodIssue;

/** One zod issue as issues of the file; an issue over several keys becomes one for each. */
export function issueFrom(issue: ZodIssue, source: YamlSource): ScenarioIssue[] {
  if (issue.code === 'unrecognized_keys') {
    return issue.keys.map((key) => unknownKey([...issue.path, key], source));
  }
  const value = nodeAt(source.tree, dotted(issue.path));
  const base = { file: source.file, ...source.place(issue.path), path: dotted(issue.path), value };
  return [{ ...base, ...wording(issue, value) }];
}

/** A problem between values as an issue of the file. */
export function issueOf({ path: dots, ...said }: Problem, source: YamlSource): ScenarioIssue {
  const place = source.place(dots.split('.'));
  return { file: source.file, ...place, path: dots, value: nodeAt(source.tree, dots), ...said };
}

function unknownKey(path: PropertyKey[], source: YamlSource): ScenarioIssue {
  const key = String(path.at(-1));
  const section = keyAt(scenarioKeys, dotted(path.slice(0, -1)));
  const names = section?.kind === 'section' ? Object.keys(section.keys) : [];
  const known = names.filter((name) => name !== '$schema');
  const near = closest(key, known);
  const value = nodeAt(source.tree, dotted(path));
  const at = { file: source.file, ...source.placeOfKey(path), path: dotted(path), value };
  if (isFourStroke(key, value)) {
    const message = 'four strokes go without saying: no other engine is computed';
    return { ...at, message, remedy: 'leave the line out' };
  }
  return {
    ...at,
    message: `"${key}" is not a key of this section`,
    remedy: near ? `did you mean "${near}"?` : `known keys: ${known.join(', ')}`,
  };
}

/** What is wrong and what to do, by the code of the issue. */
function wording(
  issue: ZodIssue,
  value: unknown,
): Pick<ScenarioIssue, 'message' | 'remedy' | 'limit'> {
  if (issue.code === 'custom') {
    const { remedy, limit } = issue.params as { remedy: string; limit?: string };
    return { message: issue.message, remedy, ...(limit !== undefined && { limit }) };
  }
  if (issue.code === 'invalid_type') return wrongType(issue.expected, value);
  if (issue.code === 'invalid_value') {
    const words = issue.values.map(String);
    const near = typeof value === 'string' ? closest(value, words) : undefined;
    return {
      message: value === undefined ? 'is missing' : `"${String(value)}" is not known here`,
      limit: `one of ${words.join(', ')}`,
      remedy: near ? `did you mean "${near}"?` : `write one of: ${words.join(', ')}`,
    };
  }
  if (issue.code === 'too_small') return tooFew(issue.minimum, issue.origin);
  if (issue.code === 'too_big') return tooMany(issue.maximum, issue.origin);
  return { message: issue.message, remedy: 'see docs/scenario.md for this key' };
}

const FORMS: Record<string, { name: string; remedy: string }> = {
  object: { name: 'a section of keys', remedy: 'put keys below it, indented, one a line' },
  array: { name: 'a list of rows', remedy: 'put rows below it, each beginning with "- "' },
  string: { name: 'text', remedy: 'write text; quote it if it looks like a number' },
};

function wrongType(expected: string, value: unknown) {
  const { name, remedy } = FORMS[expected] ?? { name: expected, remedy: 'see docs/scenario.md' };
  if (value === undefined) return { message: 'is missing', remedy: `add it as ${name}: ${remedy}` };
  return { message: `must be ${name}, found ${formOf(value)}`, remedy };
}

function formOf(value: unknown): string {
  if (value === null) return 'nothing';
  if (Array.isArray(value)) return 'a list';
  return typeof value === 'object' ? 'a section of keys' : JSON.stringify(value);
}

function tooFew(minimum: number | bigint, origin: string) {
  const limit = `at least ${minimum}`;
  return origin === 'array'
    ? { message: 'the list has too few rows', limit: `${limit} rows`, remedy: 'add rows' }
    : { message: 'the text is empty', limit: `${limit} character`, remedy: 'write something' };
}

function tooMany(maximum: number | bigint, origin: string) {
  const limit = `at most ${maximum}`;
  return origin === 'array'
    ? { message: 'the list has too many rows', limit: `${limit} rows`, remedy: 'remove rows' }
    : { message: 'the text is too long', limit: `${limit} characters`, remedy: 'shorten it' };
}

const dotted = (path: readonly PropertyKey[]) => path.map(String).join('.');
