/** A measured run beside the prediction as a JSON document. */
import { isRefusal } from '../decision/calibration.ts';
import type { Comparison } from '../decision/comparison.ts';
import { csv } from './csv.ts';
import { type DocumentHead, documentHead, plain, type ScenarioStamp } from './document.ts';
import type { MeasuredStudy } from './measuredStudy.ts';

/** How two curves agree. */
export interface AgreementColumns {
  /** Speeds compared; points that fail or do not settle are left out. */
  speeds_rpm: number[];
  /** N m for brake torque, a plain number for volumetric efficiency. */
  measured: (number | null)[];
  predicted: (number | null)[];
  scale: number | null;
  correlation: number | null;
  rms_difference_percent: number | null;
  peak_measured_rpm: number | null;
  peak_predicted_rpm: number | null;
  peak_error_rpm: number | null;
  peak_error_percent: number | null;
}

export interface FittedColumns extends AgreementColumns {
  unknowns: {
    name: string;
    /** Empty for a plain number. */
    unit: string;
    scenario_value: number | null;
    prior_deviation: number | null;
    value: number | null;
    deviation: number | null;
    low_95: number | null;
    high_95: number | null;
  }[];
  friction_share: number | null;
  misfit: number | null;
  estimate_correlation: (number | null)[][];
  points_computed: number;
}

export interface CompareDocument extends DocumentHead, AgreementColumns {
  figure: 'brake-torque' | 'volumetric-efficiency';
  length_mm: number | null;
  air_factor: number | null;
  speeds_left_out_rpm: number[];
  /** Absent where nothing was to be fitted; `refused` says why no values are given. */
  calibration?: FittedColumns | { refused: string };
}

export function compareDocument(study: MeasuredStudy, scenario: ScenarioStamp): CompareDocument {
  const { comparison, calibration, leftOut, length, air } = study;
  return {
    ...documentHead('compare', 1, scenario),
    figure: comparison.figure,
    length_mm: plain(length * 1e3),
    air_factor: plain(air.factor),
    speeds_left_out_rpm: leftOut,
    ...agreement(comparison),
    ...(calibration && {
      calibration: isRefusal(calibration)
        ? { refused: calibration.refused }
        : {
            ...agreement(calibration.comparison),
            unknowns: calibration.unknowns.map((unknown, k) => ({
              name: unknown.name,
              unit: study.unknowns[k]!.unit,
              scenario_value: plain(unknown.start),
              prior_deviation: plain(unknown.deviation),
              value: plain(unknown.value),
              deviation: plain(unknown.sigma),
              low_95: plain(unknown.interval[0]),
              high_95: plain(unknown.interval[1]),
            })),
            friction_share: plain(calibration.frictionShare),
            misfit: plain(calibration.misfit),
            estimate_correlation: calibration.correlation.map((row) => row.map(plain)),
            points_computed: calibration.points,
          },
    }),
  };
}

function agreement(comparison: Comparison): AgreementColumns {
  const { peaks, peakError } = comparison;
  const maybe = (value: number | undefined) => (value === undefined ? null : plain(value));
  return {
    speeds_rpm: comparison.speeds,
    measured: comparison.measured.map(plain),
    predicted: comparison.predicted.map(plain),
    scale: plain(comparison.scale),
    correlation: plain(comparison.correlation),
    rms_difference_percent: plain(comparison.differencePercent),
    peak_measured_rpm: maybe(peaks.measured),
    peak_predicted_rpm: maybe(peaks.predicted),
    peak_error_rpm: maybe(peakError?.rpm),
    peak_error_percent: maybe(peakError?.percent),
  };
}

/** Both curves, and the fitted one where there is one: one row a speed. */
export function compareCsv({ comparison, calibration }: MeasuredStudy): string {
  const unit = comparison.figure === 'brake-torque' ? 'torque_Nm' : 'volumetric_efficiency';
  const fitted = calibration && !isRefusal(calibration) ? calibration.comparison : undefined;
  const rows = comparison.speeds.map((speed, j) => {
    const at = fitted?.speeds.indexOf(speed) ?? -1;
    return [
      speed,
      plain(comparison.measured[j]!),
      plain(comparison.predicted[j]!),
      ...(fitted ? [at < 0 ? null : plain(fitted.predicted[at]!)] : []),
    ];
  });
  const heads = ['measured', 'predicted', ...(fitted ? ['fitted'] : [])];
  return csv(['speed_rpm', ...heads.map((head) => `${head}_${unit}`)], rows);
}
