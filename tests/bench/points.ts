/** Maps and curves: time on two workers and on one. */
import { withWorkers } from '../../sim/cli/workers.ts';
import { inQuickLanes } from '../../sim/engine/lanes.ts';
import { runSpeeds } from '../../sim/engine/point.ts';
import { type EngineSpecification, type PointRunner, sweep, withLength } from '../../sim/index.ts';
import { type Goal, heading, row, seconds, wallSeconds } from './measure.ts';

const SPEEDS = Array.from({ length: 40 }, (_, j) => 3000 + 150 * j);
const LENGTHS = Array.from({ length: 25 }, (_, i) => 0.06 + 0.01 * i);

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
