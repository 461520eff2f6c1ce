/**
 * `npm run bench`: how fast the kernel and the studies are, as ratios within one run, medians of
 * several. Times of different runs or machines say nothing of each other. With `--map` it also runs a
 * whole map of 25 lengths by 40 speeds, which takes minutes.
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import { withWorkers } from '../../sim/cli/workers.ts';
import { type Gas, perfectGas } from '../../sim/gas/gas.ts';
import {
  type EngineSpecification,
  isFailure,
  type PointOutcome,
  type PointRunner,
  readScenario,
  runPoint,
  sweep,
  withLength,
} from '../../sim/index.ts';
import { DT } from '../../sim/step/layout.ts';
import { exactRiemann } from '../exact/exactRiemann.ts';
import { kernelWith } from '../lanes.ts';
import { oneDuct, pipe, runFor } from '../network.ts';

const ROUNDS = 5;
/** Solutions of Sod's problem in one round. */
const REPEATS = 20;

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[values.length >> 1]!;
}

/** Median processor seconds of a task in this thread; other work on the machine does not count. */
function seconds(task: () => void, rounds = ROUNDS): number {
  return median(
    Array.from({ length: rounds }, () => {
      const start = process.cpuUsage();
      task();
      return process.cpuUsage(start).user / 1e6;
    }),
  );
}

async function secondsOf(task: () => Promise<unknown>): Promise<number> {
  const start = performance.now();
  await task();
  return (performance.now() - start) / 1e3;
}

const row = (...cells: (string | number)[]) => console.log(`| ${cells.join(' | ')} |`);

/** Cell updates per second on Sod's problem, of the TypeScript step or of all lanes together. */
function kernelRate(gas: Gas, cells: number, steps: number, plain: boolean): number {
  const duct = pipe(1, 1, cells);
  duct.fillEach(gas, (x) => ({
    pressure: x < 0.5 ? 1e5 : 1e4,
    temperature: x < 0.5 ? 348 : 279,
  }));
  const net = oneDuct(duct, { gas });
  const dt = 0.2 * net.longestStep();
  const { layout } = net;
  const kernel = kernelWith(layout, [layout.column, layout.column]);
  kernel.X.fill(dt, kernel.lanes * DT, kernel.lanes * (DT + 1));
  const run = () => {
    for (let i = 0; i < steps; i++) {
      if (plain) net.step({ crankAngle: 0, crankStep: 0, dt });
      else kernel.call.step!();
    }
  };
  run();
  return ((plain ? 1 : kernel.lanes) * cells * steps) / seconds(run);
}

/** The same of the C loop, where the machine has a compiler. */
function kernelRateOfC(cells: number, steps: number): number | undefined {
  const program = join(mkdtempSync(join(tmpdir(), 'bench-')), 'sod');
  try {
    execFileSync('cc', ['-O3', '-march=native', '-o', program, 'tests/bench/sod.c', '-lm']);
  } catch {
    return undefined;
  }
  return median(
    Array.from({ length: ROUNDS }, () =>
      Number(execFileSync(program, [`${cells}`, `${steps}`, '1'], { encoding: 'utf8' })),
    ),
  );
}

/** L1 error of density on Sod's problem, and the seconds that `REPEATS` solutions took. */
function sod(cells: number): { error: number; time: number } {
  const gas = perfectGas(1.4, 1);
  const exact = exactRiemann({ rho: 1, u: 0, p: 1 }, { rho: 0.125, u: 0, p: 0.1 }, 1.4);
  let error = 0;
  const solve = () => {
    const duct = pipe(1, 1, cells);
    duct.fillEach(gas, (x) => ({ pressure: x < 0.5 ? 1 : 0.1, temperature: x < 0.5 ? 1 : 0.8 }));
    runFor(oneDuct(duct, { gas }), 0.2);
    error = duct.cells.rho.reduce(
      (sum, rho, i) => sum + Math.abs(rho - exact.sample(((i + 0.5) / cells - 0.5) / 0.2).rho),
      0,
    );
  };
  // One solution is over too soon for the clock.
  const time = seconds(() => {
    for (let i = 0; i < REPEATS; i++) solve();
  });
  return { error: error / cells, time };
}

const file = 'scenarios/hill-climb.yaml';
const scenario = readScenario(readFileSync(file, 'utf8'), file);
const { engine, speeds } = scenario;
const withCells = (intakeCell: number, exhaustCell: number) => ({
  ...engine,
  numerics: { ...engine.numerics, intakeCell, exhaustCell },
});

console.log(`${cpus().length} cores, ${cpus()[0]?.model ?? 'unknown'}, Node ${process.version}\n`);

