/**
 * Random valid engines on a fast mesh, in the usual range or far beyond it: none may fail in a way that is not
 * told, hang or give no number, and few not settle. Each has a line in the log as soon as it is done; called again
 * it goes on from there.
 *
 *   node --import tsx tests/prove/randomEngines.ts --count 100 --seed 1 --speeds 2 [--wide] [--log FILE]
 */
import { appendFileSync, existsSync, readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { runSpeeds } from '../../sim/engine/point.ts';
import { ScenarioError } from '../../sim/errors.ts';
import { readScenario } from '../../sim/scenario/read.ts';
import type { Scenario } from '../../sim/scenario/resolve.ts';
import { drawOf, engineText, whole } from './drawnEngine.ts';
import { drawnWay, fitted, type Way } from './drawnFittings.ts';

const text = (value: string) => ({ type: 'string', default: value }) as const;
const { values } = parseArgs({
  options: {
    ...{ count: text('100'), seed: text('1'), speeds: text('2'), log: text('') },
    wide: { type: 'boolean', default: false },
  },
});
/** How much wider than usual the ranges are of engines that need not be usual; our own choice. */
const WIDE = 1.6;
/** Most that the audit of gas may be off. */
const MOST_OFF = 1e-8;

/** What came of one seed. */
interface Outcome {
  seed: number;
  way?: Way;
  /** Why it was not computed. */
  passedOver?: 'refused' | 'unusual';
  cylinders?: number;
  points?: number;
  failed?: string[];
  careful?: number;
  unsettled?: string[];
  odd?: string[];
  /** Processor time [s]. */
  seconds?: number;
}

const done = values.log !== '' && existsSync(values.log) ? readLog(values.log) : [];
const known = new Set(done.map(({ seed }) => seed));
for (let seed = Number(values.seed); engines() < Number(values.count); seed++) {
  if (known.has(seed)) continue;
  const outcome = outcomeOf(seed);
  done.push(outcome);
  if (values.log !== '') appendFileSync(values.log, `${JSON.stringify(outcome)}\n`);
}
const total = tally();
console.log(JSON.stringify(total));
const bad = values.wide ? total.failed > 0.01 * total.points : total.failed > 0;
process.exitCode = bad || total.odd > 0 || total.unsettled > 0.01 * total.points ? 1 : 0;

function readLog(file: string): Outcome[] {
  const lines = readFileSync(file, 'utf8').split('\n').slice(0, -1);
  return lines.map((line) => JSON.parse(line) as Outcome);
}

function engines(): number {
  return done.filter(({ passedOver }) => passedOver === undefined).length;
}

function outcomeOf(seed: number): Outcome {
  const draw = drawOf(seed);
  const way = drawnWay(draw);
  const scenario = readDrawn(engineText(draw, values.wide ? WIDE : 1));
  if (typeof scenario === 'string') return { seed, passedOver: scenario };
  const engine = fitted(scenario, way);
  const first = whole(draw, 0, scenario.speeds.length - 1);
  const turned = [...scenario.speeds.slice(first), ...scenario.speeds.slice(0, first)];
  const speeds = turned.slice(0, Number(values.speeds));
  const before = process.cpuUsage();
  const points = runSpeeds(engine, speeds);
  const { user, system } = process.cpuUsage(before);
  const outcome = { seed, way, cylinders: engine.cylinder.count, points: points.length };
  return { ...outcome, ...found(points, speeds), seconds: (user + system) / 1e6 };
}

/** The scenario; or why it is none: the draw broke a rule, or lies outside the usual range. */
function readDrawn(drawn: string): Scenario | 'refused' | 'unusual' {
  try {
    const scenario = readScenario(drawn, 'drawn.yaml');
    return values.wide || scenario.warnings.length === 0 ? scenario : 'unusual';
  } catch (error) {
    if (!(error instanceof ScenarioError)) throw error;
    return 'refused';
  }
}

function found(points: ReturnType<typeof runSpeeds>, speeds: readonly number[]) {
  const failed: string[] = [];
  const unsettled: string[] = [];
  const odd: string[] = [];
  let careful = 0;
  points.forEach((point, i) => {
    if (point instanceof Error) {
      failed.push(`${speeds[i]} rpm: ${point.message}`);
      return;
    }
    if (point.careful) careful++;
    if (!point.settled) unsettled.push(`${speeds[i]} rpm after ${point.cycles} cycles`);
    const { audit, volumetricEfficiency, indicatedTorque, meshError } = point;
    const figures = [volumetricEfficiency, indicatedTorque, audit.massError];
    const sound = figures.every(Number.isFinite) && !(audit.massError > MOST_OFF);
    if (!sound) odd.push(`${speeds[i]} rpm: ${figures}, mesh ${meshError}`);
  });
  return { failed, careful, unsettled, odd };
}

function tally() {
  const run = done.filter(({ passedOver }) => passedOver === undefined);
  const sum = (of: (one: Outcome) => number) => run.reduce((all, one) => all + of(one), 0);
  const lost = (reason: string) => done.filter(({ passedOver }) => passedOver === reason).length;
  for (const { seed, way, failed, unsettled, odd } of run) {
    for (const one of failed!) console.log(`failed: seed ${seed}, ${way}, ${one}`);
    for (const one of unsettled!) console.log(`not settled: seed ${seed}, ${way}, ${one}`);
    for (const one of odd!) console.log(`odd: seed ${seed}, ${way}, ${one}`);
  }
  return {
    ...{ engines: run.length, refused: lost('refused'), unusual: lost('unusual') },
    points: sum(({ points }) => points!),
    failed: sum(({ failed }) => failed!.length),
    careful: sum(({ careful }) => careful!),
    unsettled: sum(({ unsettled }) => unsettled!.length),
    odd: sum(({ odd }) => odd!.length),
    slowest_s: Math.max(...run.map(({ seconds }) => seconds!)),
  };
}
