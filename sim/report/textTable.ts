/** Columns of plain text: words to the left, figures to the right. */

/** Rows of equal length under their heads; columns are two blanks apart. */
export function textTable(
  heads: readonly string[],
  rows: readonly (readonly string[])[],
  leftAligned: readonly number[] = [],
): string[] {
  const all = [heads, ...rows];
  const widths = heads.map((_, column) => Math.max(...all.map((row) => row[column]!.length)));
  const line = (row: readonly string[]) =>
    row
      .map((cell, column) => {
        const width = widths[column]!;
        return leftAligned.includes(column) ? cell.padEnd(width) : cell.padStart(width);
      })
      .join('  ')
      .trimEnd();
  return all.map(line);
}

/** A paragraph broken at blanks into lines of at most `width`, later lines indented. */
export function wrapped(text: string, width = 92, indent = ''): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/)) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (longer.length > width && line !== '') {
      lines.push(line);
      line = indent + word;
    } else line = longer;
  }
  return line === '' ? lines : [...lines, line];
}
