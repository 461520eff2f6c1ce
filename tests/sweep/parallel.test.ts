/**
 * A job dealt out by GNU parallel ends as if one program had done it: the command of
 * docs/big-jobs.md. Where parallel is missing it is installed, which takes root on Debian.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { bundledProgram, quickScenario } from './program.ts';

const SHARDS = 3;
const RESULTS = ['sweep.json', 'sweep.csv', 'report.html'];

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
  program = resolve(bundledProgram());
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
  for (const name of RESULTS) {
    const bytes = (out: string) => readFileSync(join(out, name), 'utf8');
    expect(bytes(shared)).toBe(bytes(whole));
  }
  const lines = stores.map(
    (name) => readFileSync(join(shared, name), 'utf8').split('\n').length - 1,
  );
  expect(Math.max(...lines) - Math.min(...lines)).toBeLessThanOrEqual(1);
});

it('a shard that was killed is run again by --resume-failed, and goes on', () => {
  const [whole, dealt] = [folder(), folder()];
  expect(trumpetry('sweep', file, '--out', whole).status).toBe(0);
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
