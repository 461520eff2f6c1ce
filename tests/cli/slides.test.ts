/** Slides and barrels: what is said of them that does not hold for a plate on a shaft. No source: words. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { leverNotes } from '../../sim/study/lever.ts';
import { demo } from '../scenario.ts';
import { answer, fileOf } from './commandLine.ts';

/** A demo with another throttle. */
const withKind = (name: string, kind: string) =>
  fileOf(
    readFileSync(`scenarios/${name}.yaml`, 'utf8')
      .replace(/ {4}shaftDiameter: .*\n/, '')
      .replace('  throttle:\n', `  throttle:\n    kind: ${kind}\n`),
    `${kind}.yaml`,
  );

test.each([
  ['slide', 'onto its guides'],
  ['barrel', 'into its bearings'],
])('vacuum presses a shut %s %s', async (kind, where) => {
  const { code, stdout } = await answer('pedal', withKind('forest-four', kind));
  expect(code).toBe(0);
  const text = stdout.replace(/\s+/g, ' ');
  expect(text).toContain(`vacuum presses a shut ${kind} ${where}, by up to`);
  expect(text).not.toContain('is not turned by it');
  expect(text).not.toMatch(/\bplates?\b/i);
});

test('angles are of a lever, where there is no plate', async () => {
  const { engine } = demo('hill-climb');
  expect(leverNotes(engine)).toEqual([]);
  const readings = ['balance', withKind('hill-climb', 'barrel'), '--readings'];
  const { stdout } = await answer(...readings, 'scenarios/hill-climb-bodies.csv');
  const text = stdout.replace(/\s+/g, ' ');
  expect(text).toContain("Angles are of the barrel's lever: shut at 8 deg, wide open at 90 deg");
  expect(text).not.toMatch(/\bplates?\b/i);
});
