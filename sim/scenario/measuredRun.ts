/**
 * A run off the dyno as plain CSV: one head line that names each column with its unit, one row a
 * speed, and the air of the day in remarks above it:
 *
 *   # pressure: 985 mbar
 *   # temperature: 24 degC
 *   # humidity: 40 %
 *   # corrected: none
 *   speed_rpm,torque_Nm
 *   3000,171.2
 *
 * Columns are separated by comma, semicolon or tabulator; decimals have a point. Every problem of
 * the file is found at once, each with its line.
 */
import Papa from 'papaparse';
import { ScenarioError, type ScenarioIssue } from '../errors.ts';
import type { AmbientSpecification } from '../specification.ts';
import { closest } from './closest.ts';
import { type Column, cellValue, columnOf, headOf, isUnit, SPELLINGS } from './measuredColumns.ts';
import { readValue } from './readValue.ts';

/** What a run measured. */
export type MeasuredFigure = 'brake-torque' | 'volumetric-efficiency';

/** Standards that a printed figure may already have been carried to. */
export const STANDARD_AIRS = ['ISO 1585', 'SAE J1349', 'DIN 70020'] as const;

export type StandardAir = (typeof STANDARD_AIRS)[number];

/** Air at the mouths while the run was made. */
export interface MeasuredAir {
  /** What the file says of the air; what it leaves out is absent. */
  ambient: Partial<AmbientSpecification>;
  /** The standard that the figures are already corrected to; absent where they are as read. */
  corrected?: StandardAir;
}

export interface MeasuredRun extends MeasuredAir {
  figure: MeasuredFigure;
  /** Engine speeds [rpm], rising, each once. */
  speeds: number[];
  /** Brake torque [N m], or volumetric efficiency [-], at each speed. */
  values: number[];
}

/** Fewest rows that say anything of a shape. */
export const FEWEST_ROWS = 5;

const MOST_CHARACTERS = 1 << 20;
const MOST_ROWS = 5000;

/**
 * Reads a run.
 *
 * @param text the whole file
 * @param name the file's name, for messages
 * @throws ScenarioError with every problem found, in the order of the file
 */
export function readMeasuredRun(text: string, name: string): MeasuredRun {
  const issues: ScenarioIssue[] = [];
  const report: Report = (line, path, message, remedy, limit) =>
    issues.push({
      file: name,
      line,
      column: 1,
      path,
      value: undefined,
      message,
      remedy,
      ...(limit && { limit }),
    });
  const run = text.length > MOST_CHARACTERS ? tooLong(report) : runOf(text, report);
  if (run && issues.length === 0) return run;
  issues.sort((a, b) => a.line - b.line);
  throw new ScenarioError(issues, 'the measured run');
}

type Report = (line: number, path: string, message: string, remedy: string, limit?: string) => void;

function tooLong(report: Report): undefined {
  report(1, '', 'the file is too large for a run', 'is this a CSV of one run?');
}

function runOf(text: string, report: Report): MeasuredRun | undefined {
  const lines = text.replace(/^\uFEFF/, '').split(/\r\n|\n|\r/);
  const air = airOf(lines, report);
  // Remarks become empty rows, so that a row's place in the table is its line in the file.
  const bare = lines.map((line) => (line.trimStart().startsWith('#') ? '' : line)).join('\n');
  const { data, errors } = Papa.parse<string[]>(bare, {
    delimiter: delimiterOf(bare),
    newline: '\n',
  });
  for (const { message, row } of errors) {
    report((row ?? 0) + 1, '', message, 'write plain numbers without quotes');
  }
  const rows = data
    .map((cells, i) => ({ line: i + 1, cells: cells.map((cell) => cell.trim()) }))
    .filter(({ cells }) => cells.some((cell) => cell !== ''));
  const [head, ...body] = withUnits(rows);
  if (!head) {
    report(1, '', 'the file holds no table', `write a head line such as ${EXAMPLE}`);
    return undefined;
  }
  const chosen = chosenColumns(head.cells, head.line, report);
  if (!chosen) return undefined;
  for (const { line, cells } of body.filter((row) => row.cells.length !== head.cells.length)) {
    const remedy = 'one cell a column; decimals with a point, and no separator for thousands';
    report(line, '', `${cells.length} cells under ${head.cells.length} heads`, remedy);
  }
  return { ...air, ...tableOf(chosen, body, head.line, report) };
}

const EXAMPLE = 'speed_rpm,torque_Nm';

/** Heads with the units of the line below them, where that line holds nothing else. */
function withUnits([head, units, ...body]: Row[]): Row[] {
  const all = [head, units, ...body].filter((row) => row !== undefined);
  if (!head || !units?.cells.every((cell) => cell === '' || isUnit(cell))) return all;
  const cells = head.cells.map((cell, i) => {
    return columnOf(cell) ? cell : `${cell} ${units.cells[i] ?? ''}`;
  });
  return [{ ...head, cells }, ...body];
}

