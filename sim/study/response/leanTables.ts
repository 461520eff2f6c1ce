/** How lean charges run while plates move, by pressure and by angle, walls dry and wet. */
import * as q from '../../report/quantities.ts';
import { column, type Table, tableOf, words } from '../../report/table.ts';
import type { Followed, ResponseStudy, ResponseWay, WayName } from './compute.ts';
import { SIGNALS, type Signal } from './fuelled.ts';

/** Lambda over that wanted from which a charge counts as lean [-]; common practice, no source. */
const TOO_LEAN = 1.1;

export const WET = q.ratio('wet_lambda_over_wanted', 'walls wet', 2);
const LEAN_CHARGES = { ...q.CYCLES, key: 'lean_charges', head: 'lean charges' };
const WET_CHARGES = { ...q.CYCLES, key: 'wet_lean_charges', head: 'lean, walls wet' };
const LEANEST = q.ratio('leanest_lambda_over_wanted', 'leanest', 2);
const WET_LEANEST = q.ratio('wet_leanest_lambda_over_wanted', 'leanest, wet', 2);
const RICHEST = q.ratio('richest_lambda_over_wanted', 'richest', 2);

type Lambdas = 'lean' | 'wet';

/** Lambda over that wanted of every charge; none where walls are not known to be wet. */
export const lambdasOf = ({ charges }: ResponseWay, signal: Signal, walls: Lambdas = 'lean') =>
  charges.flatMap((one: Followed) => one[walls]?.[signal] ?? []);

export const leanCount = (lambdas: readonly number[]) =>
  lambdas.filter((lambda) => lambda > TOO_LEAN).length;

interface Row {
  name: WayName;
  signal: Signal;
  dry: readonly number[];
  wet: readonly number[];
}

/** One row a way and signal. */
export function fuelledTable({ ways, film }: ResponseStudy): Table {
  const rows = ways.flatMap((way) =>
    SIGNALS.map(
      (signal): Row => ({
        name: way.name,
        signal,
        dry: lambdasOf(way, signal),
        wet: lambdasOf(way, signal, 'wet'),
      }),
    ),
  );
  return tableOf<Row>(
    'Mixture on the way, fuelled by each signal',
    [
      words('way', 'way', ({ name }) => name),
      words('fuelled_by', 'fuelled by', ({ signal }) => signal),
      column(LEAN_CHARGES, ({ dry }) => leanCount(dry)),
      column(LEANEST, ({ dry }) => Math.max(...dry)),
      column(RICHEST, ({ dry }) => Math.min(...dry)),
      ...(film
        ? [
            column<Row>(WET_CHARGES, ({ wet }) => leanCount(wet)),
            column<Row>(WET_LEANEST, ({ wet }) => Math.max(...wet)),
          ]
        : []),
    ],
    rows,
  );
}
