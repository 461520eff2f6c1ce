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
 * csvFile.ts says how such a file may be written.
 */
import type { AmbientSpecification } from '../specification.ts';
import { cellValue, headOf } from './csvColumn.ts';
import {
  type CsvFile,
  checkWidths,
  type Remark,
  type Report,
  type Row,
  readCsvFile,
} from './csvFile.ts';
import { type Column, MEASURED_COLUMNS } from './measuredColumns.ts';
import { readValue } from './readValue.ts';

/** What a run measured. */
export type MeasuredFigure = 'brake-torque' | 'volumetric-efficiency';

/** Standards that a printed figure may already have been carried to. */
const STANDARD_AIRS = ['ISO 1585', 'SAE J1349', 'DIN 70020'] as const;

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

const MOST_ROWS = 5000;

/**
 * Reads a run.
 *
 * @param text the whole file
 * @param name the file's name, for messages
 * @throws ScenarioError with every problem found, in the order of the file
 */
export function readMeasuredRun(text: string, name: string): MeasuredRun {
  return readCsvFile(text, name, KIND, MEASURED_COLUMNS, runOf);
}

const KIND = { source: 'the measured run', short: 'a run', example: 'speed_rpm,torque_Nm' };

function runOf(file: CsvFile, report: Report): MeasuredRun | undefined {
  const { remarks, head, body } = file;
  const air = airOf(remarks, report);
  const chosen = chosenColumns(head.cells, head.line, report);
  if (!chosen) return undefined;
  checkWidths(file, report);
  return { ...air, ...tableOf(chosen, body, head.line, report) };
}

/** `# pressure: 985 mbar` and its like; a remark without a known name is a remark. */
function airOf(remarks: readonly Remark[], report: Report): MeasuredAir {
  const air: MeasuredAir = { ambient: {} };
  for (const { line, key, text } of remarks) {
    if (key === 'corrected') readCorrected(text, line, air, report);
    else if (Object.hasOwn(AIR_KEYS, key)) readAir(key as AirKey, text, line, air, report);
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

/** A column that no head names. */
interface Missing {
  line: number;
  what: string;
  names: readonly Column['name'][];
  example: string;
  heads: readonly string[];
  report: Report;
}

interface Chosen {
  speed: { at: number; column: Column };
  figure: { at: number; column: Column };
}

/** The column of speeds and the one of figures; others are left aside. */
function chosenColumns(heads: string[], line: number, report: Report): Chosen | undefined {
  const known = heads.flatMap((head, at) => {
    const found = MEASURED_COLUMNS.columnOf(head);
    return found ? [{ at, column: found }] : [];
  });
  const speeds = known.filter(({ column: { name } }) => name === 'speed');
  const figures = known.filter(({ column: { name } }) => name !== 'speed');
  const [speed] = speeds;
  // Torque and power of one run say the same; torque comes off the brake, so it is taken.
  const figure = figures.find(({ column: { name } }) => name === 'torque') ?? figures[0];
  if (speeds.length > 1) report(line, '', 'two columns of speed', 'keep one');
  if (speed && figure) return { speed, figure };
  const lost = (what: string, names: readonly Column['name'][], example: string) =>
    missing({ line, what, names, example, heads, report });
  if (!speed) lost('speed', ['speed'], 'speed_rpm');
  if (!figure) lost('torque, power or volumetric efficiency', FIGURES, 'torque_Nm');
  return undefined;
}

const FIGURES = ['torque', 'power', 'volumetric_efficiency'] as const;

function missing({ line, what, names, example, heads, report }: Missing) {
  const { near, spellings } = MEASURED_COLUMNS;
  const meant = names.map((name) => near(heads, name)).find((one) => one !== undefined);
  report(
    line,
    '',
    `no column of ${what} with its unit; found: ${heads.join(', ')}`,
    meant
      ? `did you mean "${meant}"?`
      : `name a column for example ${example}; known: ${spellings.join(', ')}`,
  );
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
