/** One length at all speeds as tables and as a JSON document. */
import { cylindersDiffer } from '../../engine/manifolds.ts';
import { auditOf } from '../../report/audit.ts';
import { documentHead } from '../../report/document.ts';
import { filed, LENGTH, lengthQuantity } from '../../report/quantities.ts';
import {
  asColumns,
  asObjects,
  type Column,
  column,
  type Table,
  tableOf,
} from '../../report/table.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import type { PointOutcome } from '../../sweep/runner.ts';
import { allPoints, type LengthCurve } from '../../sweep/sweep.ts';
import { cylinderTable } from '../cylinders.ts';
import { pointColumns } from '../points.ts';

/** Of whom a curve is: brake figures hang on the engine. */
export type CurveOf = Pick<Scenario, 'engine' | 'lengthUnit'>;

/** One row a speed. */
export function curveTable(
  { outcomes }: { outcomes: readonly PointOutcome[] },
  { engine, lengthUnit: unit }: CurveOf,
): Table {
  const columns = pointColumns<PointOutcome>({
    point: (one) => one,
    engine: () => engine,
    unit,
    unlike: cylindersDiffer(engine),
  });
  return tableOf('Every speed', columns, outcomes);
}

/** A point of a curve, with what it belongs to. */
export interface At {
  length: number;
  outcome: PointOutcome;
}

/** One row a length and speed, with what else is told of it. */
export function lengthCurveTable(
  curves: readonly LengthCurve[],
  { engine, lengthUnit: unit }: CurveOf,
  more: readonly Column<At>[] = [],
): Table {
  const rows = curves.flatMap((curve) =>
    allPoints(curve).map((outcome) => ({ length: curve.length, outcome })),
  );
  const point = pointColumns<At>({
    point: ({ outcome }) => outcome,
    engine: () => engine,
    unit,
    unlike: cylindersDiffer(engine),
  });
  const columns = [column<At>(lengthQuantity(unit), (at) => at.length), ...point, ...more];
  return tableOf<At>('Every point', columns, rows);
}

/** The columns of one curve: one entry a speed of the sweep, null where the point failed. */
export function curveColumns({ length, outcomes }: LengthCurve, of: CurveOf) {
  const { speeds_rpm: _, ...columns } = asColumns(curveTable({ outcomes }, of));
  return { length_mm: filed(LENGTH, length), ...columns };
}

/** Every speed computed, those of the file and those between. */
export function curveDocument(curve: LengthCurve, scenario: Scenario) {
  const outcomes = allPoints(curve);
  const cylinders = cylinderTable(outcomes, scenario.engine);
  return {
    ...documentHead('curve', scenario),
    speeds_rpm: outcomes.map(({ speed }) => speed),
    ...curveColumns({ length: curve.length, outcomes }, scenario),
    ...(cylinders && { cylinders: asObjects(cylinders) }),
    audit: auditOf(outcomes),
  };
}
