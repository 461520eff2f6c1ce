/**
 * A quantity as a builder writes it, `380 mm`, `62 deg ABDC +- 2 deg`, `38 BTDC` or `1 3/4 in`,
 * becomes a number in SI.
 * The text is read by a fixed grammar, number then unit; nothing is ever evaluated. Only names from
 * the table of dimensions reach mathjs, which does the conversion and so the dimension check.
 */
import { closest } from './closest.ts';
import { convert, DIMENSIONS, type Dimension, type DimensionName } from './dimension.ts';

/** A value read from the file, in the unit inside the program (m, Pa, K, deg, rpm, m^3/s, 1). */
export interface Quantity {
  /** As written. */
  text: string;
  value: number;
  /** Half-width of what the builder is unsure about, same unit; 0 where none was given. */
  spread: number;
  /** Whether a pressure was given above ambient. */
  gauge: boolean;
  /** Whether a crank angle counts from a dead centre named beside it. */
  fromDeadCentre?: boolean;
  /** Set where the value is allowed but seldom seen: the usual range, in words. */
  unusual?: string;
}

/** Why a text is no quantity. */
export interface QuantityProblem {
  problem: string;
  remedy: string;
}

/** What may follow the unit, and where dead centres lie [deg]. */
export interface QuantityContext {
  /** Crank angles of the dead centres that BTDC, ATDC, BBDC and ABDC mean here. */
  deadCentres?: { top: number; bottom: number };
  /** Whether `gauge` may follow a pressure. */
  gauge?: boolean;
  /** What to show as an example; the dimension's own where absent. */
  example?: string;
}

const NUMBER = String.raw`[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?`;
const UNIT = String.raw`[^\s\d.+±-][^\s+±]*|1/min`;
const TAG = 'BTDC|ATDC|BBDC|ABDC|gauge|absolute';
const PLUS_MINUS = String.raw`(?:\+-|\+/-|±)`;
const GRAMMAR = new RegExp(
  String.raw`^(${NUMBER})\s*(${UNIT})?(?:\s+(${TAG}))?(?:\s*${PLUS_MINUS}\s*(${NUMBER})\s*(${UNIT})?)?$`,
);

