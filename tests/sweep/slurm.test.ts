/**
 * The recipes of docs/big-jobs.md for Slurm, on a node of this machine alone: a task killed in the middle, requeued
 * and resumed, then a shard lost for good, end with the bytes of an undisturbed sweep. Where no such node can be
 * had it is passed over. `npm run prove`, or TRUMPETRY_SLOW= npx vitest run tests/sweep/slurm.test.ts
 */
import { spawnSync } from 'node:child_process';
import {
  chmodSync,
  copyFileSync,
  existsSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { expect } from 'vitest';
import { slow } from '../slow.ts';
import { bundledProgram, quickScenario } from './program.ts';
import { type SlurmNode, slurm, slurmMissing, slurmNode } from './slurmNode.ts';

const RESULTS = ['sweep.json', 'sweep.csv', 'report.html'];
const SHARDS = 3;

/** Blocks of commands under a heading of the page, for fewer shards of one worker. */
function recipes(heading: string): string[] {
  const page = readFileSync('docs/big-jobs.md', 'utf8');
  const section = page.split(`### ${heading}\n`)[1]!.split(/\n##/)[0]!;
  const blocks = section.match(/(?:^ {4}.*\n)+/gm)!;
  return blocks.map((block) =>
    block
      .replace(/^ {4}/gm, '')
      .trim()
      .replaceAll('12', String(SHARDS))
      .replace('--cpus-per-task=4', '--cpus-per-task=1'),
  );
}

/** A folder with the scenario under its name of the page, and the program on its path. */
function workplace(): string {
  const place = mkdtempSync(join(tmpdir(), 'trumpetry-place-'));
  copyFileSync(quickScenario(), join(place, 'my-engine.yaml'));
  return place;
}

/** The program; where it first computes the second shard, it is killed in the middle and its task requeued. */
function program(place: string): void {
  const run = `"${process.execPath}" "${resolve(bundledProgram())}"`;
  const script = `#!/bin/bash
if [[ "$*" == *"--shard 2/"* && ! -e killed ]]; then
  ${run} "$@" &
  until grep -q outcome big/points-2-of-${SHARDS}.jsonl 2>/dev/null; do sleep 0.01; done
  kill -KILL $!
  wait $!
  cp big/points-2-of-${SHARDS}.jsonl killed
  scontrol requeue "\${SLURM_ARRAY_JOB_ID}_2"
  sleep 60
fi
exec ${run} "$@"
`;
  writeFileSync(join(place, 'trumpetry'), script);
  chmodSync(join(place, 'trumpetry'), 0o755);
}

const store = (place: string, shard: number) =>
  join(place, 'big', `points-${shard}-of-${SHARDS}.jsonl`);

async function empty(node: SlurmNode): Promise<void> {
  while (slurm(node, 'squeue', '-h') !== '') await wait(200);
}

slow(
  'an array of shards on one node, a task killed and requeued, a shard lost: the bytes of one sweep',
  async (context) => {
    const missing = slurmMissing();
    if (missing !== '') context.skip(missing);
    const place = workplace();
    program(place);
    const node = await slurmNode();
    const env = { ...node.env, PATH: `${place}:${process.env.PATH}` };
    const shell = (text: string) => spawnSync('bash', ['-c', text], { cwd: place, env });
    const results = (out: string) =>
      RESULTS.map((name) => readFileSync(join(place, out, name), 'utf8'));
    try {
      const [script, dealing, mending] = recipes('Slurm');
      writeFileSync(join(place, 'trumpets.sh'), `${script}\n`);
      expect(shell('trumpetry sweep my-engine.yaml --out whole').status).toBe(0);

      expect(shell(dealing!).status).toBe(0);
      await empty(node);
      const killed = readFileSync(join(place, 'killed'), 'utf8');
      const whole = killed.slice(0, killed.lastIndexOf('\n') + 1);
      expect(readFileSync(store(place, 2), 'utf8').startsWith(whole)).toBe(true);
      expect(statSync(store(place, 2)).size).toBeGreaterThan(killed.length);
      expect(results('big')).toEqual(results('whole'));

      for (const name of RESULTS) rmSync(join(place, 'big', name));
      rmSync(store(place, 3));
      const early = shell('trumpetry merge my-engine.yaml --out big');
      expect(early.status).toBe(2);
      expect(String(early.stderr)).toMatch(/\d+ of \d+ points are not in big/);
      const first = statSync(store(place, 1)).mtimeMs;
      const mended = shell(mending!);
      expect(mended.status).toBe(0);
      expect(String(mended.stdout)).toMatch(/shard 3\/3: (\d+) of \1 points are missing/);
      expect(existsSync(store(place, 3))).toBe(true);
      expect(statSync(store(place, 1)).mtimeMs).toBe(first);
      expect(results('big')).toEqual(results('whole'));
    } finally {
      await node.stop();
    }
  },
  600_000,
);
