/** Which keys of the throttle body go with which kind, and what they resolve to. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readBodyReadings } from '../../sim/scenario/bodyReadings.ts';
import { readScenario } from '../../sim/scenario/read.ts';

const PLATE = readFileSync('scenarios/hill-climb.yaml', 'utf8');
const SHAFT = / {4}shaftDiameter:.*\n/;
const kind = (lines: string, text = PLATE.replace(SHAFT, '')) =>
  readScenario(text.replace('  throttle:\n', `  throttle:\n${lines}`), 'kind.yaml').engine.intake
    .throttle;

describe('what is taken', () => {
  test('a slide has no shaft and loses what an open gate does', () => {
    expect(kind('    kind: slide\n')).toMatchObject({
      ...{ kind: 'slide', shaftDiameter: 0, openLoss: 0.17 },
    });
  });

  test('a barrel is 1.5 bores wide where the file does not say', () => {
    expect(kind('    kind: barrel\n')).toMatchObject({ barrelDiameter: 0.0675, openLoss: 0.05 });
    const own = kind('    kind: barrel\n    barrelDiameter: 60 mm\n');
    expect(own.barrelDiameter).toBeCloseTo(0.06, 12);
  });

  test('a butterfly is what it was, said or not', () => {
    expect(kind('    kind: butterfly\n', PLATE)).toEqual(kind('', PLATE));
  });
});

test.each([
  ['    kind: slide\n', PLATE, 'a slide has no shaft across the bore'],
  ['    barrelDiameter: 60 mm\n', PLATE, 'a butterfly has no barrel'],
  ['    kind: barrel\n    barrelDiameter: 47 mm\n', PLATE.replace(SHAFT, ''), 'hardly wider'],
  ['    kind: flap\n', PLATE, 'slide'],
])('%s is refused', (lines, text, words) => {
  expect(() => kind(lines, text)).toThrow(words);
});

describe.each([
  ['', PLATE, 'plate'],
  ['    kind: slide\n', PLATE.replace(SHAFT, ''), 'slide'],
  ['    kind: barrel\n', PLATE.replace(SHAFT, ''), 'barrel'],
])('shut it is told by its name:%s', (lines, text, noun) => {
  test('in the file of the engine', () => {
    const shut = `${lines}    angle: 7 deg\n`;
    expect(() => kind(shut, text)).toThrow(`the ${noun} is shut`);
  });

  test('where a section asks for openings', () => {
    const asked = `${text}\nmeter: { angles: [7 deg, 20 deg] }\n`;
    expect(() => kind(lines, asked)).toThrow(`the ${noun} is shut`);
  });

  test('in readings', () => {
    const read = () =>
      readBodyReadings('speed_rpm,plate_deg,cylinder,vacuum_kPa\n1000,8,1,50\n', 'bodies.csv', {
        ...{ cylinders: 4, throttle: kind(lines, text) },
      });
    expect(read).toThrow(`the ${noun} is shut`);
    expect(read).toThrow(`this ${noun} seals at 8 deg`);
  });
});
