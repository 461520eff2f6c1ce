/** Points of varied keys as a table and as a JSON document. */
import { combinations } from '../../combinations.ts';
import { cylindersDiffer } from '../../engine/manifolds.ts';
import { auditOf } from '../../report/audit.ts';
import { documentHead } from '../../report/document.ts';
import { asColumns, type Column, type Table, tableOf, words } from '../../report/table.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import type { EngineSpecification } from '../../specification.ts';
import type { PointOutcome } from '../../sweep/runner.ts';
import { pointColumns } from '../points.ts';

/** Every combination of values, the last key running fastest, at every speed. */
export interface ValuePoints {
  keys: readonly Readonly<{ path: string; values: readonly number[]; texts: readonly string[] }>[];
  /** [combination][speed] */
  outcomes: readonly (readonly PointOutcome[])[];
  /** One a combination. */
  engines: readonly EngineSpecification[];
}

/** What the scenario would say in each combination, one text a key. */
export function textsOf({ keys }: ValuePoints): string[][] {
  const rows = combinations(keys.map(({ texts }) => texts.length));
  return rows.map((row) => keys.map(({ texts }, k) => texts[row[k]!]!));
}

/** One row a combination and speed, one column a key. */
export function valuesTable(points: ValuePoints, { lengthUnit: unit }: Scenario): Table {
  type Row = { texts: readonly string[]; outcome: PointOutcome; engine: EngineSpecification };
  const texts = textsOf(points);
  const rows = points.outcomes.flatMap((row, i) => {
    const of = { texts: texts[i]!, engine: points.engines[i]! };
    return row.map((outcome): Row => ({ ...of, outcome }));
  });
  const columns: Column<Row>[] = [
    ...points.keys.map(({ path }, k) =>
      words<Row>(path, path.split('.').slice(-2).join('.'), (row) => row.texts[k], { name: path }),
    ),
    ...pointColumns<Row>({
      point: ({ outcome }) => outcome,
      engine: (row) => row.engine,
      unit,
      unlike: points.engines.some(cylindersDiffer),
    }),
  ];
  return tableOf('Every point', columns, rows);
}

export function tableDocument(points: ValuePoints, scenario: Scenario) {
  const { keys, outcomes } = points;
  return {
    ...documentHead('table', scenario),
    keys: keys.map(({ path, values, texts }) => ({ key: path, values: texts, values_si: values })),
    ...asColumns(valuesTable(points, scenario)),
    audit: auditOf(outcomes.flat()),
  };
}
