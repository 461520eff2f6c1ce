/**
 * From a cool morning to a hot afternoon waves run faster, so the best length for the same speeds
 * grows: common practice, no source. How far follows from the speed of sound, c ~ sqrt(T): the whole
 * length the waves run, not the trumpet alone, stretches by that ratio.
 */
import { expect, it } from 'vitest';
import { readAxis } from '../../sim/scenario/range.ts';
import { readScenario } from '../../sim/scenario/read.ts';
import { scenarioKeys } from '../../sim/scenario/schema.ts';
import { variantEngines } from '../../sim/scenario/variants.ts';
import { variantStudy } from '../../sim/study/vary/compute.ts';
import { runHere } from '../../sim/sweep/runner.ts';
import { demoText } from '../toy.ts';

const NAME = 'hill-climb.yaml';
const TEXT = demoText('hill-climb').concat(
  '\nnumerics:\n  intakeCell: 20 mm\n  exhaustCell: 50 mm\n',
);

it('the best length grows from 5 to 35 degC by what the speed of sound says', async () => {
  const keys = [
    readAxis(scenarioKeys, 'ambient.temperature', '5 degC, 35 degC'),
    readAxis(scenarioKeys, 'intake.trumpet.length', '220 mm .. 300 mm / 20 mm'),
  ].map((axis) => {
    if ('problem' in axis) throw new Error(axis.problem);
    return axis;
  });
  const { engine } = readScenario(TEXT, NAME);
  const study = await variantStudy(
    {
      baseline: engine,
      keys,
      engines: variantEngines(TEXT, NAME, keys),
      speeds: [5400, 5800, 6200, 6600, 7000, 7400],
      target: { from: 5400, to: 7400 },
    },
    runHere,
  );
  const [cool, hot] = study.bestSecond!.map(({ between }) => between) as [number, number];
  // Mouth to valve: end correction, trumpet, body and port.
  const { trumpet, throttle, port } = engine.intake;
  const mouth = trumpet.bellmouth.endCorrection * (trumpet.outerDiameter / 2 + 0.012);
  const rest = mouth + throttle.length + port.length;
  const expected = (cool + rest) * (Math.sqrt(308.15 / 278.15) - 1);
  expect(hot - cool).toBeGreaterThan(0.5 * expected);
  expect(hot - cool).toBeLessThan(1.5 * expected);
});
