/** Tables and paragraphs of plain text that fit a width: words to the left, figures to the right. */
import type { LengthUnit } from '../decision/lengthUnit.ts';
import { counted } from './numbers.ts';
import { asGrid, type Table } from './table.ts';

/** Columns are this far apart. */
const GAP = 2;

/** No column is wider; longer words wrap. */
const WIDEST = 60;

/** A column of words is never narrowed below this, even where its words must break. */
const NARROWEST = 10;

/** The width of a text that is read on no terminal. */
export const WIDTH = 100;

/** More rows than people read; the files have them all. */
const MOST_ROWS = 200;

/** A table of any kind as lines of text; what does not fit the width goes on below. */
export function asText(table: Table, width = WIDTH, unit?: LengthUnit): string[] {
  const kept = rowsRead(table);
  const { heads, units, cells, left } = asGrid({ ...table, cells: kept }, unit);
  const rows = units.some((unit) => unit !== '') ? [units, ...cells] : cells;
  const more = table.cells.length - kept.length;
  const rest = more > 0 ? [`... and ${counted(more, 'row')} more in the files`] : [];
  return [...textTable(heads, rows, left, width), ...rest];
}

/** All of a table that can be read; of a longer one its beginning, and what stands out. */
function rowsRead({ cells, looks = [] }: Table): Table['cells'] {
  if (cells.length <= MOST_ROWS) return cells;
  return cells.filter((_, i) => i < MOST_ROWS || (looks[i] ?? '') !== '');
}

/** Rows of equal length under their heads. */
export function textTable(
  heads: readonly string[],
  rows: readonly (readonly string[])[],
  left: readonly number[] = [],
  width = WIDTH,
): string[] {
  const all = heads.every((head) => head === '') ? rows : [heads, ...rows];
  if (all.length === 0) return [];
  const widths = widthsOf(all, left, width);
  const blocks = blocksOf(widths, width);
  return blocks.flatMap((columns, i) => [
    ...(i > 0 ? [''] : []),
    ...all.flatMap((row) => rowLines(row, columns, widths, left)),
  ]);
}

/** Natural widths, columns of words narrowed until the whole fits; words break only where they must. */
function widthsOf(
  rows: readonly (readonly string[])[],
  left: readonly number[],
  width: number,
): number[] {
  const widths = rows[0]!.map((_, i) =>
    Math.min(WIDEST, Math.max(...rows.map((row) => row[i]!.length))),
  );
  const longest = (i: number) =>
    Math.max(...rows.flatMap((row) => row[i]!.split(/\s+/)).map((word) => word.length));
  narrow(widths, width, left, longest);
  narrow(widths, width, left, () => NARROWEST);
  return widths;
}

/** Takes from the widest of the columns that are wider than they need be, until the whole fits. */
function narrow(
  widths: number[],
  width: number,
  columns: readonly number[],
  least: (column: number) => number,
): void {
  const needs = new Map(columns.map((i) => [i, least(i)]));
  const total = () => widths.reduce((sum, one) => sum + one + GAP, -GAP);
  while (total() > width) {
    const open = columns.filter((i) => widths[i]! > needs.get(i)!);
    if (open.length === 0) return;
    const widest = open.reduce((a, b) => (widths[b]! > widths[a]! ? b : a));
    widths[widest]!--;
  }
}

/** Which columns stand beside one another; the first is repeated in every block. */
function blocksOf(widths: readonly number[], width: number): number[][] {
  const blocks: number[][] = [[0]];
  let used = widths[0]!;
  for (let i = 1; i < widths.length; i++) {
    if (used + GAP + widths[i]! > width && blocks.at(-1)!.length > 1) {
      blocks.push([0]);
      used = widths[0]!;
    }
    blocks.at(-1)!.push(i);
    used += GAP + widths[i]!;
  }
  return blocks;
}

/** One row as the lines that its longest cell takes. */
function rowLines(
  row: readonly string[],
  columns: readonly number[],
  widths: readonly number[],
  left: readonly number[],
): string[] {
  const cells = columns.map((i) => wrapped(row[i]!, widths[i]));
  const height = Math.max(1, ...cells.map((lines) => lines.length));
  return Array.from({ length: height }, (_, line) =>
    columns
      .map((i, at) => {
        const text = cells[at]![line] ?? '';
        return left.includes(i) ? text.padEnd(widths[i]!) : text.padStart(widths[i]!);
      })
      .join(' '.repeat(GAP))
      .trimEnd(),
  );
}

/** A paragraph broken at blanks, though not before a per cent, into lines of at most `width`, later lines indented; long words break. */
export function wrapped(text: string, width = 92, indent = ''): string[] {
  const room = Math.max(1, width - indent.length);
  const words = text
    .split(/\s+(?!%)/)
    .flatMap((word) => word.match(new RegExp(`.{1,${room}}`, 'g')) ?? []);
  const lines: string[] = [];
  let line = '';
  for (const word of words) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (longer.length > width && line !== '') {
      lines.push(line);
      line = indent + word;
    } else line = longer;
  }
  return line === '' ? lines : [...lines, line];
}
