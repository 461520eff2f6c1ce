/** One length at all speeds as tables and as a JSON document. */
import { auditOf } from '../../report/audit.ts';
import { documentHead } from '../../report/document.ts';
import { filed, LENGTH } from '../../report/quantities.ts';
import { asColumns, type Column, column, type Table, tableOf, within } from '../../report/table.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import type { PointOutcome } from '../../sweep/runner.ts';
import { allPoints, type LengthCurve } from '../../sweep/sweep.ts';
import { POINT } from '../points.ts';

/** One row a speed. */
export function curveTable({ outcomes }: { outcomes: readonly PointOutcome[] }): Table {
  return tableOf('Every speed', POINT, outcomes);
}

/** A point of a curve, with what it belongs to. */
export interface At {
  length: number;
  outcome: PointOutcome;
}

/** One row a length and speed, with what else is told of it. */
export function lengthCurveTable(
  curves: readonly LengthCurve[],
  more: readonly Column<At>[] = [],
): Table {
  const rows = curves.flatMap((curve) =>
    allPoints(curve).map((outcome) => ({ length: curve.length, outcome })),
  );
  const point = within(POINT, ({ outcome }: At) => outcome);
  const columns = [column<At>(LENGTH, (at) => at.length), ...point, ...more];
  return tableOf<At>('Every point', columns, rows);
}

/** The columns of one curve: one entry a speed of the sweep, null where the point failed. */
export function curveColumns({ length, outcomes }: LengthCurve) {
  const { speeds_rpm: _, ...columns } = asColumns(curveTable({ outcomes }));
  return { length_mm: filed(LENGTH, length), ...columns };
}

/** Every speed computed, those of the file and those between. */
export function curveDocument(curve: LengthCurve, scenario: Scenario) {
  const outcomes = allPoints(curve);
  return {
    ...documentHead('curve', scenario),
    speeds_rpm: outcomes.map(({ speed }) => speed),
    ...curveColumns({ length: curve.length, outcomes }),
    audit: auditOf(outcomes),
  };
}
