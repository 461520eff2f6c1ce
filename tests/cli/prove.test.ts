/** The command `prove`, with two checks in place of all: they are run by tests/prove/prove.test.ts. */
import { readdirSync } from 'node:fs';
import { beforeEach, expect, it } from 'vitest';
import type { Check } from '../prove/check.ts';
import { outcomeOf } from '../prove/check.ts';
import { addProve } from '../prove/command.ts';
import { answerOn, freshFolder } from './commandLine.ts';

const checks: Check[] = [];

/** The command with these checks for all. */
const addThese: typeof addProve = (root, terminal, end) =>
  addProve(root, terminal, end, (slow, told = () => {}) => {
    const outcomes = slow ? [] : checks.map((check) => outcomeOf('Pipes', check));
    outcomes.forEach(told);
    return outcomes;
  });

const check = (ours: number): Check => ({
  what: `ours ${ours}`,
  source: 'sod',
  published: 1,
  tolerance: { relative: 0.01 },
  run: () => ours,
});

beforeEach(() => {
  checks.length = 0;
});

it('ends with 0 where all checks hold, and prints one document', async () => {
  checks.push(check(1), { ...check(1.009), by: 'copy' });
  const { code, stdout, stderr } = await answerOn({ added: [addThese] }, 'prove', '--json');
  expect(code).toBe(0);
  expect(stderr).toBe('');
  expect(JSON.parse(stdout)).toMatchObject({
    schema: { name: 'trumpetry-proof', version: 1 },
    checks: 2,
    failed: 0,
    by: { solver: 0, formula: 1, copy: 1 },
    rows: [{ group: 'Pipes', published: 1, ours: 1, holds: true }, { ours: 1.009 }],
  });
});

it('ends with 1 where one fails, and names it', async () => {
  checks.push(check(1), check(1.011));
  const { code, stdout, stderr } = await answerOn({ added: [addThese] }, 'prove', '--json');
  expect(code).toBe(1);
  expect(stderr).toContain('fails: Pipes: ours 1.011');
  expect(JSON.parse(stdout)).toMatchObject({
    failed: 1,
    rows: [{ holds: true }, { holds: false }],
  });
});

it('writes where it is told and nowhere else', async () => {
  checks.push(check(1));
  const [at, before] = [process.cwd(), freshFolder()];
  try {
    process.chdir(before);
    const run = (...words: string[]) => answerOn({ added: [addThese] }, 'prove', ...words);
    await run();
    await run('--json');
    expect(readdirSync('.')).toEqual([]);
    expect((await run('--pages', 'pages')).stdout).toContain('Written: pages/proof.md');
    await run('--json', '--out', 'figures');
    expect(readdirSync('.', { recursive: true }).sort()).toEqual([
      'figures',
      'figures/proof.json',
      'pages',
      'pages/proof.md',
    ]);
  } finally {
    process.chdir(at);
  }
});
