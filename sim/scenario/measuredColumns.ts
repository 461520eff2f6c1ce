/** Columns of a run off the dyno: which head means what, and what a cell under it holds. */
import { convert } from './dimension.ts';
import type { LeafProblem } from './key.ts';

export interface Column {
  name: 'speed' | 'torque' | 'power' | 'volumetric_efficiency';
  unit: string;
  /** Limits of a plausible figure, inside the program. */
  limits: readonly [number, number];
  inside(number: number): number;
}

/** Columns by head, in the spelling of the documentation. */
const COLUMNS: readonly Column[] = [
  column('speed', 'rpm', [50, 30_000], (x) => x),
  column('torque', 'Nm', [0, 5000], (x) => x),
  column('torque', 'lbft', [0, 5000], (x) => convert(x, 'lbf ft', 'N m')),
  column('power', 'kW', [0, 5e6], (x) => 1e3 * x),
  column('power', 'hp', [0, 5e6], (x) => convert(x, 'hp', 'W')),
  // Metric horsepower: 75 kilogram-force metres a second (DIN 66036, from memory).
  column('power', 'PS', [0, 5e6], (x) => convert(75 * x, 'kgf m / s', 'W')),
  column('volumetric_efficiency', '', [0.05, 2.5], (x) => x),
  column('volumetric_efficiency', '%', [0.05, 2.5], (x) => x / 100),
];

function column(
  name: Column['name'],
  unit: string,
  limits: Column['limits'],
  inside: Column['inside'],
): Column {
  return { name, unit, limits, inside };
}

/** Spellings of units, letters, digits and per cent only, lower case. */
const UNIT_NAMES: Record<string, string> = {
  rpm: 'rpm',
  '1min': 'rpm',
  nm: 'Nm',
  lbft: 'lbft',
  lbsft: 'lbft',
  ftlb: 'lbft',
  lbfft: 'lbft',
  ftlbf: 'lbft',
  ftlbs: 'lbft',
  kw: 'kW',
  hp: 'hp',
  bhp: 'hp',
  ps: 'PS',
  '%': '%',
  percent: '%',
};

/** Spellings of names; where there is none, the unit says it. */
const NAMES: Record<Column['name'], readonly string[]> = {
  speed: ['speed', 'enginespeed', 'revs', ''],
  torque: ['torque', 'braketorque', 'enginetorque', 'tq', ''],
  power: ['power', 'brakepower', 'enginepower', 'pwr', ''],
  volumetric_efficiency: ['volumetricefficiency', 've'],
};

/** Heads as the documentation spells them. */
export const SPELLINGS = COLUMNS.map(headOf);

export function headOf({ name, unit }: Pick<Column, 'name' | 'unit'>): string {
  const suffix = unit === '%' ? 'percent' : unit;
  return suffix === '' ? name : `${name}_${suffix}`;
}

const plain = (text: string) => text.toLowerCase().replace(/[^a-z0-9%]/g, '');

export const isUnit = (text: string) => Object.hasOwn(UNIT_NAMES, plain(text));

/** `torque_Nm`, `Torque [Nm]`, `RPM`, `lb-ft`, `Power (kW)` and their like. */
export function columnOf(head: string): Column | undefined {
  const text = plain(head);
  return COLUMNS.find(({ name, unit }) =>
    NAMES[name].some((start) => {
      if (!text.startsWith(start)) return false;
      const rest = text.slice(start.length);
      return (rest === '' ? '' : UNIT_NAMES[rest]) === unit;
    }),
  );
}

/** The figure of a cell inside the program, or what is wrong with it. */
export function cellValue(text: string, kind: Column): number | LeafProblem {
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
  if (value >= low && value <= high) return value;
  const limit = `${shown(low, kind)} to ${shown(high, kind)}`;
  return { problem: `${text} is out of range`, remedy: 'is the unit in the head right?', limit };
}

function shown(inside: number, kind: Column): string {
  const one = kind.inside(1);
  return `${Number((inside / one).toPrecision(3))} ${kind.unit}`.trim();
}
