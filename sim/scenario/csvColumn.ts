/** Columns of a CSV with a unit in every head: which head means what, and what a cell under it holds. */
import { closest } from './closest.ts';
import type { LeafProblem } from './key.ts';

export interface CsvColumn<Name extends string = string> {
  name: Name;
  /** Unit in the head; '' for a plain number. */
  unit: string;
  /** Limits of a plausible figure, inside the program. */
  limits: readonly [number, number];
  inside(number: number): number;
  /** Whether only whole numbers make sense. */
  whole?: boolean;
}

/** The columns that a kind of file may have. */
export interface ColumnSet<Name extends string> {
  /** Heads as the documentation spells them. */
  spellings: readonly string[];
  /** `torque_Nm`, `Torque [Nm]`, `Power (kW)` and their like; undefined where a head is none of them. */
  columnOf(head: string): CsvColumn<Name> | undefined;
  /** The name that a head is, where only its unit is missing. */
  unitless(head: string): Name | undefined;
  /** Whether a text is a unit and nothing else. */
  isUnit(text: string): boolean;
  /** Limits of the first column of that name, inside the program. */
  limitsOf(name: Name): readonly [number, number];
  /** A head, of that name where one is given, that one of these is close to. */
  near(heads: readonly string[], name?: Name): string | undefined;
}

/** Letters, digits and per cent only, lower case. */
const plain = (text: string) => text.toLowerCase().replace(/[^a-z0-9%]/g, '');

/**
 * @param columns by head, in the spelling of the documentation
 * @param names spellings of names without signs; '' where the unit alone says it
 * @param units spellings of units without signs, each with the unit it means
 */
export function columnSet<Name extends string>(
  columns: readonly CsvColumn<Name>[],
  names: Record<Name, readonly string[]>,
  units: Record<string, string>,
): ColumnSet<Name> {
  const spellings = columns.map(headOf);
  return {
    spellings,
    columnOf(head) {
      const text = plain(head);
      return columns.find(({ name, unit }) =>
        names[name].some((start) => {
          if (!text.startsWith(start)) return false;
          const rest = text.slice(start.length);
          return (rest === '' ? '' : units[rest]) === unit;
        }),
      );
    },
    unitless(head) {
      const text = plain(head);
      return columns.find(
        ({ name, unit }) => unit !== '' && text !== '' && names[name].includes(text),
      )?.name;
    },
    isUnit: (text) => Object.hasOwn(units, plain(text)),
    limitsOf: (wanted) => columns.find(({ name }) => name === wanted)!.limits,
    near(heads, name) {
      const known = name === undefined ? columns : columns.filter((one) => one.name === name);
      const wanted = known.map(headOf);
      return heads.map((head) => closest(head, wanted)).find((one) => one !== undefined);
    },
  };
}

export function headOf({ name, unit }: Pick<CsvColumn, 'name' | 'unit'>): string {
  const suffix = unit === '%' ? 'percent' : unit.replace('/', '_per_');
  return suffix === '' ? name : `${name}_${suffix}`;
}

/** The figure of a cell inside the program, or what is wrong with it. */
export function cellValue(text: string, kind: CsvColumn): number | LeafProblem {
  if (!/^[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d+)?$/.test(text)) {
    const comma = /^[+-]?\d+,\d+$/.test(text);
    return {
      problem: text === '' ? 'the cell is empty' : `"${text}" is no number`,
      remedy: comma
        ? 'write decimals with a point'
        : 'write a plain number; the unit stands in the head',
    };
  }
  const value = kind.inside(Number(text));
  const [low, high] = kind.limits;
  const limit = `${shown(low, kind)} to ${shown(high, kind)}`;
  if (value < low || value > high) {
    const remedy = kind.unit === '' ? 'check the figure' : 'is the unit in the head right?';
    return { problem: `${text} is out of range`, remedy, limit };
  }
  if (!kind.whole || Number.isInteger(value)) return value;
  return { problem: `${text} is no whole number`, remedy: 'count from 1', limit };
}

function shown(inside: number, kind: CsvColumn): string {
  const one = kind.inside(1);
  return `${Number((inside / one).toPrecision(3))} ${kind.unit}`.trim();
}
