/** Numbers with names and units: shown as a table, saved as CSV. */
export type Cell = number | string | undefined;

export interface Column {
  name: string;
  /** Unit as written after the name; '' for words, '-' for plain ratios. */
  unit: string;
  /** Decimals shown on the page; CSV carries ten significant digits. */
  decimals?: number;
}

export interface Table {
  columns: Column[];
  rows: Cell[][];
}

/** RFC 4180: comma, CRLF, quotes where needed; the unit stands in brackets after the name. */
export function csv({ columns, rows }: Table): string {
  const lines = [columns.map(heading), ...rows.map((row) => row.map(cellText))];
  return lines.map((line) => `${line.map(quoted).join(',')}\r\n`).join('');
}

export function heading({ name, unit }: Column): string {
  return unit === '' ? name : `${name} [${unit}]`;
}

const DIGITS = 10;

function cellText(cell: Cell): string {
  if (cell === undefined) return '';
  return typeof cell === 'string' ? cell : String(Number(cell.toPrecision(DIGITS)));
}

/** Text that a spreadsheet would take for a formula is kept text by a leading apostrophe. */
function quoted(text: string): string {
  const safe = /^[=+@]|^-(?!\d)/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
