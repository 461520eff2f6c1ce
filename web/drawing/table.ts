/** Numbers of a view: a table of the core, shown as it is and saved as its CSV. */
import { asCsv, type Column, type quantities, type Table, tableOf } from '../../sim/index.ts';

export type { Column, Table };

/** The table as CSV, units in the keys. */
export const csv = (table: Table): string => asCsv(table);

type Quantity = quantities.Quantity;

/** A quantity of one curve among several: the curve is part of key and head. */
export function ofCurve(quantity: Quantity, curve: string): Quantity {
  const name = `${quantity.name ?? quantity.head}, ${curve}`;
  return { ...quantity, key: `${quantity.key} ${curve}`, head: name, name };
}

/** Rows that are known by their number alone. */
export function numbered(label: string, rows: number, columns: readonly Column<number>[]): Table {
  return tableOf(
    label,
    columns,
    Array.from({ length: rows }, (_, i) => i),
  );
}
