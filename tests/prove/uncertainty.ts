/**
 * The designed sample against brute force: the hill-climb engine on a coarse mesh, speeds of the band
 * only, 64 samples of a Latin hypercube as shipped against 500 independent ones. Slow, a quarter of
 * an hour on two cores:
 *
 *   npx tsx tests/prove/uncertainty.ts [samples of brute force] [folder]
 *
 * With a folder finished points are kept there, so that a run which was stopped can go on.
 *
 * Each figure of brute force must lie within the 95 % interval that the shipped sample states for it,
 * the two intervals widened by nothing.
 */
import { mkdirSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { openPointStore } from '../../sim/cli/pointStore.ts';
import { withWorkers } from '../../sim/cli/workers.ts';
import { latinHypercube } from '../../sim/decision/latinHypercube.ts';
import type { Estimate } from '../../sim/decision/sampleFigures.ts';
import type { UncertaintyStudy } from '../../sim/decision/uncertainty.ts';
import { doubtfulEngines, doubtfulInputs } from '../../sim/scenario/doubt.ts';
import { uncertaintyStudy } from '../../sim/study/doubt/compute.ts';
import type { PointRunner } from '../../sim/sweep/runner.ts';
import { demoText, readDemo } from '../toy.ts';

const TEXT = demoText('hill-climb').concat(
  '\nnumerics:\n  intakeCell: 20 mm\n  exhaustCell: 50 mm\n',
);
const NAME = 'hill-climb.yaml';
const { speeds, target } = readDemo('hill-climb');
const inputs = doubtfulInputs(TEXT, NAME);
const inBand = speeds.filter((speed) => speed >= target.from && speed <= target.to);

/** Points between two lines of progress. */
const TOLD = 500;

function study(places: number[][], runner: PointRunner): Promise<UncertaintyStudy> {
  let done = 0;
  return uncertaintyStudy(
    {
      inputs: inputs.map((input) => input.path),
      samples: doubtfulEngines(TEXT, NAME, places),
      recommended: 0.2,
      baseline: 0.09,
      speeds: inBand,
      target,
    },
    runner,
    {
      onPoint: () => {
        done++;
        if (done % TOLD === 0) process.stderr.write(`${done} points\n`);
      },
    },
  );
}

function independent(samples: number): number[][] {
  const random = xoroshiro128plus(2026);
  return Array.from({ length: samples }, () => inputs.map(() => uniformFloat64(random)));
}

const count = Number(process.argv[2] ?? 500);
const start = performance.now();
const folder = process.argv[3];
if (folder) mkdirSync(folder, { recursive: true });
const store = folder
  ? openPointStore(folder, {
      keep: true,
      owner: { file: 'boosted-four.yaml', title: 'independent samples' },
    })
  : undefined;
const [shipped, brute] = await withWorkers(availableParallelism(), async (workers) => {
  const runner = store?.over(workers) ?? workers;
  return [
    await study(latinHypercube(inputs.length, 64, 1), runner),
    await study(independent(count), runner),
  ];
});
store?.close();

const rows: [string, Estimate, Estimate][] = [
  ...(['mean', 'p5', 'p50', 'p95'] as const).map((key): [string, Estimate, Estimate] => [
    `gain ${key} [%]`,
    shipped.gainPercent[key],
    brute.gainPercent[key],
  ]),
  ...(['mean', 'p5', 'p95'] as const).map((key): [string, Estimate, Estimate] => [
    `recommended ${key} [-]`,
    shipped.recommended.bandMean[key],
    brute.recommended.bandMean[key],
  ]),
  ['probability better [-]', shipped.better, brute.better],
];
let missed = 0;
console.log(`${inputs.length} inputs, 64 designed against ${brute.samples} independent samples`);
for (const [name, ours, theirs] of rows) {
  const holds = theirs.value >= ours.low - 1e-12 && theirs.value <= ours.high + 1e-12;
  if (!holds) missed++;
  const show = (x: number) => x.toFixed(4).padStart(9);
  console.log(
    name.padEnd(24),
    `shipped ${show(ours.value)} [${show(ours.low)},${show(ours.high)}]`,
    `brute force ${show(theirs.value)}`,
    holds ? 'within' : 'MISSED',
  );
}
console.log(`explained: ${shipped.explained.toFixed(3)} and ${brute.explained.toFixed(3)}`);
for (const { input, effect, share } of brute.effects.slice(0, 8)) {
  const ours = shipped.effects.find((one) => one.input === input)!;
  const rank = shipped.effects.indexOf(ours) + 1;
  console.log(
    input.padEnd(40),
    `brute force ${effect.toFixed(3)} % (${(100 * share).toFixed(1)} %)`,
    `shipped ${ours.effect.toFixed(3)} % (${(100 * ours.share).toFixed(1)} %), rank ${rank}`,
  );
}
console.log(`${((performance.now() - start) / 1e3).toFixed(0)} s`);
process.exitCode = missed === 0 ? 0 : 1;
