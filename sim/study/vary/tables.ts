/** A sweep of other keys than the length as tables and as a JSON document. */
import type { Score } from '../../decision/target.ts';
import type { Cost, VariantStudy, WeighedVariant } from '../../decision/variants.ts';
import { auditOf } from '../../report/audit.ts';
import { documentHead } from '../../report/document.ts';
import { plain } from '../../report/numbers.ts';
import * as q from '../../report/quantities.ts';
import { asColumns, asObjects, column, type Table, tableOf, words } from '../../report/table.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import type { PointOutcome } from '../../sweep/runner.ts';
import { curveTable } from '../curve/tables.ts';
import { type Doubt, doubtDocument } from '../doubt/tables.ts';
import { REMARK } from '../points.ts';
import { allOutcomes } from '../study.ts';
import { targetDocument, tradeOffColumns, tradeOffDocument } from '../tradeOffs.ts';

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

export function variantDocument(study: VariantStudy, scenario: Scenario, doubt?: Doubt) {
  const { keys, weighed, recommended, pareto, baseline, between, bestSecond, costs, target } =
    study;
  const figures = (outcomes: readonly PointOutcome[], names: readonly string[]) => {
    const columns = asColumns(curveTable({ outcomes }, scenario));
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
    recommended: recommended?.texts ?? null,
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
    ...(costs && { costs: asObjects(costsTable(costs, target.score)) }),
    ...(doubt && { uncertainty: doubtDocument(doubt) }),
    audit: auditOf(allOutcomes([...weighed, { outcomes: baseline }])),
  };
}

/** What each value of a condition leaves in the bands. */
function costsTable(costs: readonly Cost[], score: Score | undefined): Table {
  return tableOf<Cost>(
    'What the condition costs',
    [
      words('value', 'value', ({ text }) => text),
      column(q.bandMean(score), ({ bandMean }) => bandMean),
      column(q.COST, ({ changePercent }) => changePercent),
    ],
    costs,
  );
}

const FIGURES = [q.EFFICIENCY.key, q.TORQUE.key];
