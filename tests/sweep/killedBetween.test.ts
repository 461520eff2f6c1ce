/**
 * `merge` and `inject`, killed at any moment: each result file is whole or not there, and the same command run again
 * gives the bytes of an undisturbed run. More of them: TRUMPETRY_KILLS=100 npx vitest run tests/sweep/killedBetween
 */
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { describe, expect, it } from 'vitest';
import { fileOf } from '../cli/commandLine.ts';
import { cheapText } from '../golden/cheap.ts';
import { SLOW, slow } from '../slow.ts';
import { bundledProgram, endOf, quickScenario, startProgram } from './program.ts';

const KILLS = Number(process.env.TRUMPETRY_KILLS ?? (SLOW ? 20 : 2));

const folder = () => mkdtempSync(join(tmpdir(), 'trumpetry-killed-'));
const run = (...words: string[]) => endOf(startProgram(bundledProgram(), words));

/** Every file of a folder but stores and what stands beside them. */
function results(out: string): Record<string, string> {
  const names = readdirSync(out).filter((name) => !/jsonl|lock|\.part$/.test(name));
  return Object.fromEntries(names.map((name) => [name, readFileSync(join(out, name), 'utf8')]));
}

/** An undisturbed run. */
interface Whole {
  folder: string;
  /** How it ended: with injectors some points may not settle. */
  code: number | null;
  /** [ms] */
  took: number;
}

async function undisturbed(words: readonly string[], folder: string): Promise<Whole> {
  const start = performance.now();
  const { code } = await run(...words, '--out', folder);
  return { folder, code, took: performance.now() - start };
}

/** Kills it that often within the time that it takes, then lets it come to its end. */
async function killed(words: readonly string[], out: string, whole: Whole) {
  let most = whole.took;
  for (let kills = 0; kills < KILLS; ) {
    const child = startProgram(bundledProgram(), [...words, '--out', out]);
    const start = performance.now();
    const end = endOf(child);
    await Promise.race([end, wait(most * Math.random())]);
    child.kill('SIGKILL');
    if ((await end).signal === 'SIGKILL') kills++;
    // It goes faster with what earlier ones have stored.
    else most = performance.now() - start;
    for (const [name, bytes] of Object.entries(results(out)))
      expect(bytes, name).toBe(results(whole.folder)[name]);
    for (const name of Object.keys(results(out))) rmSync(join(out, name));
  }
  expect(await run(...words, '--out', out)).toMatchObject({ code: whole.code });
  expect(results(out)).toEqual(results(whole.folder));
  expect(readdirSync(out).filter((name) => /lock|\.part$/.test(name))).toEqual([]);
}

const LONGEST = 300_000 + 60_000 * KILLS;

describe(`killed at ${KILLS} random moments, the same bytes`, () => {
  slow(
    'inject',
    async () => {
      const file = fileOf(cheapText('endurance-six', { 'injectors.parcels': 10 }), 'six.yaml');
      const whole = await undisturbed(['inject', file], folder());
      expect(Object.keys(results(whole.folder))).toContain('inject.json');
      await killed(['inject', file], folder(), whole);
    },
    LONGEST,
  );

  it(
    'merge',
    async () => {
      const file = quickScenario();
      const dealt = folder();
      for (const shard of ['1/2', '2/2'])
        await run('sweep', file, '--shard', shard, '--out', dealt);
      const [other, out] = [folder(), folder()];
      for (const copy of [other, out]) cpSync(dealt, copy, { recursive: true });
      const whole = await undisturbed(['merge', file], other);
      expect(whole.code).toBe(0);
      expect(Object.keys(results(other))).toContain('sweep.json');
      await killed(['merge', file], out, whole);
    },
    LONGEST,
  );
});
