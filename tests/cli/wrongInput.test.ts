/** Whatever is wrong with what the user gave: exit code 2, a line that helps, and no stack trace. */
import { chmodSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { type Answer, answer, ended, fileOf, freshFolder, start } from './commandLine.ts';

const GOOD = readFileSync('scenarios/hill-climb.yaml', 'utf8');
const HILL = 'scenarios/hill-climb.yaml';

const withThrottle = (key: string) => GOOD.replace(/^ {4}closedAngle:/m, `    ${key}\n$&`);

function expectWrong({ code, stdout, stderr }: Answer): void {
  expect(code).toBe(2);
  expect(stdout).toBe('');
  expect(stderr).not.toBe('');
  expect(stderr).not.toMatch(/^\s+at /m);
}

describe('a broken file', () => {
  const bomb = Array.from(
    { length: 20 },
    (_, i) => `k${i}: &k${i} [${i ? `*k${i - 1}, *k${i - 1}` : 'a'}]`,
  );
  test.each<[string, string | Uint8Array]>([
    ['wrong unit', GOOD.replace('bore: 86 mm', 'bore: 86 kPa')],
    ['no unit', GOOD.replace('bore: 86 mm', 'bore: 86')],
    ['missing key', GOOD.replace(/^ {2}rod:.*\n/m, '')],
    ['misspelt key', GOOD.replace('stroke:', 'stork:')],
    ['negative length', GOOD.replace('length: 90 mm', 'length: -90 mm')],
    ['bore 0', GOOD.replace('bore: 86 mm', 'bore: 0 mm')],
    ['compression 1', GOOD.replace('compressionRatio: 12.4', 'compressionRatio: 1')],
    ['valve closing before opening', GOOD.replace('close: 60 deg ABDC', 'close: 60 deg BTDC')],
    ['plate at 400 deg', withThrottle('angle: 400 deg')],
    ['plate without a unit', withThrottle('angle: 45')],
    ['gap wider than a finger', withThrottle('rimGap: 30 mm')],
    ['bleed without a bore', withThrottle('bleed: { bore: 0 mm }')],
    ['NaN', GOOD.replace('lambda: 0.88', 'lambda: .nan')],
    ['band outside the speeds', GOOD.replace('to: 7400 rpm', 'to: 9400 rpm')],
    ['bracket left open', GOOD.replace('flow: 29 cfm }', 'flow: 29 cfm')],
    ['tabs', GOOD.replace('  stroke', '\tstroke')],
    ['alias bomb', bomb.join('\n')],
    ['empty', ''],
    ['not YAML', '<html><body>title: x</body></html>'],
    ['too long', `title: ${'x'.repeat(300_000)}`],
    ['UTF-16', Buffer.from(`\ufeff${GOOD}`, 'utf16le')],
    ['a picture', new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0, 0, 0xff])],
  ])('%s', async (_, content) => {
    const file = fileOf(content);
    const told = await answer('sweep', file);
    expectWrong(told);
    const [first] = told.stderr.split('\n');
    expect(first!.startsWith(`${file}:`)).toBe(true);
    expect(first!.slice(file.length)).toMatch(/^:\d+:\d+ .+/);
    expect(told.stderr).toContain('remedy: ');
    expect(told.stderr).toMatch(/\d+ problems? in the scenario file; nothing was computed\.\n$/);
  });

  test('all problems at once, as JSON too', async () => {
    const bad = GOOD.replace('bore: 86 mm', 'bore: 0 mm').replace('joined: 4', 'joined: 3');
    const { code, stdout, stderr } = await answer('check', fileOf(bad), '--json');
    expect(code).toBe(2);
    const { schema, error } = JSON.parse(stdout);
    expect(schema).toEqual({ name: 'trumpetry-error', version: 1 });
    expect(error.kind).toBe('input');
    expect(error.issues.map(({ path }: { path: string }) => path)).toEqual([
      'engine.bore',
      'exhaust.joined',
    ]);
    expect(error.issues[0]).toMatchObject({ column: 9, limit: '10 mm to 300 mm' });
    expect(stderr).toContain('2 problems');
  });
});

