/** An engine begun from a few figures: what comes out can be read, says what is assumed, and keeps what is given. */
import { expect, it } from 'vitest';
import { OWN_FIGURES, ownEngine } from '../../sim/scenario/ownEngine.ts';
import { readScenario } from '../../sim/scenario/read.ts';
import { FOUR } from '../ownFigures.ts';

const scenarioOf = (texts: Record<string, string>) => {
  const made = ownEngine('Mine', texts);
  if ('issues' in made) throw new Error(JSON.stringify(made.issues));
  return { text: made.text, scenario: readScenario(made.text, 'own.yaml') };
};

it('keeps what is given, by path, and marks it; the rest is assumed with its doubt', () => {
  const { text, scenario } = scenarioOf(FOUR);
  const { cylinder, intake, exhaust } = scenario.engine;
  expect(cylinder.count).toBe(4);
  expect(cylinder.bore).toBeCloseTo(0.086, 12);
  expect(intake.trumpet.length).toBeCloseTo(0.06, 12);
  expect(exhaust.primary.length).toBeCloseTo(0.8, 12);
  expect(scenario.target).toMatchObject({ from: 5000, to: 7000 });
  expect(text.match(/# yours/g)).toHaveLength(OWN_FIGURES.length);
  for (const line of text.split('\n').filter((one) => one.includes('+-'))) {
    expect(line).toContain('# assumed');
  }
  // By hand: 1.7 times 86 mm; 0.93 times 35 mm, two of them, 0.9 of their common bore.
  expect(cylinder.rodLength).toBeCloseTo(0.146, 12);
  expect(intake.port.innerDiameter).toBeCloseTo(0.0415, 12);
  expect(scenario.spreads.map(({ path }) => path)).toContain('engine.rod');
});

it.each(Array.from({ length: 12 }, (_, i) => i + 1))('%i cylinders make an engine', (cylinders) => {
  const { text, scenario } = scenarioOf({ ...FOUR, 'engine.cylinders': String(cylinders) });
  expect(scenario.engine.cylinder.count).toBe(cylinders);
  expect(cylinders % Number(/ joined: (\d+)/.exec(text)?.[1] ?? 1)).toBe(0);
});

it('speaks inches where the trumpet is in inches', () => {
  const { text, scenario } = scenarioOf({ ...FOUR, 'intake.trumpet.length': '2.5 in' });
  expect(scenario.lengthUnit).toBe('in');
  expect(text).toContain('diameter: 1.78 in +- 0.04 in');
  expect(scenario.sweep.lengths.length).toBeGreaterThan(10);
});

it('takes lengths without a unit as inches where that is said, fractions too, and leaves all else', () => {
  const texts: Record<string, string> = {
    ...FOUR,
    'engine.bore': '3 3/8',
    'engine.stroke': '86 mm',
  };
  const lengths = Object.fromEntries(
    OWN_FIGURES.filter(({ unit }) => unit === 'mm').map(({ path }) => [
      path,
      /[a-z/]/.test(texts[path]!) ? texts[path]! : String(Number(texts[path]) / 25.4),
    ]),
  );
  const made = ownEngine('Mine', { ...texts, ...lengths }, 'in');
  if ('issues' in made) throw new Error(JSON.stringify(made.issues));
  const { engine, lengthUnit } = readScenario(made.text, 'own.yaml');
  expect(lengthUnit).toBe('in');
  expect(engine.cylinder.bore).toBeCloseTo(3.375 * 0.0254, 12);
  expect(engine.cylinder.stroke).toBeCloseTo(0.086, 12);
  expect(engine.intake.trumpet.length).toBeCloseTo(0.06, 12);
});

it('tells at its path what is missing, and what is no figure', () => {
  const made = ownEngine('Mine', { ...FOUR, 'engine.bore': '', 'engine.stroke': 'long' });
  const issues = 'issues' in made ? made.issues : [];
  expect(issues.map(({ path, message }) => `${path} ${message}`)).toEqual([
    'engine.bore is missing',
    expect.stringContaining('engine.stroke'),
  ]);
});

it('tries lengths beyond one that is fitted, however long', () => {
  const { scenario } = scenarioOf({ ...FOUR, 'intake.trumpet.length': '420 mm' });
  expect(Math.max(...scenario.sweep.lengths)).toBeGreaterThan(0.42);
});
