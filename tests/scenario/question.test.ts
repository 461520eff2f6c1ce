/** Sections that ask the question: target, fit, keys to vary, air by altitude. */
import { describe, expect, it } from 'vitest';
import { ScenarioError } from '../../sim/errors.ts';
import { readScenario } from '../../sim/scenario/read.ts';
import { variantChanges, variantEngines } from '../../sim/scenario/variants.ts';
import { demoText } from '../toy.ts';

const HILL = demoText('hill-climb');
const BAND = '  from: 5400 rpm\n  to: 7400 rpm\n';
const read = (text: string) => readScenario(text, 'hill-climb.yaml');

/** The hill-climb file with something else where the band stands. */
const withTarget = (target: string) => HILL.replace(BAND, target);
const withSection = (section: string) => `${HILL}\n${section}`;

function issuesOf(text: string): { path: string; message: string }[] {
  try {
    read(text);
  } catch (error) {
    if (error instanceof ScenarioError) return [...error.issues];
    throw error;
  }
  return [];
}

describe('speeds', () => {
  const withSpeeds = (speeds: string) => read(HILL.replace(/^speeds:[\s\S]*?(?=^sweep)/m, speeds));

  it('are a range, whose step is the widest and may be left out', () => {
    const { speeds, refine } = withSpeeds('speeds:\n  from: 3000 rpm\n  to: 8600 rpm\n\n');
    expect(refine).toBe(true);
    expect(speeds).toEqual(Array.from({ length: 15 }, (_, i) => 3000 + 400 * i));
    const odd = withSpeeds('speeds:\n  from: 3030 rpm\n  to: 8611 rpm\n\n').speeds;
    expect([odd[0], odd.at(-1)]).toEqual([3030, 8611]);
    expect(odd.length).toBeGreaterThan(11);
    expect(odd.length).toBeLessThan(18);
  });

  it('are taken as they are where they are a list', () => {
    const { speeds, refine } = withSpeeds('speeds:\n  at: [5400 rpm, 6100 rpm, 7400 rpm]\n\n');
    expect(refine).toBe(false);
    expect(speeds).toEqual([5400, 6100, 7400]);
  });
});

it('lengths are told in the unit that the file gives the trumpet in', () => {
  const unitOf = (text: string) =>
    read(HILL.replace('length: 90 mm # rule: rim', `length: ${text} # rule: rim`)).lengthUnit;
  expect(['90 mm', '9 cm', '0.09 m'].map(unitOf)).toEqual(['mm', 'mm', 'mm']);
  expect(['3.5 in', '3.5in', '3.5 inch', '3 1/2 in', '3.5 in +- 0.1 in'].map(unitOf)).toEqual(
    Array(5).fill('in'),
  );
});

