/** The sweep of lengths and its decision as tables and as a JSON document. */
import type { MixedLengths } from '../../decision/mixedLengths.ts';
import type { ShelfAnswer } from '../../decision/shelf.ts';
import { targetMean } from '../../decision/target.ts';
import { efficiencies, type WeighedLength } from '../../decision/tradeOff.ts';
import { auditOf } from '../../report/audit.ts';
import { documentHead } from '../../report/document.ts';
import { plain } from '../../report/numbers.ts';
import * as q from '../../report/quantities.ts';
import { asObject, column, type Table, tableOf, words } from '../../report/table.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import { isFailure, type PointOutcome } from '../../sweep/runner.ts';
import type { LengthCurve } from '../../sweep/sweep.ts';
import { curveColumns, lengthCurveTable } from '../curve/tables.ts';
import { type Doubt, doubtDocument } from '../doubt/tables.ts';
import { REMARK } from '../points.ts';
import { allOutcomes } from '../study.ts';
import { targetDocument, tradeOffColumns, tradeOffDocument } from '../tradeOffs.ts';
import type { LengthStudy } from './compute.ts';

/** The curves of a study, each once, by rising length. */
export function studyCurves({ tried, baseline, recommended }: LengthStudy): LengthCurve[] {
  const { length, outcomes } = recommended;
  const byLength = new Map<number, LengthCurve>();
  for (const curve of [...tried, baseline, { length, outcomes }]) byLength.set(curve.length, curve);
  return [...byLength.values()].sort((a, b) => a.length - b.length);
}

/** Every length computed, shortest first: what it is worth and what it costs. */
export function lengthsTable(study: LengthStudy): Table {
  const { baseline, recommended, weighed, target } = study;
  const isNow = ({ length }: WeighedLength) => length === baseline.length;
  return tableOf<WeighedLength>(
    'Every length',
    [
      column(q.LENGTH, ({ length }) => length),
      ...tradeOffColumns(target.score, isNow),
      words('remark', '', (row) => remarkOf(row, study), REMARK),
    ],
    weighed,
    (row) => (row.length === recommended.length ? 'cut' : isNow(row) ? 'now' : ''),
  );
}

/** What stands out about a length, in words; empty where nothing does. */
function remarkOf(row: WeighedLength, study: LengthStudy): string {
  const { recommended, baseline } = study;
  const outcomes = studyCurves(study).find(({ length }) => length === row.length)?.outcomes ?? [];
  const failed = outcomes.filter(isFailure).length;
  const restless = outcomes.filter((one) => !isFailure(one) && !one.settled).length;
  const now = row.length === baseline.length;
  return [
    ...(row.length === recommended.length ? [now ? 'keep' : 'cut this'] : []),
    ...(now ? ['fitted now'] : []),
    ...(row.meetsFloors ? [] : ['breaks a floor']),
    ...(failed > 0 ? [`${failed} failed`] : []),
    ...(restless > 0 ? [`${restless} not settled`] : []),
  ].join(', ');
}

/** Volumetric efficiency of every length and speed. */
export function mapTable(study: LengthStudy): Table {
  const { speeds } = study;
  const cell = (outcome: PointOutcome) => {
    if (isFailure(outcome)) return 'failed';
    const { settled, volumetricEfficiency } = outcome;
    return settled ? volumetricEfficiency : `${q.told(q.EFFICIENCY, volumetricEfficiency)}*`;
  };
  return tableOf(
    'Every point',
    [
      column<LengthCurve>({ ...q.LENGTH, name: 'mm \\ rpm', unit: '' }, ({ length }) => length),
      ...speeds.map((speed, j) => ({
        ...q.EFFICIENCY,
        name: q.shown(q.SPEED, speed),
        unit: '',
        tinted: true,
        of: ({ outcomes }: LengthCurve) => cell(outcomes[j]!),
      })),
    ],
    studyCurves(study),
  );
}

/** Every point: one row a length and speed, with the part that the length plays. */
export function pointsTable(study: LengthStudy): Table {
  const { recommended, baseline } = study;
  const role = ({ length }: { length: number }) => {
    if (length === recommended.length) {
      return length === baseline.length ? 'recommended and baseline' : 'recommended';
    }
    return length === baseline.length ? 'baseline' : 'tried';
  };
  return lengthCurveTable(studyCurves(study), [words('role', 'role', role)]);
}

export function sweepDocument(study: LengthStudy, scenario: Scenario, doubt?: Doubt) {
  const { tried, baseline, recommended, decision, target, weighed, pareto, speeds } = study;
  const columns = tried.map(curveColumns);
  const table = (key: keyof (typeof columns)[number]) => columns.map((curve) => curve[key]);
  const millimetres = (length: number) => q.filed(q.LENGTH, length);
  const { gain_in_band_percent, worst_loss_outside_band_percent, at_rpm } = asObject(
    tableOf('', tradeOffColumns(target.score), [decision]),
  );
  return {
    ...documentHead('sweep', scenario),
    lengths_mm: table('length_mm'),
    speeds_rpm: speeds,
    target: targetDocument(target),
    ...Object.fromEntries(TABLES.map((key) => [key, table(key as never)])),
    recommended: {
      ...curveColumns(recommended),
      band_mean_ve: plain(targetMean(speeds, efficiencies(recommended.outcomes), target)),
      gain_in_band_percent,
      worst_loss_outside_band_percent,
      at_rpm,
      reason: recommended.reason,
    },
    baseline: curveColumns(baseline),
    trade_offs: weighed.map((one) => ({
      length_mm: millimetres(one.length),
      ...tradeOffDocument(one, target.score),
    })),
    pareto_lengths_mm: pareto.map(({ length }) => millimetres(length)),
    ...(study.fit && study.fit.shelf.length > 0 && { shelf: shelfDocument(study.shelf) }),
    ...(study.mixed && { mixed: mixedDocument(study.mixed, study) }),
    ...(study.free && { free_feed: tradeOffDocument(study.free, target.score) }),
    ...(doubt && { uncertainty: doubtDocument(doubt) }),
    audit: auditOf(allOutcomes([...tried, baseline, recommended])),
  };
}

/** Columns that the document has as tables by [length][speed]. */
const TABLES = [
  ...[q.EFFICIENCY, q.CLOSING_PRESSURE, q.TORQUE].map(({ key }) => key),
  'settled',
  'failures',
];

function shelfDocument(shelf: ShelfAnswer | undefined) {
  if (!shelf) return null;
  return {
    buy_mm: q.filed(q.LENGTH, shelf.buy),
    cut_to_mm: q.filed(q.LENGTH, shelf.cutTo),
    loss_percent: plain(shelf.lossPercent),
    loss_of_a_bad_cut_percent: plain(shelf.missPercent),
    good_enough: shelf.good,
  };
}

function mixedDocument(mixed: MixedLengths, { target }: LengthStudy) {
  return {
    short_mm: q.filed(q.LENGTH, mixed.short),
    short_cylinders: mixed.shortCount,
    long_mm: q.filed(q.LENGTH, mixed.long),
    long_cylinders: mixed.longCount,
    ...tradeOffDocument(mixed, target.score),
    score: mixed.curve.map(plain),
    cylinders_unlike_percent: plain(mixed.unlikePercent),
  };
}
