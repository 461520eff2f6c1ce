/**
 * `npm run bench`: how fast kernel, points and commands are beside what was aimed at, medians of
 * several rounds, all in one run: times of different runs or machines say nothing of each other.
 * `npm run bench -- sod step points errors start` runs some of it.
 */
import { readFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { readScenario } from '../../sim/index.ts';
import { start } from './commands.ts';
import { type Goal, printGoals } from './measure.ts';
import { meshErrors } from './meshErrors.ts';
import { mapsAndCurves } from './points.ts';
import { sod } from './sod.ts';
import { stepAgainstCpp } from './stepInCpp.ts';

const FILE = 'scenarios/hill-climb.yaml';
const { engine } = readScenario(readFileSync(FILE, 'utf8'), FILE);

const PARTS: Record<string, () => Goal[] | Promise<Goal[]>> = {
  sod,
  step: () => stepAgainstCpp(engine),
  points: () => mapsAndCurves(engine),
  errors: meshErrors,
  start: async () => [await start()],
};

const asked = process.argv.slice(2);
const unknown = asked.find((name) => !(name in PARTS));
if (unknown) throw new Error(`no part ${unknown}; there are ${Object.keys(PARTS).join(', ')}`);

console.log(`${cpus().length} cores, ${cpus()[0]?.model ?? 'unknown'}, Node ${process.version}`);
const goals: Goal[] = [];
for (const [name, part] of Object.entries(PARTS))
  if (asked.length === 0 || asked.includes(name)) goals.push(...(await part()));
printGoals(goals);
