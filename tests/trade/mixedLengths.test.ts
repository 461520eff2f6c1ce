/**
 * Two lengths spread over the cylinders flatten the curve: common practice, no source. Over a wide
 * band the least score of the best pair lies above that of the best single length.
 */
import { expect, it } from 'vitest';
import { flattestPair, mixedLengths } from '../../sim/decision/mixedLengths.ts';
import { scores } from '../../sim/decision/target.ts';
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
  // The curves ripple: a coarser grid of speeds or lengths hides what there is to flatten.
  const speeds = Array.from({ length: 17 }, (_, i) => 4600 + 200 * i);
  const lengths = Array.from({ length: 9 }, (_, i) => 0.18 + 0.02 * i);
  const target = { from: 4600, to: 7800 };
  const curves = await runLengths(coarse, lengths, speeds, runHere);
  const baseline = curves[0]!;
  const singles = curves.map((curve) => weighLength(speeds, curve, baseline, target).least);
  const [own, ...all] = [baseline, ...curves].map(({ length, outcomes }) => ({
    length,
    values: scores(outcomes),
  }));
  const pair = flattestPair(mixedLengths(all, own!.values, speeds, target, 4))!;
  expect(pair.least).toBeGreaterThan(1.01 * Math.max(...singles));
});
