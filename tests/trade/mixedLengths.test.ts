/**
 * Two lengths spread over the cylinders flatten the curve: common practice, no source. Over a wide
 * band the least score of the best pair lies above that of the best single length.
 */
import { expect, it } from 'vitest';
import { flattestPair, mixedLengths } from '../../sim/decision/mixedLengths.ts';
import { weighLength } from '../../sim/study/length/compute.ts';
import { runHere } from '../../sim/sweep/runner.ts';
import { runLengths } from '../../sim/sweep/sweep.ts';
import { readDemo } from '../toy.ts';

it('flatten the curve of the hill-climb four from 4600 to 7800 rpm', async () => {
  const { engine } = readDemo('hill-climb');
  const coarse = {
    ...engine,
    numerics: { ...engine.numerics, intakeCell: 0.02, exhaustCell: 0.05 },
  };
  const speeds = [4600, 5000, 5400, 5800, 6200, 6600, 7000, 7400, 7800];
  const target = { from: 4600, to: 7800 };
  const curves = await runLengths(coarse, [0.18, 0.22, 0.26, 0.3], speeds, runHere);
  const baseline = curves[0]!;
  const singles = curves.map((curve) => weighLength(speeds, curve, baseline, target).least);
  const pair = flattestPair(mixedLengths(curves, baseline, speeds, target, 4))!;
  expect(pair.least).toBeGreaterThan(1.01 * Math.max(...singles));
});
