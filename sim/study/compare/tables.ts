/** A measured run beside the prediction as a table and as a JSON document. */
import { type Calibration, isRefusal } from '../../decision/calibration.ts';
import type { ComparedFigure, Comparison } from '../../decision/comparison.ts';
import { documentHead } from '../../report/document.ts';
import { plain } from '../../report/numbers.ts';
import * as q from '../../report/quantities.ts';
import { asObjects, column, type Table, tableOf, words } from '../../report/table.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import type { MeasuredStudy } from './compute.ts';

/** What is compared, as people read it. */
export function comparedQuantity(figure: ComparedFigure): q.Quantity {
  return figure === 'brake-torque' ? q.BRAKE_TORQUE : q.EFFICIENCY;
}

/** What the fit gives; undefined where there is none or no values are given. */
export function fitOf({ calibration }: MeasuredStudy): Calibration | undefined {
  return calibration && !isRefusal(calibration) ? calibration : undefined;
}

/** Both curves, and the fitted one where there is one: one row a speed. */
export function compareTable(study: MeasuredStudy): Table {
  const { comparison } = study;
  const { speeds, measured, predicted, figure } = comparison;
  const fitted = fitOf(study)?.comparison;
  const quantity = comparedQuantity(figure);
  const curve = (name: string, of: (j: number) => number | undefined) => {
    const key = `${name}_${quantity.key}`;
    return column<number>({ ...quantity, key, head: name, name }, of);
  };
  const columns = [
    column<number>(q.SPEED, (j) => speeds[j]),
    curve('measured', (j) => measured[j]),
    curve('predicted', (j) => predicted[j]),
    column<number>(q.DIFFERENCE, (j) => predicted[j]! / measured[j]! - 1, { only: 'people' }),
    ...(fitted
      ? [curve('fitted', (j) => fitted.predicted[fitted.speeds.indexOf(speeds[j]!)])]
      : []),
  ];
  return tableOf('Every speed', columns, [...speeds.keys()]);
}

/** What the fit says of every unknown. */
function unknownsTable({ unknowns }: Calibration, study: MeasuredStudy): Table {
  const figure = (key: string, of: (k: number) => number) =>
    column<number>({ key, head: key, unit: '', digits: 4 }, of);
  return tableOf(
    'Every unknown',
    [
      words<number>('name', 'unknown', (k) => unknowns[k]!.name),
      words<number>('unit', 'unit', (k) => study.unknowns[k]!.unit),
      figure('scenario_value', (k) => unknowns[k]!.start),
      figure('prior_deviation', (k) => unknowns[k]!.deviation),
      figure('value', (k) => unknowns[k]!.value),
      figure('deviation', (k) => unknowns[k]!.sigma),
      figure('low_95', (k) => unknowns[k]!.interval[0]),
      figure('high_95', (k) => unknowns[k]!.interval[1]),
    ],
    [...unknowns.keys()],
  );
}

/** How two curves agree. */
function agreement(comparison: Comparison) {
  const { speeds, measured, predicted, peaks, peakError } = comparison;
  return {
    speeds_rpm: speeds,
    measured: measured.map(plain),
    predicted: predicted.map(plain),
    scale: plain(comparison.scale),
    correlation: plain(comparison.correlation),
    rms_difference_percent: plain(comparison.differencePercent),
    peak_measured_rpm: plain(peaks.measured),
    peak_predicted_rpm: plain(peaks.predicted),
    peak_error_rpm: plain(peakError?.rpm),
    peak_error_percent: plain(peakError?.percent),
  };
}

export function compareDocument(study: MeasuredStudy, scenario: Scenario) {
  const { comparison, calibration, leftOut, length, air } = study;
  return {
    ...documentHead('compare', scenario),
    figure: comparison.figure,
    length_mm: q.filed(q.LENGTH, length),
    air_factor: plain(air.factor),
    speeds_left_out_rpm: leftOut,
    ...agreement(comparison),
    ...(calibration && {
      calibration: isRefusal(calibration)
        ? { refused: calibration.refused }
        : calibrationDocument(calibration, study),
    }),
  };
}

function calibrationDocument(calibration: Calibration, study: MeasuredStudy) {
  return {
    ...agreement(calibration.comparison),
    unknowns: asObjects(unknownsTable(calibration, study)),
    friction_share: plain(calibration.frictionShare),
    misfit: plain(calibration.misfit),
    estimate_correlation: calibration.correlation.map((row) => row.map(plain)),
    points_computed: calibration.points,
  };
}
