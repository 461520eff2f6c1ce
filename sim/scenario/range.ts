/**
 * The values that one key is to take: a list, `42 mm, 45 mm, 48 mm`, or a range with its step,
 * `42 mm .. 48 mm / 2 mm`, both ends and step in one unit. Each value is then read with the words
 * and limits of the key itself.
 */
import { DIMENSIONS, type DimensionName } from './dimension.ts';
import { type Key, type LeafProblem, readLeaf } from './key.ts';
import { keyAt } from './keyPath.ts';

/** A key and the values it takes in turn. */
export interface Axis {
  /** Keys from the root, joined by dots. */
  path: string;
  /** As listed, in the unit inside the program. */
  values: number[];
  /** What the file would say for each. */
  texts: string[];
}

export type RangeProblem = LeafProblem;

/** Most values of one key. */
const MOST_VALUES = 100;

/** A range counts as whole steps when it misses by less than this share of a step [-]. */
const WHOLE = 1e-6;

/**
 * Reads the values of the key at `path`.
 *
 * @param root the tree that knows the key
 * @returns the axis, or what is wrong with it
 */
export function readAxis(root: Key, path: string, text: string): Axis | RangeProblem {
  const leaf = keyAt(root, path);
  if (leaf?.kind !== 'leaf') {
    const remedy = 'name a key that holds a number, for example intake.trumpet.diameter';
    return { problem: `"${path}" is no key with a number`, remedy };
  }
  const texts = textsOf(text, leaf.dimension);
  if (!Array.isArray(texts)) return texts;
  const values: number[] = [];
  for (const one of texts) {
    const read = readLeaf(one, leaf);
    if ('problem' in read) return read;
    values.push(read.value);
  }
  return { path, values, texts };
}

const RANGE = /^(.+?)\s*\.\.\s*(.+?)\s*\/\s*(?=[\d.])(.+)$/;
const MEASURE = /^([+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)\s*(.*)$/;

function textsOf(text: string, dimension: DimensionName): string[] | RangeProblem {
  const range = RANGE.exec(text.trim());
  const texts = range
    ? stepTexts(range.slice(1) as [string, string, string])
    : text.split(',').map((one) => one.trim());
  if (!Array.isArray(texts)) return texts;
  if (texts.some((one) => one === '' || one.includes('..'))) {
    const { example } = DIMENSIONS[dimension];
    const remedy = `list values as "${example}, ..." or give a range as "FIRST .. LAST / STEP", each with its unit`;
    return { problem: `cannot read "${text}" as values`, remedy };
  }
  if (texts.length <= MOST_VALUES) return texts;
  const limit = `at most ${MOST_VALUES}`;
  return { problem: `${texts.length} values are too many`, remedy: 'take wider steps', limit };
}

/** First, last and step, in one unit, as single values. */
function stepTexts([first, last, step]: [string, string, string]): string[] | RangeProblem {
  const [from, to, by] = [first, last, step].map(measure);
  if (!from || !to || !by || from.unit !== to.unit || by.unit !== from.unit.split(' ')[0]) {
    const problem = `"${first}", "${last}" and "${step}" do not share a unit`;
    return {
      problem,
      remedy: 'give first, last and step in the same unit, as 42 mm .. 48 mm / 2 mm',
    };
  }
  const steps = (to.number - from.number) / by.number;
  if (!(steps >= 0 && Math.abs(steps - Math.round(steps)) <= WHOLE)) {
    const problem = `from ${first} to ${last} is no whole number of steps of ${step}`;
    return { problem, remedy: 'let the last be greater than the first by a whole number of steps' };
  }
  const count = Math.min(Math.round(steps), MOST_VALUES) + 1;
  return Array.from({ length: count }, (_, i) =>
    `${Number((from.number + i * by.number).toPrecision(12))} ${from.unit}`.trim(),
  );
}

function measure(text: string): { number: number; unit: string } | undefined {
  const match = MEASURE.exec(text.trim());
  return match ? { number: Number(match[1]), unit: match[2]!.replace(/\s+/g, ' ') } : undefined;
}