row('kernel, Sod, 100 cells', 'M updates/s', 'ratio');
row('---', '---', '---');
const ours = kernelRate(perfectGas(1.4, 287), 100, 4000, true);
const fast = kernelRate(perfectGas(1.4, 287), 100, 4000, false);
row('TypeScript, thermally perfect gas, two fractions', (ours / 1e6).toFixed(1), 1);
row(
  'WebAssembly, two lanes, the same to the last bit',
  (fast / 1e6).toFixed(1),
  (fast / ours).toFixed(2),
);
const c = kernelRateOfC(100, 4000);
if (c === undefined) row('scalar C loop', 'no compiler here', '-');
else
  row('scalar C loop, constant gamma, two fractions', (c / 1e6).toFixed(1), (c / ours).toFixed(2));

console.log();
row('Sod, cells', 'L1 error of density', 'time over that at 100');
row('---', '---', '---');
for (let i = 0; i < 3; i++) sod(100); // warm
const base = sod(100).time;
for (const cells of [50, 100, 200, 400]) {
  const { error, time } = sod(cells);
  row(cells, error.toExponential(2), (time / base).toFixed(2));
}

console.log();
row('one point at 6000 rpm, cells mm', 'volumetric efficiency', 'seconds', 'time over the default');
row('---', '---', '---', '---');
runPoint(engine, 6000); // warm
const point = seconds(() => runPoint(engine, 6000));
for (const [intake, exhaust] of [
  [5, 12.5],
  [10, 25],
  [15, 37.5],
  [20, 50],
] as const) {
  const spec = withCells(intake / 1e3, exhaust / 1e3);
  const time = seconds(() => runPoint(spec, 6000), 3);
  const { volumetricEfficiency } = runPoint(spec, 6000);
  const ratio = (time / point).toFixed(2);
  row(`${intake} / ${exhaust}`, volumetricEfficiency.toFixed(5), time.toFixed(2), ratio);
}

/** Greatest difference of volumetric efficiency to cells of a quarter of the stated, at five speeds [%]. */
async function meshErrors(
  spec: EngineSpecification,
  stated: EngineSpecification,
  runner: PointRunner,
): Promise<number> {
  const { intakeCell, exhaustCell } = stated.numerics;
  const fine = withCells(intakeCell / 4, exhaustCell / 4);
  const [ours, reference] = await sweep([spec, fine], [4200, 5000, 5800, 6600, 7400], runner);
  return Math.max(
    ...ours!.map((outcome, j) => 100 * Math.abs(filling(outcome) / filling(reference![j]!) - 1)),
  );
}

function filling(outcome: PointOutcome): number {
  return isFailure(outcome) ? Number.NaN : outcome.volumetricEfficiency;
}

console.log();
row('two workers', 'cells mm', 'points', 'seconds', 'error at five speeds, 90 mm, %');
row('---', '---', '---', '---', '---');
const forty = Array.from({ length: 40 }, (_, j) => 3000 + 150 * j);
const lengths = Array.from({ length: 25 }, (_, i) => 0.06 + 0.01 * i);
await withWorkers(2, async (pool) => {
  await sweep([engine], speeds.slice(-4), pool);
  for (const [intake, exhaust] of [
    [10, 25],
    [20, 50],
    [40, 100],
  ] as const) {
    const spec = withCells(intake / 1e3, exhaust / 1e3);
    const cells = `${intake} / ${exhaust}`;
    const error = (await meshErrors(spec, engine, pool)).toFixed(2);
    const curve = await secondsOf(() => sweep([spec], forty, pool));
    row('curve of 40 speeds', cells, 40, curve.toFixed(1), error);
    if (!process.argv.includes('--map') || intake > 20) continue;
    const all = lengths.map((length) => withLength(spec, length));
    const map = await secondsOf(() => sweep(all, forty, pool));
    row('map of 25 lengths by 40 speeds', cells, 1000, map.toFixed(0), error);
  }
});

console.log();
row('points, mesh 20 / 50 mm', 'workers', 'seconds', 'ratio');
row('---', '---', '---', '---');
const coarse = withCells(0.02, 0.05);
const variants = [0.09, 0.15, 0.21, 0.27].map((length) => withLength(coarse, length));
const between = speeds.map((speed) => speed + 200);
const tasks: [string, EngineSpecification[], readonly number[]][] = [
  ['90 mm at 15 speeds', variants.slice(0, 1), speeds],
  ['90 mm at 30 speeds', variants.slice(0, 1), [...speeds, ...between]],
  ['90 and 150 mm at 15 speeds', variants.slice(0, 2), speeds],
  ['90, 150, 210 and 270 mm at 15 speeds', variants, speeds],
  ['270 mm at 15 speeds', variants.slice(3), speeds],
];
let first = Number.NaN;
for (const workers of [1, 2]) {
  await withWorkers(workers, async (pool) => {
    // Threads start and warm up before the clock does.
    await sweep([coarse], speeds.slice(-4), pool);
    for (const [name, engines, at] of tasks) {
      const time = median([
        await secondsOf(() => sweep(engines, at, pool)),
        await secondsOf(() => sweep(engines, at, pool)),
        await secondsOf(() => sweep(engines, at, pool)),
      ]);
      if (Number.isNaN(first)) first = time;
      row(name, workers, time.toFixed(2), (time / first).toFixed(2));
    }
  });
}
