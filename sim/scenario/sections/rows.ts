/** Checks on lists of rows. */
import type { Reading } from '../reading.ts';

/** A column whose numbers must rise; the first row that does not is reported. */
export function checkRising(reading: Reading, path: string, key: string, column: number[]): void {
  const row = column.findIndex((value, i) => i > 0 && value <= column[i - 1]!);
  if (row < 1) return;
  reading.problem(
    `${path}.${row}.${key}`,
    `${key} does not rise from row to row`,
    'sort the rows and leave none twice',
  );
}