describe('no file', () => {
  test.each<[string, () => string, RegExp]>([
    ['that is not there', () => 'scenarios/none.yaml', /none\.yaml: there is no such file/],
    ['but a folder', () => 'scenarios', /scenarios is a folder/],
    ['but a device', () => '/dev/zero', /\/dev\/zero is no ordinary file/],
    ['below a file', () => `${HILL}/x.yaml`, /a part of the path is a file/],
    ['of reasonable size', () => fileOf(new Uint8Array(5 << 20)), /too large/],
  ])('%s', async (_, path, says) => {
    const told = await answer('check', path());
    expectWrong(told);
    expect(told.stderr).toMatch(says);
  });
});

describe('a wrong command', () => {
  const wrong: [string[], RegExp][] = [
    [['sweeep', HILL], /unknown command 'sweeep'[\s\S]*Did you mean sweep/],
    [['sweep'], /missing required argument 'FILE'/],
    [['sweep', HILL, HILL], /too many arguments/],
    [['sweep', HILL, '--jsonn'], /unknown option '--jsonn'[\s\S]*Did you mean --json/],
    [['sweep', HILL, '--workers'], /option '--workers <number>' argument missing/],
    [['sweep', HILL, '--workers', '0'], /whole number from 1 to 256/],
    [['sweep', HILL, '--workers', '1.5'], /whole number from 1 to 256/],
    [['sweep', HILL, '--workers', 'all'], /whole number from 1 to 256/],
    [['sweep', HILL, '--out', HILL], /there is a file of that name, not a folder/],
    [['curve', HILL, '--length', '180'], /--length 180: 180 has no unit.*for example/],
    [['curve', HILL, '--length', '180 kPa'], /is a pressure, not a length/],
    [['curve', HILL, '--length', '9 m'], /out of range; limit: 5 mm to 2 m/],
    [['curve', HILL, '--length', '10 mm'], /at least 17 mm/],
    [['trace', HILL, '--speed', '0rpm'], /out of range; limit: 500 rpm/],
    [['trace', HILL, '--speed', 'fast'], /cannot read "fast" as an engine speed/],
    [['trace', HILL, '--stations', 'nose'], /"nose" is no station; use mouth, port, exhaust/],
    [['trace', HILL, '--stations', 'runner:150%'], /no station/],
    [['trace', HILL, '--stations', 'port,port'], /port is named twice/],
  ];
  test.each(wrong)('%j', async (words, says) => {
    const told = await answer(...words);
    expectWrong(told);
    expect(told.stderr).toMatch(says);
  });

  test('as JSON: one document on stdout', async () => {
    const { code, stdout } = await answer('sweep', HILL, '--json', '--nothing');
    expect(code).toBe(2);
    expect(JSON.parse(stdout).error).toMatchObject({ kind: 'input', issues: [] });
  });

  test('none at all: help on stderr', async () => {
    const told = await answer();
    expectWrong(told);
    expect(told.stderr).toContain('Usage: trumpetry');
  });

  test('help and version end well', async () => {
    for (const words of [['--help'], ['sweep', '--help'], ['--version']]) {
      const { code, stdout, stderr } = await answer(...words);
      expect([code, stderr]).toEqual([0, '']);
      expect(stdout).not.toBe('');
    }
  });
});

test('a folder that may not be written to', async () => {
  const folder = freshFolder();
  writeFileSync(join(folder, 'curve.csv'), '');
  chmodSync(join(folder, 'curve.csv'), 0o444);
  const { code } = await answer('check', HILL);
  expect(code).toBe(0);
});

test('as a program: exit code 2, one message, no stack trace', async () => {
  expectWrong(await ended(start('sweep', 'scenarios/none.yaml')));
});
