/**
 * Slips of the pen in a scenario file, one figure at a time: ten times too much or too little, the
 * wrong sign, a neighbouring unit, before for after a dead centre, bottom for top.
 */
import { isScalar, parseDocument, visit } from 'yaml';
import { demoText } from './toy.ts';

export const DEMOS = [
  'hill-climb',
  'sprint-single',
  'endurance-six',
  'boosted-four',
  'cross-plane-eight',
  'uneven-twin',
  'forest-four',
  'road-four',
] as const;

export interface Slip {
  demo: (typeof DEMOS)[number];
  /** The key; rows of a table by their number. */
  path: string;
  kind: 'ten times' | 'a tenth' | 'sign' | 'unit' | 'dead centre' | 'bottom for top';
  was: string;
  is: string;
  /** The whole file with the slip. */
  text: string;
}

/** What else may stand after a number, in the mind of who writes it. */
const UNITS: Record<string, readonly string[]> = {
  mm: ['in', 'cm'],
  in: ['mm', 'cm'],
  m: ['mm', 'ft'],
  degC: ['degF', 'K'],
  degF: ['degC'],
  K: ['degC', 'degF'],
  mbar: ['kPa', 'psi'],
  bar: ['psi', 'mbar'],
  inHg: ['mbar', 'mmHg'],
  inH2O: ['mbar', 'kPa'],
  cfm: ['L/s', 'm3/h'],
  'L/s': ['cfm', 'L/min'],
  '%': [''],
};

const AFTER: Record<string, string> = { BTDC: 'ATDC', ATDC: 'BTDC', BBDC: 'ABDC', ABDC: 'BBDC' };
const OTHER_END: Record<string, string> = {
  BTDC: 'BBDC',
  ATDC: 'ABDC',
  BBDC: 'BTDC',
  ABDC: 'ATDC',
};

const FIGURE = /^([+-]?[\d.]+)\s*([^\s\d+]*)(?:\s+(\w+))?(.*)$/;

/** The slips that one figure invites; a figure of 0 has neither size nor sign. */
function slipsOf(figure: string): [Slip['kind'], string][] {
  const [, number = '', unit = '', word = '', rest = ''] = FIGURE.exec(figure) ?? [];
  const value = Number(number);
  if (number === '' || !Number.isFinite(value)) return [];
  const written = (x: number | string, u = unit, w = word) =>
    `${[typeof x === 'number' ? Number(x.toPrecision(12)) : x, u, w].filter((t) => t !== '').join(' ')}${rest}`;
  const sized: [Slip['kind'], string][] =
    value === 0
      ? []
      : [
          ['ten times', written(10 * value)],
          ['a tenth', written(value / 10)],
          ['sign', written(-value)],
        ];
  return [
    ...sized,
    ...(UNITS[unit] ?? []).map((u): [Slip['kind'], string] => ['unit', written(number, u)]),
    ...(AFTER[word] && value !== 0
      ? [['dead centre', written(number, unit, AFTER[word])] as [Slip['kind'], string]]
      : []),
    ...(OTHER_END[word]
      ? [['bottom for top', written(number, unit, OTHER_END[word])] as [Slip['kind'], string]]
      : []),
  ];
}

/** Sections that say what the engine is. */
const ENGINE = ['ambient', 'engine', 'intake', 'exhaust', 'fuel'];

/** Rows of a table whose figures are slipped: first, last and some between. */
const ROWS = 5;

/** Every slip in the figures that describe the engine of a demo. */
export function slipsIn(demo: Slip['demo']): Slip[] {
  const text = demoText(demo);
  return figuresOf(text).flatMap(({ path, from, to }) => {
    const was = text.slice(from, to);
    return slipsOf(was).map(([kind, is]) => {
      return { demo, path, kind, was, is, text: text.slice(0, from) + is + text.slice(to) };
    });
  });
}

function figuresOf(text: string): { path: string; from: number; to: number }[] {
  const found: { path: string; from: number; to: number }[] = [];
  visit(parseDocument(text), {
    Scalar(key, node, ancestors) {
      if (key === 'key' || !isScalar(node) || !node.range) return;
      const path = ancestors
        .flatMap((above, i) => {
          const next = ancestors[i + 1] ?? node;
          if (above && 'key' in above) return [String(above.key)];
          if (above && 'items' in above && Array.isArray(above.items)) {
            const row = (above.items as unknown[]).indexOf(next);
            return 'key' in Object(next) ? [] : [`${row}/${above.items.length}`];
          }
          return [];
        })
        .join('.');
      if (ENGINE.includes(path.split('.')[0]!) && chosenRow(path)) {
        found.push({ path: path.replace(/\/\d+/g, ''), from: node.range[0], to: node.range[1] });
      }
    },
  });
  return found;
}

function chosenRow(path: string): boolean {
  const [, row, count] = /\.(\d+)\/(\d+)\./.exec(path) ?? [];
  if (row === undefined) return true;
  const rows = Array.from({ length: ROWS }, (_, i) => {
    return Math.round((i * (Number(count) - 1)) / (ROWS - 1));
  });
  return rows.includes(Number(row));
}
