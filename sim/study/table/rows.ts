/**
 * Variants from a table: a head line that names keys of the scenario, then a row a variant with what the file
 * would say there. A unit may stand in the head, `intake.trumpet.diameter [mm]`, and plain numbers below it.
 */
import Papa from 'papaparse';
import { ScenarioError, type ScenarioIssue } from '../../errors.ts';
import type { Change } from '../../scenario/change.ts';
import { readLeaf } from '../../scenario/key.ts';
import { keyAt } from '../../scenario/keyPath.ts';
import { engineReader } from '../../scenario/read.ts';
import { scenarioKeys } from '../../scenario/schema.ts';
import type { EngineSpecification } from '../../specification.ts';

/** Most variants of one job. */
const MOST_ROWS = 1_000_000;

/** A column: a key, the unit its cells leave out ('' where they have it), and its name in results. */
export interface KeyColumn {
  path: string;
  unit: string;
  name: string;
}

export interface VariantRows {
  file: string;
  keys: readonly KeyColumn[];
  /** What each row says, and its line in the file. */
  rows: readonly { cells: readonly string[]; line: number }[];
}

/**
 * Reads the table; every cell is held against its key.
 *
 * @throws ScenarioError with line and column of everything wrong
 */
export function readRows(text: string, file: string): VariantRows {
  const issues: ScenarioIssue[] = [];
  const report = (at: Pick<ScenarioIssue, 'line' | 'column' | 'path'>, rest: Wrong) => {
    issues.push({ file, value: undefined, ...at, ...rest });
  };
  const lines = linesOf(text);
  const [head, ...rows] = lines;
  const keys = (head?.cells ?? []).map((cell, i) => keyOf(cell, i, report));
  if (keys.length === 0 || rows.length === 0 || rows.length > MOST_ROWS)
    report({ line: 1, column: 1, path: '' }, EMPTY);
  const twice = keys.find((key, i) => key && keys.findIndex((one) => one?.path === key.path) < i);
  if (twice) report({ line: 1, column: keys.lastIndexOf(twice) + 1, path: twice.path }, TWICE);
  if (issues.length === 0) checkCells(keys as KeyColumn[], rows, report);
  if (issues.length > 0) throw new ScenarioError(issues, 'the rows');
  return { file, keys: keys as KeyColumn[], rows };
}

type Wrong = Pick<ScenarioIssue, 'message' | 'remedy'> & Partial<ScenarioIssue>;
type Told = (at: Pick<ScenarioIssue, 'line' | 'column' | 'path'>, rest: Wrong) => void;

const EXAMPLE = 'write keys above, for example intake.trumpet.length [mm], and a row a variant';
const EMPTY = { message: `the table holds no rows, or more than ${MOST_ROWS}`, remedy: EXAMPLE };
const TWICE = { message: 'is there twice', remedy: 'name each key once' };

function linesOf(text: string): { cells: string[]; line: number }[] {
  const bare = text.replace(/^\uFEFF/, '');
  const [first = ''] = bare.split('\n', 1);
  const delimiter = [';', '\t'].find((sign) => first.includes(sign)) ?? ',';
  return Papa.parse<string[]>(bare, { delimiter })
    .data.map((cells, i) => ({ cells: cells.map((cell) => cell.trim()), line: i + 1 }))
    .filter(({ cells }) => cells.some((cell) => cell !== ''));
}

function keyOf(cell: string, i: number, report: Told): KeyColumn | undefined {
  const [, path = '', unit = ''] = /^([^[\s]*)\s*(?:\[([^\]]*)\])?$/.exec(cell) ?? [];
  if (keyAt(scenarioKeys, path)?.kind === 'leaf')
    return { path, unit, name: unit === '' ? path : `${path}_${unit}` };
  const message = 'is no key of a scenario that holds a number';
  report({ line: 1, column: i + 1, path: cell }, { message, remedy: EXAMPLE, value: cell });
  return undefined;
}

function checkCells(keys: readonly KeyColumn[], rows: VariantRows['rows'], report: Told): void {
  for (const { cells, line } of rows) {
    if (cells.length !== keys.length) {
      const message = `${cells.length} cells under ${keys.length} heads`;
      report({ line, column: 1, path: '' }, { message, remedy: 'one cell a key' });
      continue;
    }
    keys.forEach((key, i) => {
      const read = readLeaf(saidBy(key, cells[i]!), leafAt(key.path));
      if (!('problem' in read)) return;
      const { problem: message, ...rest } = read;
      report({ line, column: i + 1, path: key.path }, { message, value: cells[i], ...rest });
    });
  }
}

function leafAt(path: string) {
  const key = keyAt(scenarioKeys, path);
  if (key?.kind !== 'leaf') throw new RangeError(`${path} is no leaf`);
  return key;
}

const saidBy = ({ unit }: KeyColumn, cell: string) => (unit === '' ? cell : `${cell} ${unit}`);

/** The engine of each row, made when it is asked for; only the last is kept. */
export class RowEngines {
  readonly length: number;
  private readonly read: (changes: readonly Change[]) => EngineSpecification;
  private readonly table: VariantRows;
  private last: { index: number; engine: EngineSpecification } | undefined;

  constructor(text: string, name: string, table: VariantRows) {
    this.table = table;
    this.length = table.rows.length;
    this.read = engineReader(text, name, this.changes(0));
  }

  /** @throws ScenarioError at the row, where it breaks a rule of the scenario */
  at(index: number): EngineSpecification {
    if (this.last?.index === index) return this.last.engine;
    const engine = this.made(index);
    this.last = { index, engine };
    return engine;
  }

  private made(index: number): EngineSpecification {
    try {
      return this.read(this.changes(index));
    } catch (error) {
      if (!(error instanceof ScenarioError)) throw error;
      throw new ScenarioError(
        error.issues.map((issue) => this.placed(issue, index)),
        'the rows',
      );
    }
  }

  private changes(index: number): Change[] {
    const { keys, rows } = this.table;
    return keys.map((key, i) => ({ path: key.path, text: saidBy(key, rows[index]!.cells[i]!) }));
  }

  /** The issue at the row's own line, and at the column of its key where it has one. */
  private placed(issue: ScenarioIssue, index: number): ScenarioIssue {
    const { file, keys, rows } = this.table;
    const column = keys.findIndex(({ path }) => path === issue.path) + 1;
    return { ...issue, file, line: rows[index]!.line, column: Math.max(column, 1) };
  }
}
