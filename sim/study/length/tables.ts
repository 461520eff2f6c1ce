/** The sweep of lengths and its decision as tables and as a JSON document. */
import type { ShelfAnswer } from '../../decision/shelf.ts';
import { inTarget, targetMean } from '../../decision/target.ts';
import { efficiencies, type WeighedLength } from '../../decision/tradeOff.ts';
import { auditOf } from '../../report/audit.ts';
import { documentHead } from '../../report/document.ts';
import { plain } from '../../report/numbers.ts';
import * as q from '../../report/quantities.ts';
import { asObject, type Column, column, type Table, tableOf, words } from '../../report/table.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import { isFailure, type PointOutcome } from '../../sweep/runner.ts';
import { allPoints, type LengthCurve } from '../../sweep/sweep.ts';
import { curveColumns, lengthCurveTable } from '../curve/tables.ts';
import { spreadOf } from '../cylinders.ts';
import { type Doubt, doubtDocument } from '../doubt/tables.ts';
import { REMARK } from '../points.ts';
import { knownRemark, resolutionDocument } from '../resolution.ts';
import { allOutcomes } from '../study.ts';
import { targetDocument, tradeOffColumns, tradeOffDocument } from '../tradeOffs.ts';
import type { LengthStudy } from './compute.ts';
import type { Flywheel } from './flywheel.ts';

/** The curves of a study, each once, by rising length. */
export function studyCurves({ tried, baseline, recommended }: LengthStudy): LengthCurve[] {
  const { reason: _, ...chosen } = recommended;
  const byLength = new Map<number, LengthCurve>();
  for (const curve of [...tried, baseline, chosen]) byLength.set(curve.length, curve);
  return [...byLength.values()].sort((a, b) => a.length - b.length);
}

/** Every length computed, shortest first: what it is worth and what it costs. */
export function lengthsTable(study: LengthStudy): Table {
  const { baseline, recommended, weighed, target } = study;
  const isNow = ({ length }: WeighedLength) => length === baseline.length;
  return tableOf<WeighedLength>(
    'Every length',
    [
      column(q.lengthQuantity(study.unit), ({ length }) => length),
      ...tradeOffColumns(target.score, isNow),
      ...spreadColumns(study),
      words('remark', '', (row) => remarkOf(row, study), REMARK),
    ],
    weighed,
    (row) => (row.length === recommended.length ? 'cut' : isNow(row) ? 'now' : ''),
  );
}

/** How far apart the cylinders fill in the band, at worst; nothing where they are alike. */
function spreadColumns(study: LengthStudy): Column<WeighedLength>[] {
  const curves = studyCurves(study);
  const spreads = ({ length }: WeighedLength) => {
    const curve = curves.find((one) => one.length === length);
    const points = curve
      ? allPoints(curve).filter(({ speed }) => inTarget(study.target, speed))
      : [];
    return points.flatMap((one) => spreadOf(one) ?? []);
  };
  if (study.weighed.every((row) => spreads(row).length === 0)) return [];
  return [column(q.BAND_SPREAD, (row) => Math.max(...spreads(row)))];
}

/** What stands out about a length, in words; empty where nothing does. */
function remarkOf(row: WeighedLength, study: LengthStudy): string {
  const { recommended, baseline } = study;
  const curve = studyCurves(study).find(({ length }) => length === row.length);
  const outcomes = curve ? allPoints(curve) : [];
  const failed = outcomes.filter(isFailure).length;
  const restless = outcomes.filter((one) => !isFailure(one) && !one.settled).length;
  const now = row.length === baseline.length;
  return [
    ...(row.length === recommended.length ? [now ? 'keep' : 'take this'] : []),
    ...(now ? ['fitted now'] : []),
    ...(row.meetsFloors ? [] : ['breaks a floor']),
    ...knownRemark(row.known),
    ...(failed > 0 ? [`${failed} failed`] : []),
    ...(restless > 0 ? [`${restless} not settled`] : []),
  ].join(', ');
}

