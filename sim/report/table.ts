/**
 * A table told once: columns say what they hold, and JSON, CSV, text and HTML are one function each
 * over any table. Cells are in SI; every format rounds and scales by the quantity of the column.
 */
import Papa from 'papaparse';
import type { LengthUnit } from '../decision/lengthUnit.ts';
import { html, Markup } from './markup.ts';
import { NO_FIGURE } from './numbers.ts';
import { filed, headed, inUnit, type Quantity, shown } from './quantities.ts';
import { tint } from './tint.ts';

export type Value = number | string | boolean | undefined;

/** What a column holds: a quantity, or words under a key and a head. */
export interface Head extends Omit<Quantity, 'unit'> {
  /** '' for words, counts and where it stands elsewhere. */
  unit?: string;
  /** Which formats the column stands in; all where absent. */
  only?: 'files' | 'people';
  /** How a value reads that is no number, or not as one; such columns run from the left. */
  words?(value: Value): string;
  /** Whether HTML tints its cells by value, together with all others so marked. */
  tinted?: boolean;
}

export interface Column<Row> extends Head {
  of(row: Row): Value;
}

/** How a row stands out. */
export type Look = 'cut' | 'now' | '';

export interface Table {
  /** What the table is, in a few words. */
  label: string;
  columns: readonly Head[];
  cells: readonly (readonly Value[])[];
  looks?: readonly Look[];
}

/** A table for files, whose rows may be made when they are asked for. */
export interface LongTable extends Omit<Table, 'cells' | 'looks'> {
  cells: Cells;
}

export interface Cells {
  readonly length: number;
  slice(from: number, to: number): readonly (readonly Value[])[];
}

export function tableOf<Row>(
  label: string,
  columns: readonly Column<Row>[],
  rows: readonly Row[],
  look?: (row: Row) => Look,
): Table {
  const cells = rows.map((row) => columns.map((column) => column.of(row)));
  return { label, columns, cells, ...(look && { looks: rows.map(look) }) };
}

/** A column of a quantity, where need be under another head. */
export function column<Row>(
  quantity: Quantity,
  of: (row: Row) => number | undefined,
  rest: Partial<Head> = {},
): Column<Row> {
  return { ...quantity, ...rest, of };
}

/** The same columns over rows that hold what they are of. */
export function within<Row, Part>(
  columns: readonly Column<Part>[],
  part: (row: Row) => Part,
): Column<Row>[] {
  return columns.map((one) => ({ ...one, of: (row) => one.of(part(row)) }));
}

/** A column of words. */
export function words<Row>(
  key: string,
  head: string,
  of: (row: Row) => Value,
  rest: Partial<Head> = {},
): Column<Row> {
  return { key, head, words: (value) => String(value ?? ''), ...rest, of };
}

/** The table with the columns of one audience only. */
function shownTo(audience: 'files' | 'people', { columns, cells }: Table) {
  const kept = columns.flatMap(({ only = audience }, i) => (only === audience ? [i] : []));
  return {
    columns: kept.map((i) => columns[i]!),
    rows: cells.map((row) => kept.map((i) => row[i])),
  };
}

export type Filed = number | string | boolean | null;

function cellOf(head: Head, value: Value): Filed {
  return typeof value === 'number' ? filed(head, value) : (value ?? null);
}

function textOf(head: Head, value: Value): string {
  if (head.words) return head.words(value);
  if (typeof value === 'number') return shown(head, value);
  return value === undefined ? NO_FIGURE : String(value);
}

/** Columns of a JSON document, each under its own key. */
export function asColumns(table: Table): Record<string, Filed[]> {
  const { columns, rows } = shownTo('files', table);
  return Object.fromEntries(
    columns.map((head, i) => [head.list ?? head.key, rows.map((row) => cellOf(head, row[i]))]),
  );
}

/** Columns of a file, each with what a cell of the CSV holds; null where there is none. */
export function filedColumns(table: Table): { key: string; values: Filed[] }[] {
  const { columns, rows } = shownTo('files', table);
  return columns.map((head, i) => ({
    key: head.key,
    values: rows.map((row) => cellOf(head, row[i])),
  }));
}

/** Rows that are made ready for a file at once. */
const PIECE = 5000;

