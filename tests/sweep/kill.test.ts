/** Killed at any moment and gone on with, a sweep ends as if nothing had happened. */
import { mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { SLOW } from '../slow.ts';
import { wholeLines } from './lines.ts';
import { bundledProgram, endOf, LENGTHS, quickScenario, SPEEDS, startProgram } from './program.ts';

/** More of them: TRUMPETRY_KILLS=100 npx vitest run tests/sweep/kill.test.ts */
const KILLS = Number(process.env.TRUMPETRY_KILLS ?? (SLOW ? 100 : 5));

/**
 * Kills that one sweep suffers before it may end. With 1 every kill has a sweep of its own, which
 * takes several times as long: TRUMPETRY_KILLS_A_SWEEP=1 npx vitest run tests/sweep/kill.test.ts
 */
const EACH = Number(process.env.TRUMPETRY_KILLS_A_SWEEP ?? 5);
const RESULTS = ['sweep.json', 'sweep.csv', 'report.html'];

let program = '';
let file = '';
let whole = '';
let allLines = 0;

const folder = () => mkdtempSync(join(tmpdir(), 'trumpetry-kill-'));
const store = (out: string) => join(out, 'points.jsonl');
const read = (path: string) => readFileSync(path, 'utf8');
const size = (path: string) => statSync(path, { throwIfNoEntry: false })?.size ?? -1;
const run = (...words: string[]) => endOf(startProgram(program, words));

function keys(text: string): string[] {
  const lines = text.split('\n').filter((line) => line.endsWith('}}'));
  const records = lines.map((line) => JSON.parse(line) as { key?: string });
  return records.flatMap(({ key }) => (key === undefined ? [] : [key]));
}

/** The whole lines of a store; a torn one at its end is cut off when the sweep goes on. */
const untorn = (text: string) => text.slice(0, wholeLines(text));

beforeAll(async () => {
  program = bundledProgram();
  file = quickScenario();
  whole = folder();
  expect(await run('sweep', file, '--out', whole)).toMatchObject({ code: 0 });
  allLines = keys(read(store(whole))).length;
});

afterAll(() => {
  rmSync(whole, { recursive: true });
});

it('an undisturbed sweep stores every point once', () => {
  const found = keys(read(store(whole)));
  expect(new Set(found).size).toBe(found.length);
  // Every length tried and the baseline, and the run that confirms the length between them.
  expect(found.length).toBeGreaterThanOrEqual((LENGTHS + 1) * SPEEDS);
});

/**
 * Starts a sweep, or goes on with it, kills it at a random moment of its own share of the whole, so
 * that the kills of one sweep do not fall together, and gives what it left.
 */
async function killed(out: string, kill: number): Promise<string> {
  const resume = kill > 0;
  const moment = (size(store(whole)) * (kill + Math.random())) / EACH;
  const child = startProgram(program, sweepWords(out, resume));
  const end = endOf(child);
  let over = false;
  void end.then(() => {
    over = true;
  });
  while (!over && size(store(out)) < moment) await wait(1);
  await wait(4 * Math.random());
  child.kill('SIGKILL');
  await end;
  return read(store(out));
}

const sweepWords = (out: string, resume: boolean) => [
  'sweep',
  file,
  '--out',
  out,
  ...(resume ? ['--resume'] : []),
];

describe(`killed at ${KILLS} random moments`, () => {
  const left: number[] = [];

  it.each(Array.from({ length: KILLS / EACH }, (_, i) => i + 1))(
    'sweep %d: killed and resumed, it ends alike and computes nothing finished again',
    async () => {
      const out = folder();
      let before = '';
      for (let kill = 0; kill < EACH; kill++) {
        const after = await killed(out, kill);
        expect(after.startsWith(untorn(before))).toBe(true);
        before = after;
        left.push(keys(before).length);
      }
      expect(await run(...sweepWords(out, true))).toMatchObject({ code: 0 });
      for (const name of RESULTS) expect(read(join(out, name))).toBe(read(join(whole, name)));
      const after = read(store(out));
      expect(after.startsWith(untorn(before))).toBe(true);
      const found = keys(after);
      expect(new Set(found).size).toBe(found.length);
      expect(found.sort()).toEqual(keys(read(store(whole))).sort());
      rmSync(out, { recursive: true });
    },
    120_000,
  );

  it('fell at many different moments', () => {
    expect(left).toHaveLength(KILLS);
    expect(new Set(left).size).toBeGreaterThan(Math.min(6, KILLS / 2));
    expect(left.filter((lines) => lines > 0 && lines < allLines).length).toBeGreaterThan(
      0.4 * KILLS,
    );
  });
});
