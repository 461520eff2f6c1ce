/**
 * A CSV that people write: remarks behind #, one head line that names each column with its unit, then
 * rows. Columns are separated by comma, semicolon or tabulator; decimals have a point. Every problem of
 * the file is found at once, each with its line.
 */
import Papa from 'papaparse';
import { ScenarioError, type ScenarioIssue } from '../errors.ts';
import type { ColumnSet } from './csvColumn.ts';

/** Notes a problem of the file. */
export type Report = (
  line: number,
  path: string,
  message: string,
  remedy: string,
  limit?: string,
) => void;

export interface Row {
  /** Line in the file, counted from 1. */
  line: number;
  cells: string[];
}

/** `# key: text` */
export interface Remark {
  line: number;
  key: string;
  text: string;
}

export interface CsvFile {
  remarks: Remark[];
  head: Row;
  body: Row[];
}

/** What a kind of file is called, and the head line of an example. */
export interface Kind {
  /** `the measured run`, for messages. */
  source: string;
  /** `a run`. */
  short: string;
  example: string;
}

const MOST_CHARACTERS = 1 << 20;

/**
 * Reads a file.
 *
 * @param text the whole file
 * @param name the file's name, for messages
 * @param read makes what is wanted of the table; undefined where it cannot
 * @throws ScenarioError with every problem found, in the order of the file
 */
export function readCsvFile<Result>(
  text: string,
  name: string,
  kind: Kind,
  columns: Pick<ColumnSet<string>, 'columnOf' | 'isUnit'>,
  read: (file: CsvFile, report: Report) => Result | undefined,
): Result {
  const issues: ScenarioIssue[] = [];
  const report: Report = (line, path, message, remedy, limit) =>
    issues.push({
      ...{ file: name, line, column: 1, path, value: undefined, message, remedy },
      ...(limit && { limit }),
    });
  const file = fileOf(text, kind, columns, report);
  const result = file && read(file, report);
  if (result !== undefined && issues.length === 0) return result;
  issues.sort((a, b) => a.line - b.line);
  throw new ScenarioError(issues, kind.source);
}

function fileOf(
  text: string,
  { short, example }: Kind,
  columns: Pick<ColumnSet<string>, 'columnOf' | 'isUnit'>,
  report: Report,
): CsvFile | undefined {
  if (text.length > MOST_CHARACTERS) {
    report(1, '', `the file is too large for ${short}`, `is this a CSV of ${short}?`);
    return undefined;
  }
  const lines = text.replace(/^\uFEFF/, '').split(/\r\n|\n|\r/);
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
  const [head, ...body] = withUnits(rows, columns);
  if (head) return { remarks: remarksOf(lines), head, body };
  report(1, '', 'the file holds no table', `write a head line such as ${example}`);
  return undefined;
}

/** Tells of rows that have more or fewer cells than there are heads. */
export function checkWidths({ head, body }: CsvFile, report: Report): void {
  for (const { line, cells } of body.filter((row) => row.cells.length !== head.cells.length)) {
    const remedy = 'one cell a column; decimals with a point, and no separator for thousands';
    report(line, '', `${cells.length} cells under ${head.cells.length} heads`, remedy);
  }
}

/** Heads with the units of the line below them, where that line holds nothing else. */
function withUnits(
  [head, units, ...body]: Row[],
  { columnOf, isUnit }: Pick<ColumnSet<string>, 'columnOf' | 'isUnit'>,
): Row[] {
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

function remarksOf(lines: readonly string[]): Remark[] {
  return lines.flatMap((line, i) => {
    const [, key, text] = /^\s*#\s*([A-Za-z]+)\s*:\s*(.+?)\s*$/.exec(line) ?? [];
    return key === undefined || text === undefined ? [] : [{ line: i + 1, key, text }];
  });
}
