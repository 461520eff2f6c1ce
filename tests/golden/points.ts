/**
 * Points for goldens of what is printed: computed once, kept beside the goldens, and answered from
 * there, so that what is printed does not move when the solver does.
 *
 * A point is known by how its engine differs from that of its scenario, so that a key which all
 * engines gain changes nothing. `npm run golden-points` computes those that are missing, and all of
 * them anew with `-- --anew`.
 */
import { createHash } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { JoinedCycle } from '../../sim/engine/joinedCycle.ts';
import type { MovedPlates, PlateMove } from '../../sim/engine/plateMove.ts';
import type { Trace } from '../../sim/engine/trace.ts';
import type { Scenario } from '../../sim/scenario/resolve.ts';
import {
  type PointFailure,
  type PointJob,
  type PointOutcome,
  runJob,
} from '../../sim/sweep/runner.ts';
import { type Computer, TASKS, type TraceJob } from '../../sim/sweep/tasks.ts';
import { computerOf } from './computer.ts';

const { trace, joined, plates } = TASKS;
const point = runJob;

export type KnownPoints = Record<
  string,
  PointOutcome | Trace | JoinedCycle | MovedPlates | PointFailure
>;

const fileOf = (name: string) => join(import.meta.dirname, 'points', `${name}.json`);

export function readPoints(name: string): KnownPoints {
  return existsSync(fileOf(name)) ? JSON.parse(readFileSync(fileOf(name), 'utf8')) : {};
}

/** One line a point; seven digits are far below anything that is printed in words. */
export function pointsText(points: KnownPoints): string {
  const lines = Object.entries(points).map(
    ([key, value]) => `${JSON.stringify(key)}: ${JSON.stringify(value, sevenDigits)}`,
  );
  return `{\n${lines.join(',\n')}\n}\n`;
}

export { fileOf as pointsFile };

const sevenDigits = (_: string, value: unknown) =>
  typeof value === 'number' ? Number(value.toPrecision(7)) : value;

/** Answers from what is known. */
export function knownWorkers(scenario: Scenario, points: KnownPoints): Computer {
  const known = async (kind: string, job: PointJob) => {
    const found = points[keyOf(kind, scenario, job)];
    if (found) return found;
    throw new Error(`no point ${keyOf(kind, scenario, job)}: npm run golden-points`);
  };
  return computerOf(
    async (job) => (await known('point', job)) as PointOutcome,
    async (job) => (await known('trace', job)) as Trace | PointFailure,
    async (job) => (await known('joined', job)) as JoinedCycle | PointFailure,
    async (job) => (await known(moveOf(job), job)) as MovedPlates | PointFailure,
  );
}

/** Computes what is not among the `earlier` points, and keeps all that is asked for in `points`. */
export function learningWorkers(
  scenario: Scenario,
  points: KnownPoints,
  earlier: KnownPoints,
): Computer {
  const learn = <T extends KnownPoints[string]>(kind: string, job: PointJob, compute: () => T) => {
    const key = keyOf(kind, scenario, job);
    // As it will be read, so that what is asked for next is known by the same name then.
    points[key] ??= earlier[key] ?? JSON.parse(JSON.stringify(compute(), sevenDigits));
    return points[key] as T;
  };
  return computerOf(
    async (job) => learn('point', job, () => point(job)),
    async (job) => learn('trace', job, () => thinned(job)),
    async (job) => learn('joined', job, () => thinnedCycle(job)),
    async (job) => learn(moveOf(job), job, () => thinnedMove(job)),
  );
}

/** Rows of a kept trace are this many times as far apart as computed. */
const THINNING = 24;

const few = (values: readonly number[]) => values.filter((_, i) => i % THINNING === 0);

/** A trace with few rows and without its picture of the waves, which no command prints. */
function thinned(job: TraceJob): Trace | PointFailure {
  const whole = trace(job);
  if ('failure' in whole) return whole;
  return {
    ...whole,
    crankAngle: few(whole.crankAngle),
    cylinderPressure: few(whole.cylinderPressure),
    cylinderTemperature: few(whole.cylinderTemperature),
    intakeLift: few(whole.intakeLift),
    exhaustLift: few(whole.exhaustLift),
    ...(whole.chamberPressure && { chamberPressure: few(whole.chamberPressure) }),
    stations: whole.stations.map(({ name, pressure, velocity, massFlow, temperature }) => ({
      name,
      pressure: few(pressure),
      velocity: few(velocity),
      massFlow: few(massFlow),
      temperature: few(temperature),
    })),
    wave: { distance: [], pressure: [], velocity: [] },
  };
}

/** A cycle of joined runners with as few rows. */
function thinnedCycle(job: PointJob): JoinedCycle | PointFailure {
  const whole = joined(job);
  if ('failure' in whole) return whole;
  const { crankAngle, cylinders, bars } = whole;
  return {
    ...whole,
    crankAngle: few(crankAngle),
    cylinders: cylinders.map((one) => ({ ...one, pressure: few(one.pressure) })),
    bars: bars.map((one) => ({ ...one, inside: few(one.inside), sensor: few(one.sensor) })),
  };
}

/** How plates move, for the key of what comes of it. */
const moveOf = ({ to, seconds }: PlateMove) => `plates to ${leafText(to)} in ${seconds} s`;

/** Rows of the signal under plates that move, 10 deg apart as computed, are this many times as far apart. */
const SIGNAL_THINNING = 4;

/** Plates that move, with few rows of the signal. */
function thinnedMove(job: PlateMove): MovedPlates | PointFailure {
  const whole = plates(job);
  return 'failure' in whole
    ? whole
    : { ...whole, signal: whole.signal.filter((_, i) => i % SIGNAL_THINNING === 0) };
}

/** Longest list of differences that is written out. */
const READABLE = 100;

function keyOf(kind: string, { engine, injectors }: Scenario, job: PointJob): string {
  const own = leavesOf({ ...engine, ...(injectors && { injectors }) });
  const its = leavesOf(job.engine);
  const paths = [...new Set([...own.keys(), ...its.keys()])].filter((path) => path !== '.title');
  const differences = paths
    .filter((path) => own.get(path) !== its.get(path))
    .map((path) => `${path.slice(1)}=${its.get(path) ?? 'none'}`);
  const text = differences.sort().join(' ');
  const hash = () => createHash('sha256').update(text).digest('hex').slice(0, 16);
  const days = job.days ? ' and other days' : '';
  return `${kind}${days} ${job.speed} rpm ${text.length > READABLE ? hash() : text}`.trim();
}

/** Every plain value of a tree by its path; parts that engines share are read once. */
function leavesOf(tree: object): Map<string, string> {
  const all = new Map<string, string>();
  for (const [key, value] of Object.entries(tree)) {
    if (!(value instanceof Object)) all.set(`.${key}`, leafText(value));
    else for (const [path, text] of keptLeaves(value)) all.set(`.${key}${path}`, text);
  }
  return all;
}

const LEAVES = new WeakMap<object, Map<string, string>>();

function keptLeaves(tree: object): Map<string, string> {
  const found = LEAVES.get(tree) ?? leavesOf(tree);
  LEAVES.set(tree, found);
  return found;
}

const leafText = (value: unknown) =>
  typeof value === 'number' ? String(Number(value.toPrecision(6))) : String(value);
