/** Tables read back from what was printed, and cells held against the figures behind them. */
import Papa from 'papaparse';
import { expect } from 'vitest';

/** One row: the text of each cell under its head. */
export type Row = Record<string, string>;

/** What makes a head: its words, without a unit in brackets. */
const words = (head: string) => head.replace(/\s*\[[^\]]*\]/g, '').trim();

export function csvRows(text: string): Row[] {
  const { data, errors } = Papa.parse<Row>(text, { header: true, skipEmptyLines: true });
  expect(errors).toEqual([]);
  return data;
}

/** The tables of a page, in their order. */
export function htmlTables(page: string): Row[][] {
  return [...page.matchAll(/<table[\s\S]*?<\/table>/g)].flatMap(([table]) => {
    const [heads, ...rows] = [...table.matchAll(/<tr[\s\S]*?<\/tr>/g)].map(([row]) =>
      [...row.matchAll(/<t[hd][^>]*>([\s\S]*?)<\/t[hd]>/g)].map(([, cell]) => plain(cell!)),
    );
    return table.includes('<thead>') ? [rows.map((row) => rowOf(heads!, row))] : [];
  });
}

/** More than what a number stands further right than its head. */
const FURTHER_IN = 30;

/**
 * The table of a text whose first head is given: lines from there to the next empty one. A line that
 * begins much further in goes on with the last cell of the one above.
 */
export function textRows(text: string, firstHead: string): Row[] {
  const lines = text.split('\n').map((line) => line.trimEnd());
  const start = lines.findIndex((line) => line.trim().split(/\s{2,}/)[0] === firstHead);
  expect(start, `no table begins with ${firstHead}`).toBeGreaterThanOrEqual(0);
  const indent = (line: string) => line.length - line.trimStart().length;
  const whole: string[] = [];
  for (const line of lines.slice(start, lines.indexOf('', start))) {
    if (indent(line) > indent(lines[start]!) + FURTHER_IN)
      whole[whole.length - 1] += ` ${line.trim()}`;
    else whole.push(line);
  }
  const [heads, ...rows] = whole.map((line) => line.trim().split(/\s{2,}/));
  return rows.filter(([first]) => !first!.startsWith('[')).map((row) => rowOf(heads!, row));
}

function rowOf(heads: readonly string[], cells: readonly string[]): Row {
  return Object.fromEntries(cells.map((cell, i) => [words(heads[i] ?? ''), cell]));
}

const plain = (markup: string) =>
  markup
    .replace(/<[^>]*>/g, '')
    .replaceAll('&amp;', '&')
    .replaceAll('&quot;', '"')
    .replaceAll('&gt;', '>')
    .replaceAll('&lt;', '<');

/** What a cell must show: numbers, a text, nothing at all, or whatever it says. */
export type Shown = number | readonly number[] | string | undefined | typeof ANYTHING;

/** Words that goldens guard. */
export const ANYTHING = Symbol('anything');

/** Each cell of a row shows its figures, rounded to the decimals that it has; every head is known. */
export function expectRow(row: Row, figures: Record<string, Shown>): void {
  for (const [head, cell] of Object.entries(row)) {
    expect(Object.keys(figures), 'a column without a figure').toContain(head);
    const shown = figures[head];
    if (shown === ANYTHING) continue;
    if (typeof shown === 'string') expect(cell, head).toBe(shown);
    else if (shown === undefined) expect(cell, head).toBe('-');
    else expectNumbers(cell, [shown].flat(), head);
  }
}

/** The numbers in a text are these, rounded as they should be. */
export function expectNumbers(text: string, figures: readonly number[], what: string): void {
  const numbers = text.match(/(?<![\w.])[+-]?\d+(\.\d+)?(?!\w)/g) ?? [];
  const decimals = (number: string) => number.split('.')[1]?.length ?? 0;
  expect(
    numbers.map((number) => number.replace('+', '')),
    `${what}: ${figures}`,
  ).toEqual(figures.map((figure, i) => rounded(figure, decimals(numbers[i] ?? '0'))));
}

function rounded(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return Number(text) === 0 ? text.replace('-', '') : text;
}

/** A figure as documents carry it. */
export const tenDigits = (value: number) => Number(value.toPrecision(10));
