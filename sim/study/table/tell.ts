/** What a table of varied keys holds, in words. */
import { counted } from '../../report/numbers.ts';
import type { PlotLook } from '../../report/plot.ts';
import type { Report } from '../../report/report.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import { pointCautions } from '../cautions.ts';
import { fillingPlot } from '../curve/figure.ts';
import { spreadCautions } from '../cylinders.ts';
import { POINT_NOTES } from '../points.ts';
import { rippleCautions } from '../resolution.ts';
import { textsOf, type ValuePoints, valuesTable } from './tables.ts';

const LOOKS: readonly PlotLook[] = ['now', 'cut', 'third'];

export function tableReport(points: ValuePoints, scenario: Scenario): Report {
  const { speeds, target } = scenario;
  const { keys, outcomes, engines } = points;
  const unseen = rippleCautions(engines, speeds, 'sweep --vary computes it');
  const names = textsOf(points).map((texts) => texts.join(', '));
  const curves = outcomes.map((row, i) => ({ name: names[i]!, outcomes: row }));
  const lines = curves.map((curve, i) => ({
    ...curve,
    look: LOOKS[i] ?? ('other' as const),
    // What is not known between the points is no straight line.
    ...(unseen.length > 0 && { line: [] }),
  }));
  const paths = keys.map(({ path }) => path).join(' and ');
  return {
    about: 'Table',
    scenario,
    answer: [
      `${counted(outcomes.length, 'value')} of ${paths} at ${counted(speeds.length, 'speed')}; nothing is weighed.`,
    ],
    flags: [...pointCautions(curves), ...unseen, ...spreadCautions(outcomes.flat())],
    sections: [
      { plots: [fillingPlot(lines, target)] },
      { tables: [valuesTable(points, scenario)], notes: POINT_NOTES },
    ],
    outcomes: outcomes.flat(),
  };
}
