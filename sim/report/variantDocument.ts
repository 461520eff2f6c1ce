/** A sweep of other keys than the length, as a JSON document. */
import type { VariantStudy, WeighedVariant } from '../decision/variantStudy.ts';
import { isFailure } from '../sweep/runner.ts';
import type { AuditSummary } from './curveDocument.ts';
import { auditSummary, column } from './curveDocument.ts';
import { type DocumentHead, documentHead, plain, type ScenarioStamp } from './document.ts';
import {
  type TargetColumns,
  type TradeOffColumns,
  targetColumns,
  tradeOffColumns,
} from './tradeOffColumns.ts';

type Figure = number | null;

export interface VariantColumns extends TradeOffColumns {
  /** What the scenario would say, one text a key. */
  values: string[];
  volumetric_efficiency: Figure[];
  indicated_torque_Nm: Figure[];
  settled: boolean[];
  failures: (string | null)[];
}

export interface VariantDocument extends DocumentHead {
  /** `values_si` are in m, Pa, K, deg, rpm, m3/s or a plain number, by the key. */
  keys: { key: string; values: string[]; values_si: number[] }[];
  speeds_rpm: number[];
  target: TargetColumns;
  variants: VariantColumns[];
  recommended: string[];
  pareto: string[][];
  baseline: { volumetric_efficiency: Figure[]; indicated_torque_Nm: Figure[] };
  /** Where the parabola along a single key tops, in SI; a run there would confirm it. */
  between_si?: Figure;
  /** For each value of the first key the best of the second, and where the parabola tops in SI. */
  best_second?: { value: string; best: string; band_mean: Figure; between_si: Figure }[];
  audit: AuditSummary;
}

export function variantDocument(study: VariantStudy, scenario: ScenarioStamp): VariantDocument {
  const { keys, weighed, recommended, pareto, baseline, between, bestSecond } = study;
  const curves = [...weighed.map(({ outcomes }) => outcomes), baseline];
  return {
    ...documentHead('variants', 1, scenario),
    keys: keys.map(({ path, values, texts }) => ({
      key: path,
      values: [...texts],
      values_si: [...values],
    })),
    speeds_rpm: study.speeds,
    target: targetColumns(study.target),
    variants: weighed.map(variantColumns),
    recommended: recommended.texts,
    pareto: pareto.map(({ texts }) => texts),
    baseline: {
      volumetric_efficiency: column(baseline, (point) => point.volumetricEfficiency),
      indicated_torque_Nm: column(baseline, (point) => point.indicatedTorque),
    },
    ...(between !== undefined && { between_si: plain(between) }),
    ...(bestSecond && {
      best_second: bestSecond.map((one) => ({
        value: one.text,
        best: one.best.texts[1]!,
        band_mean: plain(one.best.bandMean),
        between_si: plain(one.between),
      })),
    }),
    audit: auditSummary(curves.map((outcomes) => ({ length: Number.NaN, outcomes }))),
  };
}

function variantColumns(variant: WeighedVariant): VariantColumns {
  const { outcomes } = variant;
  return {
    values: variant.texts,
    ...tradeOffColumns(variant),
    volumetric_efficiency: column(outcomes, (point) => point.volumetricEfficiency),
    indicated_torque_Nm: column(outcomes, (point) => point.indicatedTorque),
    settled: outcomes.map((outcome) => !isFailure(outcome) && outcome.settled),
    failures: outcomes.map((outcome) => (isFailure(outcome) ? outcome.failure : null)),
  };
}
