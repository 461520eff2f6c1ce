/**
 * What the speeds of the demos hide, and what the program makes of it: six figures at the speeds of the
 * file alone, as the program resolves them, and on a grid of 50 rpm that knows nothing of refinement,
 * straight between its points. Slow (minutes):
 *
 *   node --import tsx tests/prove/betweenSpeeds.ts
 *
 * Gains must lie within 0.2 % of the grid's, losses within half a point, floors must have its verdict.
 */
import { availableParallelism } from 'node:os';
import { withWorkers } from '../../sim/cli/workers.ts';
import { scores, type Target } from '../../sim/decision/target.ts';
import { tradeOff, type WeighedLength } from '../../sim/decision/tradeOff.ts';
import { lengthStudy } from '../../sim/study/length/compute.ts';
import type { PointRunner } from '../../sim/sweep/runner.ts';
import { runLengths } from '../../sim/sweep/sweep.ts';
import { readDemo } from '../toy.ts';

const GRID = 50;

interface Figure {
  what: string;
  demo: string;
  /** Length [m] against the one fitted now. */
  length: number;
  /** What the target says otherwise. */
  target?: Partial<Target>;
  of(
    one: Pick<WeighedLength, 'gainPercent' | 'worstLossPercent' | 'bandLossPercent' | 'floors'>,
  ): number;
  within: number;
}

const UNWEIGHTED = { weights: [] };
const GAIN = 0.2;
const LOSS = 0.5;

const FIGURES: Figure[] = [
  {
    what: 'hill-climb, 260 v 90 mm: worst loss outside the band [%]',
    ...{ demo: 'hill-climb', length: 0.26, within: LOSS },
    of: (one) => one.worstLossPercent,
  },
  {
    what: 'six, 205 v 150 mm: gain, unweighted [%]',
    ...{ demo: 'endurance-six', length: 0.205, target: UNWEIGHTED, within: GAIN },
    of: (one) => one.gainPercent,
  },
  {
    what: 'six, 230 v 150 mm: gain, unweighted [%]',
    ...{ demo: 'endurance-six', length: 0.23, target: UNWEIGHTED, within: GAIN },
    of: (one) => one.gainPercent,
  },
  {
    what: 'six, 205 mm: what the floor of 3 % at 3000 rpm leaves there [%]',
    ...{ demo: 'endurance-six', length: 0.205, within: LOSS },
    of: ({ floors }) => floors[0]!.marginPercent,
  },
  {
    what: 'six, 205 mm: the least that it leaves within 250 rpm [%]',
    ...{ demo: 'endurance-six', length: 0.205, within: LOSS },
    of: ({ floors }) => floors[0]!.near.marginPercent,
  },
  {
    what: 'six, 205 mm: worst loss inside the band [%]',
    ...{ demo: 'endurance-six', length: 0.205, within: LOSS },
    of: (one) => one.bandLossPercent,
  },
  {
    what: 'single, 5 v 3.4 in: gain [%]',
    ...{ demo: 'sprint-single', length: 0.127, within: GAIN },
    of: (one) => one.gainPercent,
  },
];

/** Length against the one fitted now at some speeds, straight between them. */
async function straight(
  { demo, length, target }: Figure,
  step: number | undefined,
  runner: PointRunner,
) {
  const { engine, speeds: own, target: asked } = readDemo(demo);
  const [first, last] = [own[0]!, own.at(-1)!];
  const count = step === undefined ? 0 : Math.round((last - first) / step);
  const speeds =
    step === undefined ? own : Array.from({ length: count + 1 }, (_, i) => first + i * step);
  const lengths = [length, engine.intake.trumpet.length];
  const curves = await runLengths(engine, lengths, speeds, runner);
  const [ours, baseline] = curves.map(({ outcomes }) => scores(outcomes));
  return tradeOff(speeds, ours!, baseline!, { ...asked, ...target });
}

async function resolved(
  { demo, length, target }: Figure,
  runner: PointRunner,
): Promise<WeighedLength> {
  const { engine, sweep, speeds, refine, target: asked, fit, lengthUnit: unit } = readDemo(demo);
  const question = { engine, lengths: sweep.lengths, speeds, refine, unit, ...(fit && { fit }) };
  const study = await lengthStudy({ ...question, target: { ...asked, ...target } }, runner);
  return study.weighed.find((one) => Math.abs(one.length - length) < 1e-6)!;
}

/** Every point once. */
function remembering(runner: PointRunner): PointRunner {
  const known = new Map<string, ReturnType<PointRunner['run']>>();
  return {
    run: (job) => {
      const { trumpet } = job.engine.intake;
      const key = `${job.engine.title} ${trumpet.length} ${job.speed}`;
      const outcome = known.get(key) ?? runner.run(job);
      known.set(key, outcome);
      return outcome;
    },
  };
}

const rows = await withWorkers(availableParallelism(), async (workers) => {
  const runner = remembering(workers);
  const found: { figure: Figure; values: number[]; holds: boolean; known: string }[] = [];
  for (const figure of FIGURES) {
    const file = figure.of(await straight(figure, undefined, runner));
    const one = await resolved(figure, runner);
    const grid = figure.of(await straight(figure, GRID, runner));
    const ours = figure.of(one);
    const holds = Math.abs(ours - grid) < figure.within && ours < 0 === grid < 0;
    found.push({ figure, values: [file, ours, grid], holds, known: one.known ?? '' });
  }
  return found;
});
const percent = (value: number) => value.toFixed(1);
console.log(
  '| figure | speeds of the file | the program | grid of 50 rpm | resolved |\n|---|--:|--:|--:|---|',
);
for (const { figure, values, known, holds } of rows) {
  console.log(
    `| ${figure.what} | ${values.map(percent).join(' | ')} | ${known}${holds ? '' : ', off'} |`,
  );
}
const holds = rows.every((row) => row.holds);
console.log(holds ? 'holds' : 'does not hold');
process.exitCode = holds ? 0 : 1;
