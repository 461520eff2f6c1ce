/** What makes a figure of a value: key, head, unit, rounding; how it is told and filed. */
import { type LengthUnit, METRES } from '../decision/lengthUnit.ts';
import { brief, fixed, plain, withSign } from './numbers.ts';

export interface Quantity {
  /** Key in files; ends in the unit where there is one. */
  key: string;
  /** Key of a whole column in a JSON document, where it differs. */
  list?: string;
  /** Short head for people, and a long one where the short one needs explaining. */
  head: string;
  name?: string;
  /** Unit that people read; '' for words and counts, '-' for plain ratios. */
  unit: string;
  /** From SI to the unit of the key, 1 where absent; to that of people, the same where absent. */
  times?: number;
  shown?: number;
  decimals?: number;
  /** Significant digits without trailing zeros, in place of decimals. */
  digits?: number;
  /** At most so many decimals, beside digits. */
  finest?: number;
  /** Whether a plus stands before a gain. */
  signed?: boolean;
}

export function quantity(
  key: string,
  head: string,
  unit: string,
  rest: Partial<Quantity>,
): Quantity {
  return { key, head, unit, ...rest };
}

/** A share [-] in files that people read in per cent. */
export function share(key: string, head: string, rest: Partial<Quantity> = {}): Quantity {
  return { key, head, unit: '%', shown: 100, decimals: 1, ...rest };
}

/** A figure that is a percentage already. */
export function percentage(key: string, head: string, rest: Partial<Quantity> = {}): Quantity {
  return { key, head, unit: '%', decimals: 1, ...rest };
}

export const [MILLI, MICRO, KILO] = [1e3, 1e6, 1e-3];

const THOUSANDTHS = 3;

/** A length in the unit of the builder: thousandths of an inch for hundredths of a millimetre; all else stays as it is. */
export function inUnit<Any extends Partial<Quantity>>(one: Any, unit: LengthUnit = 'mm'): Any {
  if (unit === 'mm' || one.unit !== 'mm') return one;
  const fine =
    one.digits === undefined
      ? { decimals: (one.decimals ?? 0) + 1 }
      : { digits: 4, finest: THOUSANDTHS };
  return { ...one, unit, shown: 1 / METRES[unit], ...fine };
}

/** What turns a value into a figure. */
type Scale = Omit<Quantity, 'key' | 'head' | 'unit'>;

/** The figure in its unit for people, without it. */
export function shown(
  { times = 1, shown: scale = times, decimals = 0, digits, finest, signed }: Scale,
  value: number,
): string {
  const figure = scale * value;
  const fine = finest === undefined ? figure : Number(figure.toFixed(finest));
  const text = digits === undefined ? fixed(figure, decimals) : brief(fine, digits);
  return signed ? withSign(text) : text;
}

/** The figure with its unit: `86 mm`, `+3.1 %`, `0.947`. */
export function told(quantity: Quantity, value: number): string {
  const { unit } = quantity;
  return unit === '' || unit === '-' ? shown(quantity, value) : `${shown(quantity, value)} ${unit}`;
}

/** The figure as files write it. */
export function filed({ times = 1 }: Scale, value: number | undefined): number | null {
  return value === undefined ? null : plain(times * value);
}

/** Head and unit, for axes and columns: `engine speed [rpm]`. */
export function headed({ name, head, unit }: Quantity): string {
  return unit === '' ? (name ?? head) : `${name ?? head} [${unit}]`;
}
