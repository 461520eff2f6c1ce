/** Variants from a table: errors by line and column, shards and merge, CSV and Parquet read back. */
import { existsSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { parquetReadObjects } from 'hyparquet';
import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { chanceWorkers } from '../golden/chance.ts';
import { cheapText } from '../golden/cheap.ts';
import { answer, answerFrom, fileOf, freshFolder } from './commandLine.ts';

const file = fileOf(cheapText('hill-climb'), 'hill-climb.yaml');
const SPEEDS = 4;

const HEAD = 'intake.trumpet.length [mm],engine.compressionRatio,intake.valves.lift.maximum';
const ROWS = Array.from(
  { length: 40 },
  (_, i) => `${80 + 5 * i},${11 + i / 100},${10 + i / 100} mm`,
);
const rows = fileOf([HEAD, ...ROWS].join('\n'), 'variants.csv');

const table = (out: string, ...more: string[]) =>
  answerFrom(chanceWorkers, 'table', file, '--rows', rows, '--out', out, '--quiet', ...more);
const merge = (out: string) =>
  answerFrom(chanceWorkers, 'merge', file, '--rows', rows, '--out', out, '--quiet');

describe('a table of variants', () => {
  test('tells a short summary, and every row in the files', async () => {
    const out = freshFolder();
    const { stdout } = await table(out);
    expect(stdout).toContain(`40 rows of 3 keys at ${SPEEDS} speeds, ${40 * SPEEDS} points`);
    expect(stdout.replace(/\s+/g, ' ')).toMatch(
      /Computed at these 4 speeds alone: .* What lies between is not known; sweep of a file with the values of a row, or with --vary, computes it\./,
    );
    expect(stdout.split('\n').length).toBeLessThan(40);
    const { data } = Papa.parse<Record<string, string>>(read(out, 'table.csv').trim(), {
      header: true,
    });
    expect(data).toHaveLength(40 * SPEEDS);
    expect(data[SPEEDS]).toMatchObject({
      row: '2',
      'intake.trumpet.length_mm': '85',
      'engine.compressionRatio': '11.01',
      'intake.valves.lift.maximum': '10.01 mm',
    });
  });

  test('in Parquet holds the names and cells of the CSV, numbers as doubles, gaps as nulls', async () => {
    const out = freshFolder();
    await table(out);
    const bytes = readFileSync(join(out, 'table.parquet'));
    const buffer = bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength);
    const records = await parquetReadObjects({ file: buffer as ArrayBuffer });
    const { data, meta } = Papa.parse<Record<string, string>>(read(out, 'table.csv').trim(), {
      header: true,
    });
    expect(Object.keys(records[0]!)).toEqual(meta.fields);
    expect(records).toHaveLength(data.length);
    records.forEach((record, i) => {
      for (const [name, value] of Object.entries(record))
        expect(value === null ? '' : String(value), name).toBe(data[i]![name]);
    });
    expect(typeof records[0]!.volumetric_efficiency).toBe('number');
    expect(typeof records[0]!['intake.trumpet.length_mm']).toBe('number');
    expect(typeof records[0]!.settled).toBe('boolean');
    expect(records.some(({ failure }) => failure === null)).toBe(true);
  });

  test('dealt out and merged gives the bytes of one run; status tells what is missing', async () => {
    const [whole, dealt] = [freshFolder(), freshFolder()];
    await table(whole);
    await table(dealt, '--shard', '1/3');
    await table(dealt, '--shard', '3/3');
    const early = await merge(dealt);
    expect(early.code).toBe(2);
    expect(early.stderr).toContain('run the shards that are missing');
    const told = await answer('status', file, '--rows', rows, '--out', dealt);
    expect(told.code).toBe(1);
    expect(told.stdout).toMatch(/shard 2\/3: (\d+) of \1 points are missing/);
    await table(dealt, '--shard', '2/3');
    await merge(dealt);
    for (const name of ['table.csv', 'table.parquet', 'table.json', 'table.html'])
      expect(readFileSync(join(dealt, name)).equals(readFileSync(join(whole, name))), name).toBe(
        true,
      );
    rmSync(dealt, { recursive: true });
  });
});

const read = (out: string, name: string) => readFileSync(join(out, name), 'utf8');

test.each([
  [
    'a value out of range',
    [HEAD, '60,11,10 mm', '-4,11,10 mm'],
    ':3:1 intake.trumpet.length: -4 mm is out of range',
  ],
  [
    'a value that is none',
    [HEAD, '60,abc,10 mm'],
    ':2:2 engine.compressionRatio: cannot read "abc"',
  ],
  ['a unit that is missing', [HEAD, '60,11,10'], ':2:3 intake.valves.lift.maximum:'],
  ['a key that is none', ['engine.rodd', '1'], ':1:1 engine.rodd: is no key'],
  ['a key twice', ['engine.bore,engine.bore', '80 mm,81 mm'], ':1:2 engine.bore: is there twice'],
  ['too few cells', [HEAD, '60,11'], ':2:1'],
  ['no rows', [HEAD], ':1:1'],
])('%s is told by line and column before anything is computed', async (_name, lines, words) => {
  const bad = fileOf(lines.join('\n'), 'bad.csv');
  const { code, stderr } = await answer('table', file, '--rows', bad, '--out', freshFolder());
  expect(code).toBe(2);
  expect(stderr).toContain(`${bad}${words}`);
});

test('a shard makes no engine but its own: a row that breaks a rule stops its own share alone', async () => {
  const head = 'intake.trumpet.length [mm],intake.valves.headDiameter';
  const lines = Array.from({ length: 40 }, (_, i) => `${80 + i},${i === 5 ? 20 : 35} mm`);
  const odd = fileOf([head, ...lines].join('\n'), 'odd.csv');
  const shard = (of: string) =>
    answerFrom(
      chanceWorkers,
      'table',
      file,
      '--rows',
      odd,
      '--out',
      freshFolder(),
      '--shard',
      of,
      '--quiet',
    );
  expect((await shard('1/3')).code).toBe(0);
  const broken = await shard('3/3');
  expect(broken.code).toBe(2);
  expect(broken.stderr).toContain('odd.csv:7:1 intake.valves.seatDiameter: the seat is wider');
});

test('values of a key are not dealt out, and leave the points of a sweep in the folder alone', async () => {
  const words = ['table', file, '--vary', 'engine.compressionRatio=11,12', '--out'];
  const out = freshFolder();
  await answerFrom(chanceWorkers, ...words, out, '--quiet');
  expect(existsSync(join(out, 'points.jsonl'))).toBe(false);
  const { code, stderr } = await answer(...words, out, '--shard', '1/2');
  expect(code).toBe(2);
  expect(stderr).toContain('--resume and --shard of table go with --rows');
});
