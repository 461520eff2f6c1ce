/** A file whose trumpets are in inches is answered in inches: sentences, tables and axes; the keys of files stay. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { reportText } from '../../sim/report/report.ts';
import { readScenario } from '../../sim/scenario/read.ts';
import { pedalStudyOf } from '../../sim/study/pedal/compute.ts';
import { effortPlot } from '../../sim/study/pedal/figure.ts';
import { pedalReport } from '../../sim/study/pedal/tell.ts';

const text = readFileSync(join(import.meta.dirname, '../../scenarios/forest-four.yaml'), 'utf8');
const inInches = text.replace('length: 110 mm #', 'length: 4.33 in #');

function told(scenarioText: string) {
  const scenario = readScenario(scenarioText, 'forest-four.yaml');
  const study = pedalStudyOf(scenario.pedal!);
  const report = reportText(pedalReport(study, scenario)).join(' ').replace(/\s+/g, ' ');
  return {
    plot: effortPlot(study, scenario.lengthUnit),
    report,
    travel: study.curve.at(-1)!.travel,
  };
}

test('the travel of the foot in sentence, table and plot', () => {
  const [metric, inches] = [told(text), told(inInches)];
  expect(inches.travel).toBe(metric.travel);
  const mm = (1e3 * metric.travel).toFixed(1);
  const inch = (metric.travel / 0.0254).toFixed(2);
  expect(metric.report).toContain(`after ${mm} mm of travel`);
  expect(inches.report).toContain(`after ${inch} in of travel`);
  expect(metric.report).toContain('[deg] [mm] [N]');
  expect(inches.report).toContain('[deg] [in] [N]');
  expect(inches.report).not.toMatch(/\[mm\]|\d mm of/);
  expect(inches.plot.xLabel).toBe('foot travel [in]');
  expect(inches.plot.series[0]!.xs.at(-1)).toBeCloseTo(metric.plot.series[0]!.xs.at(-1)! / 25.4, 9);
});
