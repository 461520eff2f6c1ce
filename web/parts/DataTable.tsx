/** The numbers of a view, for reading and for those who do not see the plot. */
import { asGrid, type Table } from '../../sim/index.ts';
import { typeset } from '../format.ts';
import { unit } from '../state/scenario.ts';
import { ofThrottle } from '../state/throttle.ts';

export function DataTable({ table, caption: told }: { table: Table; caption: string }) {
  const grid = asGrid(table, unit.value);
  const { columns } = grid;
  const { names, cells, caption } = ofThrottle({ ...grid, caption: told });
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must take the keyboard
    <section class="numbers" tabIndex={0} aria-label={`Numbers: ${caption}`}>
      <table>
        <caption>{caption}</caption>
        <thead>
          <tr>
            {columns.map(({ key }, i) => (
              <th key={key} scope="col">
                {names[i]}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {cells.map((row) => (
            <tr key={row.join(' ')}>
              <th scope="row">{typeset(row[0]!)}</th>
              {row.slice(1).map((text, i) => (
                <td key={columns[i + 1]!.key}>{typeset(text)}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
