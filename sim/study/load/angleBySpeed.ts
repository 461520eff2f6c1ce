/** A table of load: one row an angle, one column a speed. */
import * as q from '../../report/quantities.ts';
import { type Column, column, type Table, tableOf } from '../../report/table.ts';
import type { LoadStudy } from './compute.ts';

/** `of`: the figure of a cell, by the places of its angle and its speed; `more`: columns after them, by the place of the angle. */
export function angleBySpeed(
  { angles, speeds }: Pick<LoadStudy, 'angles' | 'speeds'>,
  label: string,
  quantity: q.Quantity,
  of: (i: number, j: number) => number | undefined,
  more: readonly Column<number>[] = [],
): Table {
  return tableOf(
    label,
    [
      column<number>(q.PLATE, (i) => angles[i]),
      ...speeds.map((speed, j) =>
        column<number>(
          { ...quantity, key: `${quantity.key}_at_${speed}_rpm`, head: String(speed) },
          (i) => of(i, j),
          { tinted: true },
        ),
      ),
      ...more,
    ],
    [...angles.keys()],
  );
}
