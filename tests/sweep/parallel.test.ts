/**
 * A job dealt out in shards ends as if one program had done it. `npm run prove` deals by GNU parallel, with the
 * command of docs/big-jobs.md; where it is missing it is installed, which takes root on Debian.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { SLOW, slow } from '../slow.ts';
import { bundledProgram, quickScenario } from './program.ts';

const RESULTS = ['sweep.json', 'sweep.csv', 'report.html'];

let program = '';
let file = '';

const found = () => spawnSync('parallel', ['--version']).status === 0;
const folder = () => mkdtempSync(join(tmpdir(), 'trumpetry-parallel-'));
const trumpetry = (...words: string[]) => spawnSync(process.execPath, [program, ...words]);

beforeAll(async () => {
  if (SLOW && !found()) {
    execFileSync('apt-get', ['update']);
    execFileSync('apt-get', ['install', '-y', 'parallel']);
  }
  program = resolve(bundledProgram());
  file = quickScenario();
  whole = folder();
  expect(trumpetry('sweep', file, '--workers', '2', '--out', whole).status).toBe(0);
}, 300_000);

afterAll(() => {});

/** The results of one sweep, computed once. */
let whole = '';
const bytes = (out: string, name: string) => readFileSync(join(out, name), 'utf8');

it('merging too early says what is missing and decides nothing', () => {
  const early = trumpetry('merge', file, '--out', folder());
  expect(early.status).toBe(2);
  expect(String(early.stderr)).toMatch(/\d+ of \d+ points are not in/);
});

it.each(SLOW ? [1, 3, 12] : [3])('%d shards and merge give the bytes of one sweep', (shards) => {
  const shared = folder();
  const words = (shard: string) =>
    `sweep ${file} --workers 1 --shard ${shard}/${shards} --out ${shared}`.split(' ');
  const numbers = Array.from({ length: shards }, (_, i) => String(i + 1));
  const command = [process.execPath, program, ...words('{}')].join(' ');
  const dealt = SLOW
    ? [spawnSync('parallel', ['--will-cite', '-j', '2', command, ':::', ...numbers])]
    : numbers.map((number) => trumpetry(...words(number)));
  for (const { stderr, status } of dealt) {
    if (SLOW) expect(String(stderr)).toBe('');
    expect(status).toBe(0);
  }
  const stores = readdirSync(shared).filter((name) => name.startsWith('points-'));
  expect(stores).toHaveLength(shards);

  expect(trumpetry('merge', file, '--out', shared).status).toBe(0);
  for (const name of RESULTS) expect(bytes(shared, name)).toBe(bytes(whole, name));
  const lines = stores.map((name) => bytes(shared, name).split('\n').length - 1);
  expect(Math.max(...lines) - Math.min(...lines)).toBeLessThanOrEqual(1);
});

it.each(SLOW ? ['1', '7'] : ['7'])('%s workers give the bytes of two', (workers) => {
  const out = folder();
  expect(trumpetry('sweep', file, '--workers', workers, '--out', out).status).toBe(0);
  for (const name of RESULTS) expect(bytes(out, name)).toBe(bytes(whole, name));
});

slow('a shard that was killed is run again by --resume-failed, and goes on', () => {
  const dealt = folder();
  const out = join(dealt, 'big');
  const store = join(out, 'points-2-of-3.jsonl');
  // The first attempt at the second shard is killed as soon as it has stored a point.
  const script = join(dealt, 'shard.sh');
  writeFileSync(
    script,
    `trumpetry() { exec "${process.execPath}" "${program}" "$@"; }
shard() { trumpetry sweep "${file}" --workers 1 --shard "$1/3" --resume --out "${out}"; }
if [ "$1" = 2 ] && [ ! -e "${store}" ]; then
  shard 2 &
  until grep -q outcome "${store}" 2>/dev/null; do sleep 0.01; done
  kill -KILL $!
  wait $!
  exit
fi
shard "$1"
`,
  );
  const words = ['--will-cite', '-j', '1', '--joblog', join(out, 'log'), '--resume-failed'];
  const run = () => spawnSync('parallel', [...words, `bash ${script} {}`, ':::', '1', '2', '3']);
  mkdirSync(out);
  expect(run().status).toBe(1);
  const told = trumpetry('status', file, '--out', out);
  expect(told.status).toBe(1);
  expect(String(told.stdout)).toMatch(/shard 2\/3: \d+ of \d+ points are missing\n$/);
  const kept = readFileSync(store, 'utf8');
  const first = statSync(join(out, 'points-1-of-3.jsonl')).mtimeMs;
  expect(run().status).toBe(0);
  expect(statSync(join(out, 'points-1-of-3.jsonl')).mtimeMs).toBe(first);
  expect(readFileSync(store, 'utf8').startsWith(kept.slice(0, kept.lastIndexOf('\n') + 1))).toBe(
    true,
  );
  expect(trumpetry('status', file, '--out', out).status).toBe(0);
  expect(trumpetry('merge', file, '--out', out).status).toBe(0);
  for (const name of RESULTS) {
    expect(readFileSync(join(out, name), 'utf8')).toBe(readFileSync(join(whole, name), 'utf8'));
  }
});