describe('target', () => {
  it('takes several bands with weights', () => {
    const { target } = read(
      withTarget(
        '  bands:\n    - { from: 3400 rpm, to: 4600 rpm }\n    - { from: 5800 rpm, to: 7400 rpm, weight: 3 }\n',
      ),
    );
    expect(target).toEqual({
      from: 3400,
      to: 7400,
      bands: [
        { from: 3400, to: 4600, weight: 1 },
        { from: 5800, to: 7400, weight: 3 },
      ],
    });
  });

  it('takes the bands from the gearbox', () => {
    const { target } = read(
      withTarget('  gearChange:\n    limit: 8000 rpm\n    ratios: [2, 1.5, 1.2]\n'),
    );
    expect(target.bands?.map(({ from, to }) => [from, to])).toEqual([
      [6000, 8000],
      [6400, 8000],
    ]);
    expect([target.from, target.to]).toEqual([6000, 8000]);
  });

  it('takes floors and the score', () => {
    const floors =
      '  score: indicated-torque\n  floors:\n    - { speed: 4000 rpm, leastTorque: 150 Nm }\n    - { speed: 4200 rpm, mostLoss: 3 % }\n';
    const { target } = read(withTarget(BAND + floors));
    expect(target.score).toBe('indicated-torque');
    expect(target.floors).toEqual([
      { speed: 4000, least: 150 },
      { speed: 4200, mostLossPercent: 3 },
    ]);
  });

  it.each([
    ['', 'target', 'must be'],
    ['  score: indicated-torque\n', 'target', 'the band is missing'],
    ['  from: 5400 rpm\n', 'target', 'to is missing'],
    [
      `${BAND}  gearChange: { limit: 8000 rpm, ratios: [2, 1.5] }\n`,
      'target.gearChange',
      'given twice',
    ],
    ['  gearChange: { limit: 8000 rpm, ratios: [1.5, 2] }\n', 'target.gearChange.ratios.1', 'fall'],
    ['  gearChange: { limit: 8000 rpm, ratios: [4, 1.2] }\n', 'target.gearChange', 'outside'],
    ['  bands:\n    - { from: 7000 rpm, to: 5800 rpm }\n', 'target.bands.0.to', 'empty'],
    [`${BAND}  floors:\n    - { speed: 4000 rpm }\n`, 'target.floors.0', 'no limit'],
    [
      `${BAND}  floors:\n    - { speed: 4000 rpm, leastTorque: 90 Nm }\n`,
      'target.floors.0.leastTorque',
      'not of the figure',
    ],
    [
      `${BAND}  floors:\n    - { speed: 900 rpm, mostLoss: 2 % }\n`,
      'target.floors.0.speed',
      'outside',
    ],
  ])('refuses %j', (text, path, says) => {
    const issues = issuesOf(withTarget(text));
    expect(issues.some((one) => one.path === path && one.message.includes(says))).toBe(true);
  });
});

describe('fit', () => {
  it('leaves out what does not fit and tries the longest that does', () => {
    const scenario = read(withSection('fit:\n  room: 215 mm\n  shelf: [100 mm, 150 mm]\n'));
    // 215 mm less the default clearance of 10 mm: lengths of 60 to 200 mm stay, 205 mm is added.
    expect(scenario.sweep.lengths.at(-2)).toBe(0.2);
    expect(scenario.sweep.lengths.at(-1)).toBe(0.205);
    expect(scenario.engine.intake.facingWall).toBe(0.215);
    expect(scenario.fit).toEqual({
      longest: 0.205,
      shelf: [0.1, 0.15],
      cut: true,
      tolerance: 0.0005,
      withinPercent: 1,
    });
    expect(scenario.warnings.some((one) => one.message.includes('205 mm'))).toBe(true);
    expect(scenario.defaultsUsed.map((one) => one.path)).toContain('fit.clearance');
  });

  it('leaves the mouth free where no room is given', () => {
    const scenario = read(withSection('fit:\n  shelf: [100 mm]\n  cut: no\n  within: 2 %\n'));
    expect(scenario.engine.intake.facingWall).toBeUndefined();
    expect(scenario.fit).toMatchObject({ cut: false, withinPercent: 2 });
    expect(scenario.fit?.longest).toBeUndefined();
  });

  it.each([
    ['fit:\n  room: 92 mm\n', 'fit.room', 'reach the wall'],
    ['fit:\n  longest: 50 mm\n', 'fit', 'none of the lengths'],
    ['fit:\n  shelf: [150 mm, 100 mm]\n', 'fit.shelf.1', 'does not rise'],
  ])('refuses %j', (text, path, says) => {
    const issues = issuesOf(withSection(text));
    expect(issues.some((one) => one.path === path && one.message.includes(says))).toBe(true);
  });
});

