/** Maps and curves: time on two workers and on one, and the error of a point's mesh over the demos. */
import { readdirSync, readFileSync } from 'node:fs';
import { withWorkers } from '../../sim/cli/workers.ts';
import { inQuickLanes } from '../../sim/engine/lanes.ts';
import { runSpeeds } from '../../sim/engine/point.ts';
import {
  type EngineSpecification,
  isFailure,
  type PointOutcome,
  type PointRunner,
  readScenario,
  sweep,
  withLength,
} from '../../sim/index.ts';
import { type Goal, heading, row, seconds, wallSeconds } from './measure.ts';

const SPEEDS = Array.from({ length: 40 }, (_, j) => 3000 + 150 * j);
const LENGTHS = Array.from({ length: 25 }, (_, i) => 0.06 + 0.01 * i);
/** Lengths and speeds of a demo at which its mesh is judged: 52 points each. */
const JUDGED_LENGTHS = [0.06, 0.15, 0.21, 0.3];
const JUDGED_SPEEDS = Array.from({ length: 13 }, (_, j) => 3000 + 450 * j);
/** A cell of the reference over the one stated. */
const FINER = 0.25;

export const demos = (): [string, EngineSpecification][] =>
  readdirSync('scenarios')
    .filter((file) => file.endsWith('.yaml'))
    .map((file) => [file, readScenario(readFileSync(`scenarios/${file}`, 'utf8'), file).engine]);

export async function mapsAndCurves(engine: EngineSpecification): Promise<Goal[]> {
  heading('points', 'workers', 'seconds');
  const map = LENGTHS.map((length) => withLength(engine, length));
  const two = await withWorkers(2, async (pool) => {
    await warm(engine, pool);
    return {
      curve: await timed('curve of 40 speeds', 2, [engine], pool),
      map: await timed('map of 25 lengths by 40 speeds', 2, map, pool),
    };
  });
  const one = await withWorkers(1, async (pool) => {
    await warm(engine, pool);
    return timed('map of 25 lengths by 40 speeds', 1, map, pool);
  });
  const quick = inOneThread(map);
  return [
    {
      what: 'map 25 x 40, f32, half the processor time of one thread',
      reached: quick.map / 2,
      goal: 3,
      unit: 's',
    },
    {
      what: 'curve of 40 speeds, f32, half the processor time of one thread',
      reached: quick.curve / 2,
      goal: 0.15,
      unit: 's',
    },
    { what: 'map 25 x 40, f64', reached: two.map, goal: 5, unit: 's' },
    { what: 'curve of 40 speeds, workers warm, f64', reached: two.curve, goal: 0.3, unit: 's' },
    { what: 'one worker to two', reached: one / two.map, goal: 1.9, more: true, unit: '' },
  ];
}

/** Previews in f32: processor seconds of this thread, to be shared by as many as there are. */
function inOneThread(engines: readonly EngineSpecification[]) {
  const curve = seconds(() => runSpeeds(engines[3]!, SPEEDS, inQuickLanes));
  const map = seconds(() => engines.forEach((one) => void runSpeeds(one, SPEEDS, inQuickLanes)), 1);
  row('curve of 40 speeds, f32', 'one thread', curve.toFixed(2));
  row('map of 25 lengths by 40 speeds, f32', 'one thread', map.toFixed(1));
  return { curve, map };
}

/** Threads start, load and compile before the clock does. */
async function warm(engine: EngineSpecification, pool: PointRunner): Promise<void> {
  for (let round = 0; round < 3; round++) await sweep([engine], SPEEDS, pool);
}

async function timed(
  what: string,
  workers: number,
  engines: readonly EngineSpecification[],
  pool: PointRunner,
): Promise<number> {
  const time = await wallSeconds(() => sweep(engines, SPEEDS, pool));
  row(what, workers, time.toFixed(2));
  return time;
}

/** Volumetric efficiency against cells of a quarter, and how often the stated mesh error covers that. */
export async function meshErrors(): Promise<Goal[]> {
  heading(
    'demo',
    'points',
    'greatest error, %',
    'root mean square, %',
    'greatest stated, %',
    'stated covers, %',
  );
  const all = await withWorkers(2, async (pool) => {
    const found: Judged[] = [];
    for (const [name, engine] of demos()) {
      const points = await judged(engine, pool);
      found.push(...points);
      judgedRow(name, points);
    }
    return found;
  });
  judgedRow('all', all);
  return [
    {
      what: `greatest mesh error over ${all.length} points`,
      reached: greatest(all),
      goal: 0.3,
      unit: '%',
    },
    {
      what: 'points whose stated mesh error covers the actual',
      reached: covered(all),
      goal: 90,
      more: true,
      unit: '%',
    },
  ];
}

/** Error of volumetric efficiency and what was stated of it [%]. */
interface Judged {
  error: number;
  stated: number;
}

async function judged(engine: EngineSpecification, pool: PointRunner): Promise<Judged[]> {
  const engines = JUDGED_LENGTHS.map((length) => withLength(engine, length));
  const ours = await sweep(engines, JUDGED_SPEEDS, pool);
  const reference = await sweep(engines.map(finer), JUDGED_SPEEDS, pool);
  return ours.flatMap((line, i) =>
    line.map((outcome, j) => ({
      error: 100 * Math.abs(filling(outcome) / filling(reference[i]![j]!) - 1),
      stated: isFailure(outcome) ? Number.NaN : 100 * outcome.meshError,
    })),
  );
}

function finer(engine: EngineSpecification): EngineSpecification {
  const { intakeCell, exhaustCell } = engine.numerics;
  const cells = { intakeCell: FINER * intakeCell, exhaustCell: FINER * exhaustCell };
  return { ...engine, numerics: { ...engine.numerics, ...cells } };
}

const filling = (outcome: PointOutcome) =>
  isFailure(outcome) ? Number.NaN : outcome.volumetricEfficiency;

const greatest = (points: readonly Judged[]) => Math.max(...points.map(({ error }) => error));

const covered = (points: readonly Judged[]) =>
  (100 * points.filter(({ error, stated }) => stated >= error).length) / points.length;

function judgedRow(name: string, points: readonly Judged[]): void {
  const rms = Math.sqrt(points.reduce((sum, { error }) => sum + error ** 2, 0) / points.length);
  const stated = Math.max(...points.map((one) => one.stated));
  row(
    name,
    points.length,
    ...[greatest(points), rms, stated].map((x) => x.toFixed(3)),
    covered(points).toFixed(0),
  );
}
