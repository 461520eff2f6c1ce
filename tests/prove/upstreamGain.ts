/**
 * Does an injector above the trumpet fill the endurance six better than one near the valve, at high
 * speed and full load? At a single speed colder gas moves the tuning by several per cent either way,
 * so the difference is taken on the mean of 16 speeds, 5000 to 8000 rpm, for each of five lengths, and
 * with drops a third smaller and larger for three. Slow (minutes):
 *
 *   node --import tsx tests/prove/upstreamGain.ts
 *
 * "Slightly raises it" is common practice, no source: each mean must be above 0 and below 2 %.
 */
import { availableParallelism } from 'node:os';
import { withWorkers } from '../../sim/cli/workers.ts';
import { withShare } from '../../sim/study/inject/compute.ts';
import { isFailure, type PointRunner } from '../../sim/sweep/runner.ts';
import { withLength } from '../../sim/sweep/sweep.ts';
import { readDemo } from '../toy.ts';

const { engine, injectors } = readDemo('endurance-six');
const SPEEDS = Array.from({ length: 16 }, (_, i) => 5000 + 200 * i);
const LENGTHS = [0.09, 0.12, 0.15, 0.18, 0.21];
const CASES = [
  { drops: 1, lengths: LENGTHS },
  { drops: 1 / 1.3, lengths: [0.09, 0.15, 0.21] },
  { drops: 1.3, lengths: [0.09, 0.15, 0.21] },
];

const mean = (values: number[]) => values.reduce((sum, x) => sum + x, 0) / values.length;

/** Volumetric efficiency at each speed [-]. */
function curve(length: number, drops: number, share: number, runner: PointRunner) {
  const list = injectors!.list.map((injector) => ({
    ...injector,
    sauterDiameter: drops * injector.sauterDiameter,
  }));
  const spec = withShare(withLength(engine, length), { ...injectors!, list }, share);
  return Promise.all(
    SPEEDS.map(async (speed) => {
      const outcome = await runner.run({ engine: spec, speed });
      if (isFailure(outcome)) throw new Error(outcome.failure);
      return outcome.volumetricEfficiency;
    }),
  );
}

const percent = (x: number) => `${x > 0 ? '+' : ''}${(100 * x).toFixed(2)} %`;

const means = await withWorkers(availableParallelism(), async (workers) => {
  const found: number[] = [];
  for (const { drops, lengths } of CASES) {
    for (const length of lengths) {
      const [near, above] = await Promise.all([0, 1].map((x) => curve(length, drops, x, workers)));
      const gains = above!.map((value, i) => value - near![i]!);
      const [least, most] = [Math.min(...gains), Math.max(...gains)];
      found.push(mean(gains));
      console.log(
        `${(1e3 * length).toFixed(0)} mm, drops times ${drops.toFixed(2)}: mean ${percent(mean(gains))},`,
        `from ${percent(least)} to ${percent(most)}; best speed near ${Math.max(...near!).toFixed(4)},`,
        `above ${Math.max(...above!).toFixed(4)}`,
      );
    }
  }
  return found;
});
const holds = means.every((gain) => gain > 0 && gain < 0.02);
console.log(holds ? 'holds' : 'does not hold');
process.exitCode = holds ? 0 : 1;
