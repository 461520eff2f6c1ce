/**
 * Goldens of what big jobs and the proof print: a table of variants, shards of it, what is there and what is missing,
 * their merge; and a proof of made-up checks. Points are made up too, so no solver is asked.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { type Answer, answerFrom, answerOn, fileOf, freshFolder } from '../cli/commandLine.ts';
import { type Check, outcomeOf } from '../prove/check.ts';
import { addProve } from '../prove/command.ts';
import { toyPoint } from '../toy.ts';
import { cheapText } from './cheap.ts';
import { computerOf } from './computer.ts';
import { readableJson } from './readable.ts';

const FAULT = /fault of the program|no point /;

async function golden(name: string, text: string): Promise<void> {
  expect(text).not.toMatch(FAULT);
  await expect(text).toMatchFileSnapshot(`./jobs/${name}`);
}

/** Fillings of three digits, unlike each other, that hang on nothing but length, compression and speed. */
const madeUp = computerOf(
  async ({ engine: { cylinder, intake }, speed }) => {
    const by = 7 * intake.trumpet.length + cylinder.compressionRatio / 3 + speed / 3700;
    return toyPoint(speed, Math.round(1000 + 200 * Math.sin(by)) / 1000);
  },
  () => Promise.reject(new Error('nothing is traced')),
);

const engine = fileOf(cheapText('hill-climb'));
const rows = fileOf(
  [
    'intake.trumpet.length [mm],engine.compressionRatio',
    '80,11',
    '120,11.4',
    '160,11.8',
    '200,12',
  ].join('\n'),
  'variants.csv',
);

const plain = (text: string, out: string) =>
  text
    .replaceAll(out, 'OUT')
    .replaceAll(dirname(engine), 'FOLDER')
    .replaceAll(dirname(rows), 'FOLDER');

const spoken = ({ code, stdout, stderr }: Answer, out: string) =>
  plain(`${stdout}\n--- exit code ${code}, beside it:\n${stderr}`, out);

/** A command into a folder, as a golden of its words, and of its document too. */
async function said(name: string, out: string, ...words: string[]): Promise<Answer> {
  const answer = await answerFrom(madeUp, ...words, '--out', out);
  await golden(`${name}.txt`, spoken(answer, out));
  return answer;
}

const KINDS = [
  ['table', ['--rows', rows]],
  ['sweep', []],
] as const;

test('a table of variants', async () => {
  const out = freshFolder();
  await said('table', out, 'table', engine, '--rows', rows);
  await golden('table.csv', readFileSync(join(out, 'table.csv'), 'utf8'));
  await golden('table.json', readableJson(readFileSync(join(out, 'table.json'), 'utf8')));
  expect(readdirSync(out)).toContain('table.parquet');
});

describe.each(KINDS)('a job of %s', (command, more) => {
  test('in shards: what is there, what is missing, and what becomes of it', async () => {
    const out = freshFolder();
    const status = (name: string) => said(`${command}-${name}`, out, 'status', engine, ...more);
    const merge = (name: string) => said(`${command}-${name}`, out, 'merge', engine, ...more);
    await status('status-before');
    await said(`${command}-shard`, out, command, engine, ...more, '--shard', '1/2');
    await status('status-half');
    const half = await answerFrom(madeUp, ...['status', engine, ...more, '--out', out, '--json']);
    await golden(`${command}-status-half.json`, readableJson(plain(half.stdout, out)));
    expect((await merge('merge-half')).code).not.toBe(0);
    await answerFrom(madeUp, command, engine, ...more, '--out', out, '--shard', '2/2');
    await status('status-whole');
    expect((await merge('merge')).code).toBe(0);
  });
});

/** One of each kind: exact, within a tolerance, within a band, copied, and one that fails. */
const CHECKS: Check[] = [
  {
    what: 'a number told exactly',
    source: 'sod',
    published: 1,
    tolerance: { absolute: 0 },
    run: () => 1,
    by: 'solver',
  },
  {
    what: 'one within one per cent',
    source: 'sod',
    published: 250,
    tolerance: { relative: 0.01 },
    run: () => 251,
  },
  {
    what: 'one within a band | told so',
    source: 'toro',
    published: [0.95, 1.05],
    tolerance: { absolute: 0 },
    run: () => 0.9725,
  },
  {
    what: 'a copied number',
    source: 'toro',
    published: 1e-5,
    tolerance: { relative: 1e-4 },
    run: () => 1e-5,
    by: 'copy',
  },
  {
    what: 'one that is off',
    source: 'toro',
    published: 2,
    tolerance: { relative: 0.01 },
    run: () => 2.1,
  },
];

const addThese =
  (checks: readonly Check[]): typeof addProve =>
  (root, terminal, end) =>
    addProve(root, terminal, end, (slow, told = () => {}) => {
      const outcomes = slow ? [] : checks.map((check) => outcomeOf('Pipes', check));
      outcomes.forEach(told);
      return outcomes;
    });

describe.each([
  ['proof', CHECKS.slice(0, -1)],
  ['proof-fails', CHECKS],
])('%s', (name, checks) => {
  test('on the terminal, as a document and as a page', async () => {
    const out = freshFolder();
    const added = [addThese(checks)];
    const answer = await answerOn({ added }, 'prove', '--pages', out);
    await golden(`${name}.txt`, spoken(answer, out));
    const document = await answerOn({ added }, 'prove', '--json');
    await golden(`${name}.json`, readableJson(document.stdout));
    await golden(`${name}.md`, readFileSync(join(out, 'proof.md'), 'utf8'));
  });
});
