/**
 * A job dealt out by GNU parallel ends as if one program had done it: the command of
 * docs/big-jobs.md. Where parallel is missing it is installed, which takes root on Debian.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { bundledProgram, quickScenario } from './program.ts';

const SHARDS = 3;

let program = '';
let file = '';

const found = () => spawnSync('parallel', ['--version']).status === 0;
const folder = () => mkdtempSync(join(tmpdir(), 'trumpetry-parallel-'));
const trumpetry = (...words: string[]) => spawnSync(process.execPath, [program, ...words]);

beforeAll(async () => {
  if (!found()) {
    execFileSync('apt-get', ['update']);
    execFileSync('apt-get', ['install', '-y', 'parallel']);
  }
  program = bundledProgram();
  file = quickScenario();
}, 300_000);

afterAll(() => {
  rmSync(dirname(program), { recursive: true });
});

it('three shards under GNU parallel and merge give the bytes of one sweep', () => {
  const [whole, shared] = [folder(), folder()];
  expect(trumpetry('sweep', file, '--out', whole).status).toBe(0);

  // Merging too early says what is missing and decides nothing.
  const early = trumpetry('merge', file, '--out', shared);
  expect(early.status).toBe(2);
  expect(String(early.stderr)).toMatch(/\d+ of \d+ points are not in/);

  const command = `${process.execPath} ${program} sweep ${file} --workers 1 --shard {}/${SHARDS} --out ${shared}`;
  const numbers = Array.from({ length: SHARDS }, (_, i) => String(i + 1));
  const dealt = spawnSync('parallel', ['--will-cite', '-j', '2', command, ':::', ...numbers]);
  expect(String(dealt.stderr)).toBe('');
  expect(dealt.status).toBe(0);
  const stores = readdirSync(shared).filter((name) => name.startsWith('points-'));
  expect(stores).toHaveLength(SHARDS);

  expect(trumpetry('merge', file, '--out', shared).status).toBe(0);
  for (const name of ['sweep.json', 'sweep.csv', 'report.html']) {
    const bytes = (out: string) => readFileSync(join(out, name), 'utf8');
    expect(bytes(shared)).toBe(bytes(whole));
  }
  const lines = stores.map(
    (name) => readFileSync(join(shared, name), 'utf8').split('\n').length - 1,
  );
  expect(Math.max(...lines) - Math.min(...lines)).toBeLessThanOrEqual(1);
});