/** The table in pieces of its rows; an empty one is one piece. */
export function* piecesOf({ label, columns, cells }: LongTable): Iterable<Table> {
  let from = 0;
  do {
    yield { label, columns, cells: cells.slice(from, from + PIECE) };
    from += PIECE;
  } while (from < cells.length);
}

/** Rows of a JSON document, each an object. */
export function asObjects(table: Table): Record<string, Filed>[] {
  const { columns, rows } = shownTo('files', table);
  return rows.map((row) =>
    Object.fromEntries(columns.map((head, i) => [head.key, cellOf(head, row[i])])),
  );
}

/** The first row alone. */
export const asObject = (table: Table) => asObjects(table)[0]!;

/** A text that a spreadsheet would take for a formula. */
const FORMULA = /^[=+@]|^-(?!\d)/;

/**
 * CSV (RFC 4180): one head line with the unit in every key, then rows; no remarks, so that any
 * spreadsheet or script reads it. A figure that does not exist is an empty cell.
 */
export const asCsv = (table: Table): string => [...csvPieces(table)].join('');

/** The same piece by piece, for tables that are too big to be one text. */
export function* csvPieces(table: LongTable): Iterable<string> {
  let head = true;
  for (const piece of piecesOf(table)) {
    const { columns: kept, rows } = shownTo('files', piece);
    const data = rows.map((row) => row.map((value, i) => cellOf(kept[i]!, value)));
    const fields = kept.map(({ key }) => key);
    const format = { newline: '\r\n', escapeFormulae: FORMULA } as const;
    yield `${Papa.unparse(head ? { fields, data } : data, format)}\r\n`;
    head = false;
  }
}

/** Heads, units and cells as people read them, lengths in their unit, and which columns run from the left. */
export function asGrid(table: Table, unit?: LengthUnit) {
  const { columns: kept, rows } = shownTo('people', table);
  const columns = kept.map((one) => inUnit(one, unit));
  return {
    columns,
    heads: columns.map(({ head }) => head),
    names: columns.map((one) => headed({ ...one, unit: one.unit ?? '' })),
    units: columns.map(({ unit = '' }) => (unit === '' ? '' : `[${unit}]`)),
    cells: rows.map((row) => row.map((value, i) => textOf(columns[i]!, value))),
    left: columns.flatMap(({ words: own }, i) => (own ? [i] : [])),
    values: rows,
  };
}

/** An HTML table in a frame that scrolls sideways; words run from the left. */
export function asHtml(table: Table, unit?: LengthUnit): Markup {
  const { columns, names, cells, left, values } = asGrid(table, unit);
  const shades = shadesOf(columns, values);
  const word = (i: number) => (left.includes(i) ? new Markup(' class="word"') : new Markup(''));
  const cell = (text: string, r: number, i: number) => {
    const shade = shades(values[r]![i], i);
    if (i === 0) return html`<th scope="row"${word(i)}>${text}</th>`;
    return shade ? html`<td style="${shade}">${text}</td>` : html`<td${word(i)}>${text}</td>`;
  };
  const row = (texts: readonly string[], r: number) => {
    const look = table.looks?.[r] ?? '';
    const open = look === '' ? html`<tr>` : html`<tr class="${look}">`;
    return html`${open}${texts.map((text, i) => cell(text, r, i))}</tr>`;
  };
  return html`<div class="wide" tabindex="0" role="region" aria-label="${table.label}">
<table${columns.some(({ tinted }) => tinted) ? html` class="map"` : html``}>
<thead><tr>${names.map((name, i) => html`<th scope="col"${word(i)}>${name}</th>`)}</tr></thead>
<tbody>
${cells.map(row)}
</tbody>
</table>
</div>`;
}

/** The style of a tinted cell by where its value lies among all of them. */
function shadesOf(columns: readonly Head[], rows: readonly (readonly Value[])[]) {
  const all = rows.flatMap((row) => row.filter((_, i) => columns[i]!.tinted));
  const known = all.filter((value): value is number => Number.isFinite(value));
  const [low, high] = [Math.min(...known), Math.max(...known)];
  return (value: Value, i: number) =>
    columns[i]!.tinted && Number.isFinite(value)
      ? tint(high > low ? ((value as number) - low) / (high - low) : 0.5)
      : undefined;
}
