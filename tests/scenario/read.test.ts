/** What a file means: defaults, warnings, and engines that are absurd but valid. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { mouthInertia } from '../../sim/engine/intakeDucts.ts';
import { readScenario } from '../../sim/scenario/read.ts';

const GOOD = readFileSync('scenarios/hill-climb.yaml', 'utf8');

function edited(...edits: [from: string | RegExp, to: string][]) {
  const text = edits.reduce((whole, [from, to]) => {
    const next = whole.replace(from, to);
    if (next === whole) throw new Error(`nothing to replace: ${from}`);
    return next;
  }, GOOD);
  return readScenario(text, 'edited.yaml');
}

const defaultOf = (scenario: ReturnType<typeof readScenario>, path: string) =>
  scenario.defaultsUsed.find((used) => used.path === path);

describe('defaults', () => {
  test('a rounded mouth takes its entry loss from the table', () => {
    // Idelchik, diagram 3-3: K = 0.12 halfway between r/D 0.08 (0.15) and 0.12 (0.09).
    const scenario = edited(['radius: 12 mm', 'radius: 4.5 mm']);
    expect(scenario.engine.intake.trumpet.bellmouth.entryLoss).toBeCloseTo(0.12, 10);
    expect(defaultOf(scenario, 'intake.trumpet.bellmouth.entryLoss')).toMatchObject({
      value: '0.12',
      why: expect.stringContaining('Idelchik'),
    });
  });

  test('of an ellipse the smaller half-axis counts', () => {
    const scenario = edited(['radius: 12 mm', 'depth: 20 mm\n      overhang: 4.5 mm']);
    const { bellmouth } = scenario.engine.intake.trumpet;
    expect(bellmouth).toMatchObject({ depth: 0.02, overhang: 0.0045 });
    expect(bellmouth.entryLoss).toBeCloseTo(0.12, 10);
  });

  test('without a bellmouth the mouth is a plain cut end, and the list says so', () => {
    const scenario = edited([/ {4}bellmouth:\n.*\n/, '']);
    const { bellmouth } = scenario.engine.intake.trumpet;
    expect(bellmouth).toMatchObject({ depth: 0, overhang: 0 });
    // Idelchik, diagram 3-1: a wall of 1.5 mm on 45 mm lies between t/D 0.030 (0.61) and 0.040 (0.54).
    expect(bellmouth.entryLoss).toBeGreaterThan(0.54);
    expect(bellmouth.entryLoss).toBeLessThan(0.61);
    expect(defaultOf(scenario, 'intake.trumpet.bellmouth')?.value).toBe('plain cut end');
  });

  test('the end correction of a plain end is that of an unflanged pipe', () => {
    // Levine & Schwinger 1948, low-frequency limit of their integral: 0.6127.
    const { engine } = edited([/ {4}bellmouth:\n.*\n/, '']);
    expect(engine.intake.trumpet.bellmouth.endCorrection).toBeCloseTo(0.6127, 4);
  });

  test('the end correction of a flare gives it the inertia of potential flow', () => {
    // 12 mm round on 45 mm: 23.4 mm of bore, tests/exact/mouthLength.test.ts.
    expect(Math.abs(mouthInertia(edited().engine.intake) - 23.4e-3)).toBeLessThan(0.3e-3);
  });

  test('a lift by timing is as full as stated, or as usual', () => {
    const stated = edited(['maximum: 10.8 mm', 'maximum: 10.8 mm\n      fullness: 0.53']);
    expect(stated.engine.intake.valve.lift).toMatchObject({ fullness: 0.53 });
    expect(defaultOf(stated, 'intake.valves.lift.fullness')).toBeUndefined();
    expect(defaultOf(stated, 'exhaust.valves.lift.fullness')?.value).toBe('0.556418');
  });

  test('a lift by table has a fullness of its own', () => {
    const table = GOOD.match(/ {6}open: 28 deg.*\n.*\n.*\n.*\n/)![0];
    const rows = ['300', '400', '460', '520', '620'].map((at, i) => {
      return `        - { angle: ${at} deg, lift: ${[0, 7, 10.8, 7, 0][i]} mm }\n`;
    });
    const by = (more: string) => () => edited([table, `      table:\n${rows.join('')}${more}`]);
    expect(by('')().engine.intake.valve.lift).not.toHaveProperty('fullness');
    expect(defaultOf(by('')(), 'intake.valves.lift.fullness')).toBeUndefined();
    expect(by('      fullness: 0.53\n')).toThrow(/the table says how full the lift is/);
  });

  test('the loss of the open plate is its own drag and Borda-Carnot past the shaft', () => {
    // Heywood (1988) eq. 7.18: 0.772061 of the bore is free at d/D = 0.18, so K = (1/0.772061 - 1)^2;
    // 0.2 for the plate: Weisbach's valves near wide open, from memory.
    const scenario = edited(['    shaftDiameter: 8 mm # vernier\n', '']);
    const { openLoss, shaftDiameter } = scenario.engine.intake.throttle;
    expect(shaftDiameter).toBeCloseTo(0.18 * 0.045, 12);
    expect(openLoss).toBeCloseTo(0.2 + (1 / 0.772061 - 1) ** 2, 5);
  });

  test('typical coefficients are those of the kind of valve', () => {
    const scenario = edited(
      [/ {4}flowBench: # the head[\s\S]*?(?=\nexhaust)/, ''],
      [/ {4}flowBench: # the same[\s\S]*?(?= {2}port)/, ''],
    );
    const [intake, exhaust] = (['intake', 'exhaust'] as const).map((kind) => {
      const { flow } = scenario.engine[kind].valve;
      const used = defaultOf(scenario, `${kind}.valves.flowCoefficient`);
      return { used, middle: flow.kind === 'coefficient' ? flow.coefficient[2] : undefined };
    });
    // Heywood (1988) figs. 6-14 and 6-21, both from memory.
    expect(intake).toMatchObject({ middle: 0.62, used: { why: expect.stringContaining('6-14') } });
    expect(exhaust).toMatchObject({ middle: 0.68, used: { why: expect.stringContaining('6-21') } });
  });

  test('a value given is not listed', () => {
    const scenario = edited();
    expect(defaultOf(scenario, 'fuel.lambda')).toBeUndefined();
    expect(defaultOf(scenario, 'fuel.burnDuration')?.why).toContain('no source');
  });

  test('a file that leaves out all it may still reads, with every default listed', () => {
    const scenario = edited(
      [/ambient:[\s\S]*?(?=engine:)/, ''],
      [/fuel:[\s\S]*?(?=speeds:)/, ''],
      [/ {4}flowBench: # the head[\s\S]*?(?=\nexhaust)/, ''],
    );
    const paths = scenario.defaultsUsed.map(({ path }) => path);
    for (const path of ['ambient.pressure', 'fuel.name', 'intake.valves.flowCoefficient']) {
      expect(paths).toContain(path);
    }
    expect(new Set(paths).size).toBe(paths.length);
    expect(scenario.engine.ambient).toEqual({
      pressure: 101325,
      temperature: 293.15,
      relativeHumidity: 0.5,
    });
    expect(scenario.engine.intake.valve.flow.kind).toBe('coefficient');
  });
});

describe('warnings', () => {
  test.each<[string, string | RegExp, string, string, string]>([
    ['a bore of 140 mm', 'bore: 86 mm', 'bore: 140 mm', 'engine.bore', 'unusual'],
    ['a rod of 200 mm and more', 'rod: 143 mm', 'rod: 240 mm', 'engine.rod', 'rod over stroke'],
    ['lean running', 'lambda: 0.88', 'lambda: 1.3', 'fuel.lambda', 'unusual'],
    ['a step at the body', 'bore: 45 mm', 'bore: 38 mm', 'intake.trumpet', 'steps at'],
    [
      'a bench that stops short',
      /.*lift: (8|9|10|11) mm, flow: 2.*\n/g,
      '',
      'intake.valves.flowBench.points',
      'stops short',
    ],
    [
      'crowded valves',
      'headDiameter: 35 mm',
      'headDiameter: 44 mm',
      'intake.valves.headDiameter',
      'is rare',
    ],
    ['a fast piston', 'to: 8600 rpm', 'to: 10200 rpm', 'speeds', 'mean piston speed'],
    [
      'much lift',
      'maximum: 10.8 mm',
      'maximum: 15 mm',
      'intake.valves.lift.maximum',
      'few valves gain',
    ],
  ])('%s', (_, from, to, path, says) => {
    const { warnings } = edited([from, to]);
    expect(warnings).toContainEqual({ path, message: expect.stringContaining(says) });
  });
});

describe('absurd but valid engines read, with warnings or without', () => {
  test('a tenth of a litre at 18,000 rpm', () => {
    const small = edited(
      ['bore: 86 mm', 'bore: 52 mm'],
      ['stroke: 86 mm', 'stroke: 47 mm'],
      ['headDiameter: 35 mm', 'headDiameter: 20 mm'],
      ['seatDiameter: 32.5 mm', 'seatDiameter: 18.5 mm'],
      ['headDiameter: 30 mm', 'headDiameter: 17 mm'],
      ['seatDiameter: 27.5 mm', 'seatDiameter: 15.5 mm'],
      ['maximum: 10.8 mm', 'maximum: 6 mm'],
      ['maximum: 10.2 mm', 'maximum: 6 mm'],
      [/ {4}flowBench: # the head[\s\S]*?(?=\nexhaust)/, ''],
      [/ {4}flowBench: # the same[\s\S]*?(?= {2}port)/, ''],
      [
        /speeds:[\s\S]*?(?=sweep)/,
        'speeds:\n  from: 8000 rpm\n  to: 18000 rpm\n  step: 1000 rpm\n\n',
      ],
      ['from: 5400 rpm', 'from: 12000 rpm'],
      ['to: 7400 rpm', 'to: 17000 rpm'],
    );
    expect(small.speeds.at(-1)).toBe(18000);
    expect(small.warnings.map(({ path }) => path)).toContain('speeds');
  });

  test('trumpets of 900 mm', () => {
    const long = edited(['to: 300 mm', 'to: 900 mm'], ['step: 20 mm', 'step: 40 mm']);
    expect(long.sweep.lengths.at(-1)).toBe(0.9);
  });

  test('an exhaust of 30 mm', () => {
    const narrow = edited(
      ['diameter: 41 mm', 'diameter: 30 mm'],
      ['diameter: 60 mm', 'diameter: 30 mm'],
    );
    expect(narrow.engine.exhaust.primary.outerDiameter).toBe(0.03);
  });
});
