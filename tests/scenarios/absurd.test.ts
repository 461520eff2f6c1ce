/**
 * Engines that no one builds but that a file can hold. Each point either gives figures, settled or
 * marked as not settled, or says which duct and cell failed, and when.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { isFailure, type PointOutcome, readScenario, runJob } from '../../sim/index.ts';

const HILL = readFileSync('scenarios/hill-climb.yaml', 'utf8');
const SINGLE = readFileSync('scenarios/sprint-single.yaml', 'utf8').replace(/numerics:[\s\S]*/, '');

type Edit = [from: string | RegExp, to: string];

/** The engine of a demo scenario with pieces of its text replaced; each piece must be there. */
function engineOf(text: string, edits: Edit[]) {
  const edited = edits.reduce((whole, [from, to]) => {
    const next = whole.replace(from, to);
    expect(next, `${from} is not in the scenario`).not.toBe(whole);
    return next;
  }, text);
  return readScenario(edited, 'absurd.yaml').engine;
}

const COARSE = '\nnumerics:\n  intakeCell: 15 mm\n  exhaustCell: 40 mm\n';

const ABSURD: { name: string; base: string; edits: Edit[]; speeds: number[] }[] = [
  {
    name: 'a tenth of a litre at 18,000 rpm',
    base: SINGLE,
    edits: [
      ['bore: 77 mm', 'bore: 55 mm'],
      ['stroke: 53.6 mm', 'stroke: 42 mm'],
      ['rod: 4.1 in', 'rod: 80 mm'],
      ['headDiameter: 31 mm', 'headDiameter: 22 mm'],
      ['headDiameter: 25.5 mm', 'headDiameter: 19 mm'],
      ['to: 13000 rpm', 'to: 18000 rpm'],
    ],
    speeds: [18_000],
  },
  {
    name: 'trumpets of 900 mm',
    base: HILL,
    edits: [['length: 90 mm', 'length: 900 mm']],
    speeds: [3000, 8600],
  },
  {
    name: 'an exhaust of 30 mm',
    base: HILL,
    edits: [
      ['diameter: 41 mm #', 'diameter: 30 mm #'],
      ['diameter: 60 mm #', 'diameter: 30 mm #'],
    ],
    speeds: [8600],
  },
  {
    name: 'trumpets no longer than their flare',
    base: HILL,
    edits: [
      ['length: 90 mm', 'length: 18 mm'],
      ['from: 60 mm', 'from: 20 mm'],
    ],
    speeds: [7000],
  },
  {
    name: 'trumpets of 20 mm on a body of 45 mm',
    base: HILL,
    edits: [['diameter: 45 mm # vernier, inside, below the flare', 'diameter: 20 mm']],
    speeds: [8600],
  },
  {
    name: 'a plate nearly shut',
    base: HILL,
    edits: [['closedAngle: 8 deg', 'angle: 10 deg\n    closedAngle: 8 deg']],
    speeds: [6000],
  },
  {
    name: 'an idle of 500 rpm',
    base: SINGLE,
    edits: [['from: 6000 rpm', 'from: 500 rpm']],
    speeds: [500],
  },
  {
    name: 'a tonne of boost',
    base: HILL,
    edits: [['intake:', 'intake:\n  feed:\n    pressure: 5 bar\n    temperature: 120 degC']],
    speeds: [7000],
  },
  {
    name: 'a compression of 25 on top of an icy mountain',
    base: HILL,
    edits: [
      ['compressionRatio: 12.4', 'compressionRatio: 25'],
      ['pressure: 985 mbar', 'pressure: 500 mbar'],
      ['temperature: 20 degC #', 'temperature: -50 degC #'],
    ],
    speeds: [3000, 8600],
  },
];

function expectPlain(outcome: PointOutcome): void {
  if (isFailure(outcome)) {
    expect(outcome.failure).toMatch(
      /^non-physical state in "\w+" cell \d+ of \d+ at t = \d+\.\d+ ms \(crank \d+\.\d deg\): /,
    );
    return;
  }
  const { volumetricEfficiency, pressureAtClosing, chargeTemperature, residualFraction } = outcome;
  expect(volumetricEfficiency).toBeGreaterThan(0);
  expect(volumetricEfficiency).toBeLessThan(10);
  expect(pressureAtClosing).toBeGreaterThan(1e3);
  expect(chargeTemperature).toBeGreaterThan(150);
  expect(chargeTemperature).toBeLessThan(1500);
  expect(residualFraction).toBeGreaterThanOrEqual(0);
  expect(residualFraction).toBeLessThan(1);
  expect(outcome.audit.massError).toBeLessThan(1e-9);
  expect(outcome.audit.energyError).toBeLessThan(1e-6);
}

describe.each(ABSURD)('$name', ({ base, edits, speeds }) => {
  test.each(speeds)('%i rpm', (speed) => {
    const outcome = runJob({ engine: engineOf(base + COARSE, edits), speed });
    expectPlain(outcome);
  });
});

test('a point that fails names duct, cell, time and crank angle', () => {
  const engine = engineOf(HILL, []);
  const numerics = { ...engine.numerics, courant: 30, intakeCell: 0.02, exhaustCell: 0.04 };
  const outcome = runJob({ engine: { ...engine, numerics }, speed: 7000 });
  expect(isFailure(outcome)).toBe(true);
  expectPlain(outcome);
});
