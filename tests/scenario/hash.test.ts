import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { canonicalJson } from '../../sim/canonicalJson.ts';
import { scenarioHash } from '../../sim/scenario/hash.ts';
import { readScenario } from '../../sim/scenario/read.ts';

const TEXT = readFileSync('scenarios/hill-climb.yaml', 'utf8');
const hashOf = (text: string) => scenarioHash(readScenario(text, 'x.yaml'));
const HASH = hashOf(TEXT);

test('64 hexadecimal digits, twice the same', () => {
  expect(HASH).toMatch(/^[0-9a-f]{64}$/);
  expect(hashOf(TEXT)).toBe(HASH);
});

test.each([
  ['a remark', '# bore gauge', '# another gauge'],
  ['the notes', 'Short courses', 'Long courses'],
  ['the title', 'title: Hill-climb', 'title: Sprint'],
  ['another unit', 'bore: 86 mm', 'bore: 8.6 cm'],
  [
    'the order of keys',
    '  bore: 86 mm # bore gauge\n  stroke: 86 mm',
    '  stroke: 86 mm\n  bore: 86 mm',
  ],
  ['a default written out', 'fuel:\n', 'fuel:\n  efficiency: 0.97\n'],
])('%s does not change it', (_, from, to) => {
  expect(TEXT).toContain(from);
  const text = TEXT.replace(from, to).replace(/(bore: 86 mm); here.*/, '$1');
  expect(hashOf(text)).toBe(HASH);
});

test.each([
  ['a figure', 'rod: 143 mm', 'rod: 143.1 mm'],
  ['a default overruled', 'fuel:\n', 'fuel:\n  efficiency: 0.96\n'],
  ['a speed', 'to: 8600 rpm', 'to: 8200 rpm'],
  ['a length', 'to: 300 mm', 'to: 320 mm'],
  ['the band', 'to: 7400 rpm', 'to: 7401 rpm'],
])('%s changes it', (_, from, to) => {
  expect(TEXT).toContain(from);
  expect(hashOf(TEXT.replace(from, to))).not.toBe(HASH);
});

test('canonical JSON sorts keys, keeps lists and drops what is absent', () => {
  const value = { b: [2, 1], a: { d: 'x"', c: 1e-7 }, e: undefined };
  expect(canonicalJson(value)).toBe('{"a":{"c":1e-7,"d":"x\\""},"b":[2,1]}');
});

test('SHA-256 of the canonical text, by the Node library too', async () => {
  const { createHash } = await import('node:crypto');
  const { engine, speeds, sweep, target } = readScenario(TEXT, 'x.yaml');
  const text = canonicalJson({ engine: { ...engine, title: '' }, speeds, sweep, target });
  expect(createHash('sha256').update(text).digest('hex')).toBe(HASH);
});