/** A fraction of a unit of length, alone or after a whole number: `3/4`, `1 3/4`, `1-3/4`. */
const FRACTION = String.raw`[+-]?(?:\d+(?:\s+|-))?\d+/\d+`;
const FRACTION_FIRST = /^([+-]?)(?:(\d+)(?:\s+|-))?(\d+)\/(\d+)(?=\s*[a-z"])/;

/** The text with a fraction written as decimals, and with the unit that a dead centre implies. */
function spelledOut(text: string, dimension: DimensionName): string {
  if (dimension === 'angle') return text.replace(/^([+-]?[\d.]+)\s*([BA][TB]DC)\b/, '$1 deg $2');
  if (dimension !== 'length') return text;
  return text.replace(FRACTION_FIRST, (_, sign, whole = '0', over, under) => {
    return `${sign}${Number(whole) + Number(over) / Number(under)}`;
  });
}

/**
 * Reads one quantity.
 *
 * @param raw what the file holds: text, or a number where the dimension is `ratio`
 * @returns the quantity, or the problem with its remedy
 */
export function readQuantity(
  raw: unknown,
  dimension: DimensionName,
  context: QuantityContext = {},
): Quantity | QuantityProblem {
  const example = context.example ?? DIMENSIONS[dimension].example;
  const text = textOf(raw, dimension, example);
  if (typeof text !== 'string') return text;
  const match = GRAMMAR.exec(spelledOut(text, dimension));
  if (match === null) return unreadable(text, dimension, example);
  const [, number = '', name = '', tag, spreadNumber, spreadName = ''] = match;
  const value = inside(Number(number), name, dimension, example);
  if (typeof value !== 'number') return value;
  const tagged = tag === undefined ? value : applyTag(value, tag, dimension, context);
  if (typeof tagged !== 'number') return tagged;
  const fromDeadCentre = tag !== undefined && dimension === 'angle';
  const read = {
    text,
    value: tagged,
    gauge: tag === 'gauge',
    ...(fromDeadCentre && { fromDeadCentre }),
  };
  if (spreadNumber === undefined) return { ...read, spread: 0 };
  if (spreadName !== name) return unlikeSpread(name, spreadName);
  const spread = spreadInside(Number(number), name, Number(spreadNumber), dimension);
  if (!(spread >= 0 && Number.isFinite(spread))) return badSpread(spreadNumber);
  return { ...read, spread };
}

/** A value of the program in the unit of the example, for messages: 0.086 m -> `86 mm`. */
export function quantityToText(value: number, dimension: DimensionName): string {
  const { inside: from } = DIMENSIONS[dimension];
  const to: Partial<Record<DimensionName, string>> = {
    length: 'mm',
    pressure: 'mbar',
    volume: 'cm3',
  };
  const name = to[dimension] ?? from;
  const shown = from === '' ? value : convert(value, from, name);
  return `${Number(shown.toPrecision(6))} ${name}`.trim();
}

/** Regular expression of the texts that `readQuantity` takes, for editors. */
export function quantityPattern(dimension: DimensionName, context: QuantityContext = {}): string {
  const names = Object.keys(DIMENSIONS[dimension].units).filter((name) => name !== '');
  const units = `(?:${names.join('|')})${dimension === 'ratio' ? '?' : ''}`;
  const tags = tagsOf(dimension, context).join('|');
  const tagged = tags === '' ? units : String.raw`${units}(?:\s+(?:${tags}))?`;
  const unit = dimension === 'angle' && tags !== '' ? `(?:${tagged}|${tags})` : tagged;
  const number = dimension === 'length' ? `(?:${NUMBER}|${FRACTION})` : NUMBER;
  return String.raw`^${number}\s*${unit}(?:\s*${PLUS_MINUS}\s*${NUMBER}\s*${units})?$`;
}

/** Words that may follow the unit. */
function tagsOf(dimension: DimensionName, { deadCentres, gauge }: QuantityContext): string[] {
  if (dimension === 'angle' && deadCentres) return ['BTDC', 'ATDC', 'BBDC', 'ABDC'];
  if (dimension === 'pressure') return gauge ? ['absolute', 'gauge'] : ['absolute'];
  return [];
}

function textOf(raw: unknown, dimension: DimensionName, example: string): string | QuantityProblem {
  const { name } = DIMENSIONS[dimension];
  if (typeof raw === 'string') return raw.trim();
  if (typeof raw !== 'number') {
    const found = raw === null ? 'nothing' : Array.isArray(raw) ? 'a list' : `a ${kindOf(raw)}`;
    return { problem: `must be ${name}, found ${found}`, remedy: `write for example: ${example}` };
  }
  if (!Number.isFinite(raw)) {
    return { problem: `${raw} is not a finite number`, remedy: `write for example: ${example}` };
  }
  if (dimension === 'ratio') return String(raw);
  return {
    problem: `${raw} has no unit`,
    remedy: `write the unit after the number, for example: ${example}`,
  };
}

function kindOf(raw: unknown): string {
  return raw instanceof Object ? 'section of keys' : typeof raw;
}

function unreadable(text: string, dimension: DimensionName, example: string): QuantityProblem {
  const { name } = DIMENSIONS[dimension];
  const shown = text.length > 60 ? `${text.slice(0, 60)}...` : text;
  const remedy = /\d,\d/.test(text)
    ? `use a point for decimals and no separator for thousands, for example: ${example}`
    : `write a number and a unit, for example: ${example}`;
  return { problem: `cannot read "${shown}" as ${name}`, remedy };
}

/** Number and unit name -> number in the unit inside the program. */
function inside(
  number: number,
  name: string,
  dimension: DimensionName,
  example: string,
): number | QuantityProblem {
  const { units, inside: target } = DIMENSIONS[dimension] as Dimension;
  if (!Number.isFinite(number)) {
    return { problem: `${number} is not a finite number`, remedy: `write for example: ${example}` };
  }
  if (!Object.hasOwn(units, name)) return wrongUnit(number, name, dimension, example);
  if (dimension === 'ratio') return name === '%' ? number / 100 : number;
  return rounded(convert(number, units[name]!, target));
}

/** Without the round-off of a conversion, so that 86 mm is 0.086 m and not a hair more. */
function rounded(value: number): number {
  return Number(value.toPrecision(15));
}

function wrongUnit(
  number: number,
  name: string,
  dimension: DimensionName,
  example: string,
): QuantityProblem {
  const { name: wanted, units } = DIMENSIONS[dimension] as Dimension;
  if (name === '') {
    return {
      problem: `${number} has no unit`,
      remedy: `write the unit after the number, for example: ${example}`,
    };
  }
  const names = Object.keys(units).filter((known) => known !== '');
  const other = Object.values<Dimension>(DIMENSIONS).find((d) => Object.hasOwn(d.units, name));
  const near = closest(name, names);
  const tagged = dimension === 'pressure' && suffixed(number, name, names);
  if (tagged) return { problem: `"${name}" is not a unit of pressure`, remedy: tagged };
  return {
    problem: other
      ? `"${number} ${name}" is ${other.name}, not ${wanted}`
      : `"${name}" is not a unit of ${wanted.replace(/^an? /, '')}`,
    remedy: near
      ? `did you mean "${near}"? known units: ${names.join(', ')}`
      : `use one of: ${names.join(', ')}`,
  };
}

/** What to write for a unit that says in its name against what it counts: psig, bara. */
function suffixed(number: number, name: string, names: readonly string[]): string | undefined {
  const [, unit = '', suffix] = /^(.+?)\(?([ag])\)?$/.exec(name) ?? [];
  if (!names.includes(unit)) return undefined;
  return `write "${number} ${unit} ${suffix === 'g' ? 'gauge' : 'absolute'}"`;
}

function applyTag(
  value: number,
  tag: string,
  dimension: DimensionName,
  context: QuantityContext,
): number | QuantityProblem {
  if (!tagsOf(dimension, context).includes(tag)) {
    return {
      problem: `"${tag}" has no meaning here`,
      remedy: `leave "${tag}" away and give ${DIMENSIONS[dimension].name} by itself`,
    };
  }
  const { top, bottom } = context.deadCentres ?? { top: 0, bottom: 0 };
  if (tag === 'BTDC') return top - value;
  if (tag === 'ATDC') return top + value;
  if (tag === 'BBDC') return bottom - value;
  return tag === 'ABDC' ? bottom + value : value;
}

/** Half-width in the unit inside; a difference, so that zero points of temperature scales drop out. */
function spreadInside(
  number: number,
  name: string,
  half: number,
  dimension: DimensionName,
): number {
  const [low, high] = [number, number + half].map((at) => inside(at, name, dimension, ''));
  return typeof low === 'number' && typeof high === 'number' ? rounded(high - low) : Number.NaN;
}

function unlikeSpread(name: string, spreadName: string): QuantityProblem {
  return {
    problem: `value and spread have different units ("${name}" and "${spreadName}")`,
    remedy: `give the spread in "${name}" too`,
  };
}

function badSpread(spread: string): QuantityProblem {
  return {
    problem: `the spread ${spread} is no half-width`,
    remedy: 'give it positive and finite',
  };
}
