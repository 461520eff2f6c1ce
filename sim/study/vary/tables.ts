/** A sweep of other keys than the length as tables and as a JSON document. */
import { auditOf } from '../../report/audit.ts';
import { documentHead } from '../../report/document.ts';
import { plain } from '../../report/numbers.ts';
import * as q from '../../report/quantities.ts';
import { asColumns, type Column, type Table, tableOf, within, words } from '../../report/table.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import type { PointOutcome } from '../../sweep/runner.ts';
import { curveTable } from '../curve/tables.ts';
import { POINT, REMARK } from '../points.ts';
import { allOutcomes } from '../study.ts';
import { targetDocument, tradeOffColumns, tradeOffDocument } from '../tradeOffs.ts';
import type { VariantStudy, WeighedVariant } from './compute.ts';

/** Every variant: what it is worth and what it costs. */
export function variantsTable({ keys, weighed, recommended, pareto, target }: VariantStudy): Table {
  const remark = (row: WeighedVariant) =>
    [
      ...(row === recommended ? ['best'] : []),
      ...(pareto.includes(row) ? ['unbeaten'] : []),
      ...(row.meetsFloors ? [] : ['breaks a floor']),
    ].join(', ');
  return tableOf(
    'Every variant',
    [
      ...keys.map(({ path }, k) =>
        words<WeighedVariant>(path, shortName(path), ({ texts }) => texts[k], { name: path }),
      ),
      ...tradeOffColumns<WeighedVariant>(target.score),
      words('remark', '', remark, REMARK),
    ],
    weighed,
    (row) => (row === recommended ? 'cut' : ''),
  );
}

/** The end of a key's path. */
function shortName(path: string): string {
  return path.split('.').slice(-2).join('.');
}

/** Every point: one row a variant and speed, one column a key. */
export function variantPointsTable({ keys, weighed }: VariantStudy): Table {
  type Row = { texts: readonly string[]; outcome: PointOutcome };
  const rows = weighed.flatMap(({ texts, outcomes }) =>
    outcomes.map((outcome): Row => ({ texts, outcome })),
  );
  const columns: Column<Row>[] = [
    ...keys.map(({ path }, k) => words<Row>(path, path, ({ texts }) => texts[k])),
    ...within(POINT, ({ outcome }: Row) => outcome),
  ];
  return tableOf('Every point', columns, rows);
}

export function variantDocument(study: VariantStudy, scenario: Scenario) {
  const { keys, weighed, recommended, pareto, baseline, between, bestSecond, target } = study;
  const figures = (outcomes: readonly PointOutcome[], names: readonly string[]) => {
    const columns = asColumns(curveTable({ outcomes }));
    return Object.fromEntries(names.map((name) => [name, columns[name]]));
  };
  return {
    ...documentHead('variants', scenario),
    keys: keys.map(({ path, values, texts }) => ({ key: path, values: texts, values_si: values })),
    speeds_rpm: study.speeds,
    target: targetDocument(target),
    variants: weighed.map((variant) => ({
      values: variant.texts,
      ...tradeOffDocument(variant, target.score),
      ...figures(variant.outcomes, [...FIGURES, 'settled', 'failures']),
    })),
    recommended: recommended.texts,
    pareto: pareto.map(({ texts }) => texts),
    baseline: figures(baseline, FIGURES),
    ...(between !== undefined && { between_si: plain(between) }),
    ...(bestSecond && {
      best_second: bestSecond.map((one) => ({
        value: one.text,
        best: one.best.texts[1]!,
        band_mean: plain(one.best.bandMean),
        between_si: plain(one.between),
      })),
    }),
    audit: auditOf(allOutcomes([...weighed, { outcomes: baseline }])),
  };
}

const FIGURES = [q.EFFICIENCY.key, q.TORQUE.key];
