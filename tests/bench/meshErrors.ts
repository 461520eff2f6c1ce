/**
 * Volumetric efficiency against cells of a quarter, and how often the stated mesh error covers the
 * difference: points spread evenly over the demos' own lengths and speeds, and over those of two engines
 * that nothing was tuned with.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { withWorkers } from '../../sim/cli/workers.ts';
import {
  type EngineSpecification,
  isFailure,
  type PointOutcome,
  type PointRunner,
  readScenario,
  type Scenario,
  sweep,
  withLength,
} from '../../sim/index.ts';
import { type Goal, heading, row } from './measure.ts';

const FOLDERS = { demos: 'scenarios', 'hold-out': 'tests/bench/holdOut' };
/** Lengths and speeds of each engine, least to greatest. */
const LENGTHS: Record<keyof typeof FOLDERS, number> = { demos: 4, 'hold-out': 2 };
const SPEEDS = 13;
/** A cell of the reference over the one stated. */
const FINER = 0.25;

/** Error of volumetric efficiency and what was stated of it [%]. */
interface Judged {
  error: number;
  stated: number;
}

export async function meshErrors(): Promise<Goal[]> {
  heading(
    'engine',
    'points',
    'greatest error, %',
    'root mean square, %',
    'greatest stated, %',
    'stated covers, %',
  );
  return withWorkers(2, async (pool) => {
    const demos = await judgedFolder('demos', pool);
    const heldOut = await judgedFolder('hold-out', pool);
    return [
      atMost(`greatest mesh error over ${demos.length} points of the demos`, demos),
      atMost(`the same over ${heldOut.length} points held out`, heldOut),
      {
        what: 'points whose stated mesh error covers the actual',
        reached: covered([...demos, ...heldOut]),
        goal: 90,
        more: true,
        unit: '%',
      },
    ];
  });
}

const atMost = (what: string, points: readonly Judged[]): Goal => ({
  what,
  reached: greatest(points),
  goal: 0.3,
  unit: '%',
});

async function judgedFolder(which: keyof typeof FOLDERS, pool: PointRunner): Promise<Judged[]> {
  const all: Judged[] = [];
  for (const file of readdirSync(FOLDERS[which]).filter((name) => name.endsWith('.yaml'))) {
    const scenario = readScenario(readFileSync(`${FOLDERS[which]}/${file}`, 'utf8'), file);
    const points = await judged(scenario, LENGTHS[which], pool);
    all.push(...points);
    judgedRow(file, points);
  }
  judgedRow(which, all);
  return all;
}

async function judged(scenario: Scenario, count: number, pool: PointRunner): Promise<Judged[]> {
  const speeds = spread(scenario.speeds, SPEEDS);
  const engines = spread(scenario.sweep.lengths, count).map((one) =>
    withLength(scenario.engine, one),
  );
  const ours = await sweep(engines, speeds, pool);
  const reference = await sweep(engines.map(finer), speeds, pool);
  return ours.flatMap((line, i) =>
    line.map((outcome, j) => ({
      error: 100 * Math.abs(filling(outcome) / filling(reference[i]![j]!) - 1),
      stated: isFailure(outcome) ? Number.NaN : 100 * outcome.meshError,
    })),
  );
}

/** So many values from the least to the greatest of those given. */
function spread(values: readonly number[], count: number): number[] {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  return Array.from({ length: count }, (_, i) => low + ((high - low) * i) / (count - 1));
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