describe('keys to vary', () => {
  const vary = (rows: string) =>
    HILL.replace('    step: 20 mm\n', `    step: 20 mm\n  vary:\n${rows}`);

  it('become axes with values in SI', () => {
    const { sweep } = read(
      vary(
        '    - { key: intake.trumpet.diameter, values: 42 mm .. 48 mm / 2 mm }\n    - { key: intake.valves.lift.close, values: "56 deg ABDC, 64 deg ABDC" }\n',
      ),
    );
    expect(sweep.vary?.map((axis) => axis.values)).toEqual([
      [0.042, 0.044, 0.046, 0.048],
      [596, 604],
    ]);
  });

  it('make one engine a combination, the last key running fastest', () => {
    const axes = read(
      vary(
        '    - { key: intake.trumpet.bellmouth.radius, values: 6 mm .. 12 mm / 6 mm }\n    - { key: ambient.temperature, values: "8 degC, 32 degC" }\n',
      ),
    ).sweep.vary!;
    expect(variantChanges(axes)[1]).toEqual([
      { path: 'intake.trumpet.bellmouth.radius', text: '6 mm' },
      { path: 'ambient.temperature', text: '32 degC' },
    ]);
    const engines = variantEngines(HILL, 'hill-climb.yaml', axes);
    expect(engines.map(({ intake }) => intake.trumpet.bellmouth.depth)).toEqual([
      0.006, 0.006, 0.012, 0.012,
    ]);
    // What follows by rule follows: entry loss from the radius, wall and feed from the air.
    const [cold, hot] = engines.slice(2);
    expect(engines[0]!.intake.trumpet.bellmouth.entryLoss).toBeGreaterThan(
      cold!.intake.trumpet.bellmouth.entryLoss,
    );
    expect(hot!.intake.feed.temperature).toBe(305.15);
    expect(hot!.intake.trumpet.wallTemperature).toBe(305.15);
  });

  it.each([
    ['    - { key: intake.trumpet.bore, values: 42 mm }\n', 'sweep.vary.0.key', 'no key'],
    ['    - { key: title, values: a }\n', 'sweep.vary.0.key', 'no key'],
    ['    - { key: intake.trumpet.diameter, values: "42" }\n', 'sweep.vary.0.values', 'no unit'],
    [
      '    - { key: intake.trumpet.diameter, values: 42 mm .. 47 mm / 2 mm }\n',
      'sweep.vary.0.values',
      'whole number of steps',
    ],
    [
      '    - { key: intake.trumpet.diameter, values: 2 mm }\n',
      'sweep.vary.0.values',
      'out of range',
    ],
    [
      '    - { key: engine.bore, values: 86 mm }\n    - { key: engine.bore, values: 87 mm }\n',
      'sweep.vary.1.key',
      'varied twice',
    ],
  ])('are refused: %j', (rows, path, says) => {
    const issues = issuesOf(vary(rows));
    expect(issues.some((one) => one.path === path && one.message.includes(says))).toBe(true);
  });

  it('break the rules of the file in the words of the file', () => {
    const axes = read(vary('    - { key: engine.rod, values: "40 mm, 143 mm" }\n')).sweep.vary!;
    expect(() => variantEngines(HILL, 'hill-climb.yaml', axes)).toThrow(/connecting rod/);
  });
});

describe('air', () => {
  const air = (text: string) =>
    HILL.replace(/ {2}pressure: 985 mbar.*\n {2}temperature: .*\n/, text);

  it('comes from the altitude', () => {
    // U.S. Standard Atmosphere 1976, table I: 1000 m geometric, 898.76 mbar and 281.651 K.
    const { ambient } = read(air('  altitude: 1000 m\n')).engine;
    expect(Math.abs(ambient.pressure / 89876 - 1)).toBeLessThan(1e-3);
    expect(Math.abs(ambient.temperature / 281.651 - 1)).toBeLessThan(1e-3);
  });

  it('takes the thermometer where there is one', () => {
    const scenario = read(air('  altitude: 2000 ft\n  temperature: 30 degC\n'));
    expect(scenario.engine.ambient.temperature).toBe(303.15);
    expect(scenario.defaultsUsed.map((one) => one.path)).toContain('ambient.pressure');
    expect(scenario.defaultsUsed.map((one) => one.path)).not.toContain('ambient.temperature');
  });

  it('is known by barometer or altitude, not both', () => {
    const issues = issuesOf(air('  altitude: 600 m\n  pressure: 985 mbar\n'));
    expect(issues.map((one) => one.path)).toEqual(['ambient.altitude']);
  });
});
