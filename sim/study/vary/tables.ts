/** A sweep of other keys than the length as tables and as a JSON document. */
import type { Score } from '../../decision/target.ts';
import type { Cost, WeighedVariant } from '../../decision/variants.ts';
import { auditOf } from '../../report/audit.ts';
import { documentHead } from '../../report/document.ts';
import { plain } from '../../report/numbers.ts';
import * as q from '../../report/quantities.ts';
import { asColumns, asObjects, column, type Table, tableOf, words } from '../../report/table.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import type { PointOutcome } from '../../sweep/runner.ts';
import { allPoints } from '../../sweep/sweep.ts';
import { curveTable } from '../curve/tables.ts';
import { type Doubt, doubtDocument } from '../doubt/tables.ts';
import { REMARK } from '../points.ts';
import { knownRemark, resolutionDocument } from '../resolution.ts';
import { allOutcomes } from '../study.ts';
import { targetDocument, tradeOffColumns, tradeOffDocument } from '../tradeOffs.ts';
import type { VariedStudy } from './compute.ts';

/** Every variant: what it is worth and what it costs. */
export function variantsTable({ keys, weighed, recommended, pareto, target }: VariedStudy): Table {
  const remark = (row: WeighedVariant) =>
    [
      ...(row === recommended ? ['best'] : []),
      ...(pareto.includes(row) ? ['unbeaten'] : []),
      ...(row.meetsFloors ? [] : ['breaks a floor']),
      ...knownRemark(row.known),
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

export function variantDocument(study: VariedStudy, scenario: Scenario, doubt?: Doubt) {
  const { keys, weighed, recommended, pareto, baseline, between, bestSecond, costs, target } =
    study;
  const figures: Figures = (outcomes, names) => {
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
      ...(variant.known && { known: variant.known }),
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
    ...(study.resolution && {
      resolution: resolutionDocument(study.resolution),
      refined: refinedVariants(study, figures),
    }),
    ...(doubt && { uncertainty: doubtDocument(doubt) }),
    audit: auditOf(allOutcomes([...weighed.map(({ curve }) => curve), study.asItIs])),
  };
}

type Figures = (
  outcomes: readonly PointOutcome[],
  names: readonly string[],
) => Record<string, unknown>;

/** The variants that were refined, each at its own speeds. */
function refinedVariants({ weighed }: VariedStudy, figures: Figures) {
  return weighed
    .filter(({ curve }) => curve.resolved)
    .map(({ texts, curve }) => ({
      values: texts,
      known: curve.resolved,
      speeds_rpm: allPoints(curve).map(({ speed }) => speed),
      ...figures(allPoints(curve), FIGURES),
    }));
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
