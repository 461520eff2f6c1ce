/** A measured run beside the prediction, in words. */
import { type Calibration, isRefusal } from '../../decision/calibration.ts';
import type { Comparison } from '../../decision/comparison.ts';
import type { LengthUnit } from '../../decision/lengthUnit.ts';
import { change, lengthIn, percent, rpm } from '../../report/figures.ts';
import { brief, counted, fixed } from '../../report/numbers.ts';
import type { Report } from '../../report/report.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import { fillingCautions } from '../cautions.ts';
import type { MeasuredStudy } from './compute.ts';
import { comparePlot } from './figure.ts';
import { compareTable } from './tables.ts';

/** Beyond this the model does not explain the run within its stated noise. */
const MISFIT_WARNED = 4;

/** The words of a comparison: what agrees, what was done to the run, and what it does not mean. */
export interface CompareWords {
  answer: string;
  peak: string;
  air: string;
  meaning: string;
  leftOut: string;
  /** Of the fit; empty where nothing was fitted. */
  fit: string[];
}

export function compareWords(study: MeasuredStudy, unit: LengthUnit): CompareWords {
  const { comparison, air, leftOut, length } = study;
  return {
    answer:
      `With trumpets of ${lengthIn(length, unit)} prediction and run correlate at ` +
      `${fixed(comparison.correlation, 3)}; they differ by ${percent(comparison.differencePercent)} ` +
      `root mean square over ${counted(comparison.speeds.length, 'speed')}.`,
    peak: peakWords(comparison),
    air: air.words,
    meaning: meaningWords(comparison),
    leftOut:
      leftOut.length === 0
        ? ''
        : `Left out, because the point failed or did not settle: ${leftOut.map(rpm).join(', ')}.`,
    fit: fitWords(study),
  };
}

function peakWords({ peaks, peakError }: Comparison): string {
  if (peakError) {
    return (
      `The prediction peaks at ${rpm(Math.round(peaks.predicted!))}, the run at ` +
      `${rpm(Math.round(peaks.measured!))}: ${change(peakError.percent)}.`
    );
  }
  const without = peaks.measured === undefined ? 'run' : 'prediction';
  return `The ${without} is highest at an end of its range, so peak speeds cannot be compared.`;
}

function meaningWords({ figure, scale }: Comparison): string {
  const times = `times ${fixed(scale, 3)}`;
  if (figure === 'volumetric-efficiency') {
    return `The prediction is drawn ${times}, fitted, so that shapes are compared and not levels.`;
  }
  return (
    `What is predicted is indicated torque; it is drawn ${times}, fitted, less friction by the ` +
    'correlation of Barnes-Moss, so shapes are compared and not levels.'
  );
}

function fitWords({ calibration, unknowns }: MeasuredStudy): string[] {
  if (!calibration) return [];
  if (isRefusal(calibration)) return [`No values are given: ${calibration.refused}.`];
  const { comparison, misfit } = calibration;
  return [
    ...calibration.unknowns.map((one, k) => unknownWords(one, unknowns[k]!)),
    `With these the correlation is ${fixed(comparison.correlation, 3)} and the difference ` +
      `${percent(comparison.differencePercent)}. ${peakWords(comparison)}`,
    misfit > MISFIT_WARNED
      ? `The model does not explain this run within its noise (chi squared ${brief(misfit, 2)} a degree of freedom): the values may stand in for something else that differs. Do not build on them.`
      : 'The intervals hold if the model is right; errors of the model itself are not in them.',
  ];
}

function unknownWords(
  { name, value, start, interval: [low, high] }: Calibration['unknowns'][number],
  { unit, meaning }: { unit: string; meaning: string },
): string {
  const shown = (x: number) => `${brief(x, 4)} ${unit}`.trim();
  return (
    `${name}, ${meaning}: ${shown(value)}, with 95 % confidence from ${shown(low)} to ` +
    `${shown(high)}; the scenario has ${shown(start)}.`
  );
}

export function compareReport(study: MeasuredStudy, scenario: Scenario): Report {
  const { answer, peak, air, meaning, leftOut, fit } = compareWords(study, scenario.lengthUnit);
  return {
    about: 'Run and prediction',
    scenario,
    answer: [answer, peak, air, meaning, ...fit],
    flags: [
      ...(leftOut === '' ? [] : [leftOut]),
      ...fillingCautions(scenario.engine, study.outcomes),
    ],
    sections: [{ plots: [comparePlot(study)] }, { tables: [compareTable(study)] }],
    length: study.length,
    outcomes: study.outcomes,
  };
}
