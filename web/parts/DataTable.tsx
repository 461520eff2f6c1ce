/** The numbers of a view, for reading and for those who do not see the plot. */
import { fixed } from '../format.ts';
import { type Cell, type Column, heading, type Table } from '../views/table.ts';

export function DataTable({ table, caption }: { table: Table; caption: string }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must take the keyboard
    <section class="numbers" tabIndex={0} aria-label={`Numbers: ${caption}`}>
      <table>
        <caption>{caption}</caption>
        <thead>
          <tr>
            {table.columns.map((column) => (
              <th key={column.name} scope="col">
                {heading(column)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {table.rows.map((row) => (
            <tr key={String(row[0])}>
              {row.map((cell, i) => {
                const column = table.columns[i]!;
                const text = shown(cell, column);
                return i === 0 ? (
                  <th key={column.name} scope="row">
                    {text}
                  </th>
                ) : (
                  <td key={column.name}>{text}</td>
                );
              })}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function shown(cell: Cell, { decimals }: Column): string {
  if (cell === undefined) return '–';
  return typeof cell === 'string' ? cell : fixed(cell, decimals ?? 3);
}
