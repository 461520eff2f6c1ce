/** What is derived from the leaves: facts, the form, conditions. */
import { expect, it } from 'vitest';
import { leavesBelow } from '../../sim/scenario/keyPath.ts';
import { FIGURE_GROUPS, isCondition, scenarioKeys } from '../../sim/scenario/schema.ts';
import { readDemo } from '../toy.ts';

const factsOf = (name: string) =>
  Object.fromEntries(
    readDemo(name).facts.flatMap(({ heading, facts }) =>
      facts.map(({ label, text }) => [`${heading}: ${label}`, text]),
    ),
  );

it('facts tell what was understood beside what was written', () => {
  const single = factsOf('sprint-single');
  expect(single['Ambient: temperature']).toBe('17.778 degC (64 degF)');
  expect(single['Engine: swept volume']).toBe('250 cc together');
  // 104 deg after top is 76 deg before bottom dead centre.
  expect(single['Intake: valves lift']).toContain('centre 76 deg BBDC (104 deg ATDC), duration');
  const six = factsOf('endurance-six');
  expect(six['Intake: valves lift table']).toBe(
    '33 rows, angle 60 deg BTDC to 80 deg ABDC, lift 0 mm to 11.19 mm',
  );
  expect(six['Exhaust: valves lift']).toContain('open 56 deg BBDC +- 2 deg, close');
  expect(six['Intake: feed']).toBe('ambient air');
  expect(factsOf('boosted-four')['Intake: feed']).toContain('700 mbar gauge (0.7 bar gauge)');
});

it('every number of the file is a fact, and so is every default', () => {
  const { facts, defaultsUsed } = readDemo('hill-climb');
  const words = facts.flatMap(({ facts: list }) => list.map(({ text }) => text)).join('; ');
  for (const figure of ['820 mm', '1400 mm', '12.4', '58 deg BBDC', '69.745 mbar (28 inH2O)']) {
    expect(words).toContain(figure);
  }
  for (const { path } of defaultsUsed.filter(({ path: at }) => at.includes('.'))) {
    const last = path
      .split('.')
      .at(-1)!
      .replace(/[A-Z]/g, (x) => ` ${x.toLowerCase()}`);
    const labels = facts.flatMap(({ facts: list }) => list.map(({ label }) => label)).join('; ');
    expect(`${words}; ${labels}`).toContain(last);
  }
});

it('the form takes its fields from the leaves, each in one place', () => {
  const paths = FIGURE_GROUPS.flatMap(({ fields }) => fields.map(({ path }) => path));
  expect(FIGURE_GROUPS.map(({ title }) => title)).toContain('Lengths to try');
  expect(paths).toContain('intake.valves.lift.close');
  expect(new Set(paths).size).toBe(paths.length);
  const leaves = new Set(leavesBelow(scenarioKeys).map(([path]) => path));
  expect(paths.filter((path) => !leaves.has(path))).toEqual([]);
});

it('air and mixture are conditions; pipes and cams are not', () => {
  expect(['ambient.pressure', 'ambient.altitude', 'fuel.lambda'].every(isCondition)).toBe(true);
  expect(['intake.trumpet.length', 'fuel.burn50', 'title', 'nothing'].some(isCondition)).toBe(
    false,
  );
});