/** What the head line is split by; the guess of the library stumbles over empty lines. */
function delimiterOf(text: string): string {
  const head = text.split('\n').find((line) => line.trim() !== '') ?? '';
  return [';', '\t'].find((sign) => head.includes(sign)) ?? ',';
}

/** `# pressure: 985 mbar` and its like; a remark without a known name is a remark. */
function airOf(lines: readonly string[], report: Report): MeasuredAir {
  const air: MeasuredAir = { ambient: {} };
  for (const [i, line] of lines.entries()) {
    const [, key, text] = /^\s*#\s*([A-Za-z]+)\s*:\s*(.+?)\s*$/.exec(line) ?? [];
    if (key === undefined || text === undefined) continue;
    if (key === 'corrected') readCorrected(text, i + 1, air, report);
    else if (Object.hasOwn(AIR_KEYS, key)) readAir(key as AirKey, text, i + 1, air, report);
  }
  return air;
}

const AIR_KEYS = {
  pressure: 'pressure',
  temperature: 'temperature',
  humidity: 'relativeHumidity',
} as const;

type AirKey = keyof typeof AIR_KEYS;

function readAir(key: AirKey, text: string, line: number, air: MeasuredAir, report: Report): void {
  const read = readValue(`ambient.${key}`, text);
  if ('value' in read) air.ambient[AIR_KEYS[key]] = read.value;
  else report(line, key, read.problem, read.remedy, read.limit);
}

function readCorrected(text: string, line: number, air: MeasuredAir, report: Report): void {
  const plain = (word: string) => word.toLowerCase().replace(/[^a-z0-9]/g, '');
  if (plain(text) === 'none') return;
  const standard = STANDARD_AIRS.find((known) => plain(known) === plain(text));
  if (standard) air.corrected = standard;
  else {
    const remedy = `write none, or one of: ${STANDARD_AIRS.join(', ')}`;
    report(line, 'corrected', `"${text}" is no standard known here`, remedy);
  }
}

interface Chosen {
  speed: { at: number; column: Column };
  figure: { at: number; column: Column };
}

/** The column of speeds and the one of figures; others are left aside. */
function chosenColumns(heads: string[], line: number, report: Report): Chosen | undefined {
  const known = heads.flatMap((head, at) => {
    const found = columnOf(head);
    return found ? [{ at, column: found }] : [];
  });
  const speeds = known.filter(({ column: { name } }) => name === 'speed');
  const figures = known.filter(({ column: { name } }) => name !== 'speed');
  const [speed] = speeds;
  // Torque and power of one run say the same; torque comes off the brake, so it is taken.
  const figure = figures.find(({ column: { name } }) => name === 'torque') ?? figures[0];
  if (speeds.length > 1) report(line, '', 'two columns of speed', 'keep one');
  if (speed && figure) return { speed, figure };
  if (!speed) missing(line, 'speed', 'speed_rpm', heads, report);
  if (!figure) missing(line, 'torque, power or volumetric efficiency', 'torque_Nm', heads, report);
  return undefined;
}

function missing(line: number, what: string, example: string, heads: string[], report: Report) {
  const near = heads.map((head) => closest(head, SPELLINGS)).find((one) => one !== undefined);
  report(
    line,
    '',
    `no column of ${what} with its unit; found: ${heads.join(', ')}`,
    near
      ? `did you mean "${near}"?`
      : `name a column for example ${example}; known: ${SPELLINGS.join(', ')}`,
  );
}

interface Row {
  line: number;
  cells: string[];
}

function tableOf(chosen: Chosen, body: readonly Row[], headLine: number, report: Report) {
  const { speed, figure } = chosen;
  if (body.length > MOST_ROWS) {
    report(headLine, '', `the run has ${body.length} rows`, 'thin it out', `at most ${MOST_ROWS}`);
  }
  const points = body.slice(0, MOST_ROWS).map(({ line, cells }) => {
    const cellOf = ({ at, column }: Chosen['speed']) => {
      const read = cellValue(cells[at] ?? '', column);
      if (typeof read === 'number') return read;
      report(line, headOf(column), read.problem, read.remedy, read.limit);
      return Number.NaN;
    };
    const rpm = cellOf(speed);
    const raw = cellOf(figure);
    // T = P / omega.
    const value = figure.column.name === 'power' ? raw / ((rpm * Math.PI) / 30) : raw;
    return { line, rpm, value };
  });
  points.sort((a, b) => a.rpm - b.rpm);
  for (const [i, { rpm, line }] of points.entries()) {
    if (points[i - 1]?.rpm !== rpm) continue;
    report(line, 'speed', `${rpm} rpm stands twice`, 'keep one row a speed, or their mean');
  }
  if (points.length < FEWEST_ROWS) {
    const limit = `at least ${FEWEST_ROWS} rows`;
    report(headLine, '', `the run has ${points.length} rows`, 'a shape needs more speeds', limit);
  }
  return {
    figure: (figure.column.name === 'volumetric_efficiency'
      ? 'volumetric-efficiency'
      : 'brake-torque') as MeasuredFigure,
    speeds: points.map(({ rpm }) => rpm),
    values: points.map(({ value }) => value),
  };
}