/** Volumetric efficiency of every length and speed. */
export function mapTable(study: LengthStudy): Table {
  const { speeds, unit = 'mm' } = study;
  const cell = (outcome: PointOutcome) => {
    if (isFailure(outcome)) return 'failed';
    const { settled, volumetricEfficiency } = outcome;
    return settled ? volumetricEfficiency : `${q.told(q.EFFICIENCY, volumetricEfficiency)}*`;
  };
  return tableOf(
    'Every point',
    [
      column<LengthCurve>(
        { ...q.lengthQuantity(unit), name: `${unit} \\ rpm`, unit: '' },
        ({ length }) => length,
      ),
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
export function pointsTable(study: LengthStudy, scenario: Scenario): Table {
  const { recommended, baseline } = study;
  const role = ({ length }: { length: number }) => {
    if (length === recommended.length) {
      return length === baseline.length ? 'recommended and baseline' : 'recommended';
    }
    return length === baseline.length ? 'baseline' : 'tried';
  };
  return lengthCurveTable(studyCurves(study), scenario, [words('role', 'role', role)]);
}

export function sweepDocument(study: LengthStudy, scenario: Scenario, doubt?: Doubt) {
  const { tried, baseline, recommended, decision, target, weighed, pareto, speeds } = study;
  const columns = tried.map((curve) => curveColumns(curve, scenario));
  const table = (key: keyof (typeof columns)[number]) => columns.map((curve) => curve[key]);
  const millimetres = (length: number) => q.filed(q.LENGTH, length);
  const { gain_in_band_percent, worst_loss_outside_band_percent, at_rpm, ...more } = asObject(
    tableOf('', tradeOffColumns(target.score), [decision]),
  );
  const { worst_loss_in_band_percent, in_band_at_rpm } = more;
  return {
    ...documentHead('sweep', scenario),
    lengths_mm: table('length_mm'),
    speeds_rpm: speeds,
    target: targetDocument(target),
    ...Object.fromEntries(TABLES.map((key) => [key, table(key as never)])),
    recommended: {
      ...curveColumns(recommended, scenario),
      band_mean_ve: plain(meanEfficiency(study)),
      gain_in_band_percent,
      worst_loss_outside_band_percent,
      at_rpm,
      worst_loss_in_band_percent,
      in_band_at_rpm,
      reason: recommended.reason,
    },
    baseline: curveColumns(baseline, scenario),
    trade_offs: weighed.map((one) => ({
      length_mm: millimetres(one.length),
      ...tradeOffDocument(one, target.score),
      ...(one.known && { known: one.known }),
    })),
    pareto_lengths_mm: pareto.map(({ length }) => millimetres(length)),
    moved_bands: study.moved.map(({ by, length, gainPercent }) => ({
      by_rpm: by,
      length_mm: millimetres(length),
      gain_percent: plain(gainPercent),
    })),
    flywheel: flywheelDocument(study),
    ...whereAsked(study, scenario),
    ...(doubt && { uncertainty: doubtDocument(doubt) }),
    audit: auditOf(allOutcomes([...tried, baseline, recommended])),
  };
}

/** What only some scenarios ask for. */
function whereAsked(study: LengthStudy, scenario: Scenario) {
  const { resolution, fit, shelf, mixed, free, fuelled, target } = study;
  return {
    ...(resolution && {
      resolution: resolutionDocument(resolution),
      refined: refinedCurves(study, scenario),
    }),
    ...(fit && fit.shelf.length > 0 && { shelf: shelfDocument(shelf) }),
    ...(mixed && { mixed: mixedDocument(mixed, study) }),
    ...(free && { free_feed: tradeOffDocument(free, target.score) }),
    ...(fuelled && {
      with_injectors: {
        ...tradeOffDocument(fuelled.wet, target.score),
        gain_without_percent: plain(fuelled.dry.gainPercent),
        sound: fuelled.sound,
      },
    }),
  };
}

/** What the lengths compare like at the flywheel. */
function flywheelDocument({ flywheel: { recommended, baseline } }: LengthStudy) {
  const figures = ({ meanTorque, power, powerSpeed }: Flywheel) => ({
    band_mean_torque_Nm: plain(meanTorque),
    greatest_power_kW: q.filed(q.FLYWHEEL_POWER.mm, power),
    at_rpm: plain(powerSpeed),
  });
  return { recommended: figures(recommended), baseline: figures(baseline) };
}

/** The curves that were refined, each at its own speeds. */
function refinedCurves(study: LengthStudy, scenario: Scenario) {
  return studyCurves(study)
    .filter(({ resolved: reach }) => reach)
    .map((curve) => ({
      known: curve.resolved,
      speeds_rpm: allPoints(curve).map(({ speed }) => speed),
      ...curveColumns({ length: curve.length, outcomes: allPoints(curve) }, scenario),
    }));
}

/** Mean volumetric efficiency of the recommended length, whatever figure counts. */
function meanEfficiency({ recommended, decision, target }: LengthStudy): number {
  if ((target.score ?? 'volumetric-efficiency') === 'volumetric-efficiency')
    return decision.bandMean;
  const points = allPoints(recommended);
  const speeds = points.map(({ speed }) => speed);
  return targetMean(speeds, efficiencies(points), target);
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

function mixedDocument(mixed: NonNullable<LengthStudy['mixed']>, { target }: LengthStudy) {
  return {
    short_mm: q.filed(q.LENGTH, mixed.short),
    short_cylinders: mixed.shortCount,
    long_mm: q.filed(q.LENGTH, mixed.long),
    long_cylinders: mixed.longCount,
    ...tradeOffDocument(mixed, target.score),
    speeds_rpm: mixed.speeds.map(plain),
    score: mixed.curve.map(plain),
    cylinders_unlike_percent: plain(mixed.unlikePercent),
  };
}
