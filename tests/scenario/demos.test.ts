/** Every demo scenario reads, without warning, to what its file says. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { USUAL_FULLNESS } from '../../sim/cylinder/valveLift.ts';
import { readScenario } from '../../sim/scenario/read.ts';

const names = readdirSync('scenarios').filter((name) => name.endsWith('.yaml'));
const text = (name: string) => readFileSync(`scenarios/${name}`, 'utf8');
const demo = (name: string) => readScenario(text(name), name);

/**
 * Lines below a section that hold a figure, but no remark on them or on a key that they stand under;
 * numbers of valves and cylinders need none.
 */
function figuresWithoutRemark(source: string): string[] {
  const above: { indent: number; remark: boolean }[] = [];
  return source.split('\n').filter((line) => {
    const indent = line.search(/\S/);
    if (indent < 0 || line.trimStart().startsWith('#')) return false;
    while (above.length > 0 && above.at(-1)!.indent >= indent) above.pop();
    const covered = line.includes(' # ') || above.some(({ remark }) => remark);
    above.push({ indent, remark: line.includes(' # ') });
    return indent > 0 && /: .*\d/.test(line) && !/count|cylinders/.test(line) && !covered;
  });
}

test('the demo scenarios are there', () => {
  expect(names).toEqual([
    'boosted-four.yaml',
    'cross-plane-eight.yaml',
    'endurance-six.yaml',
    'forest-four.yaml',
    'hill-climb.yaml',
    'road-four.yaml',
    'sprint-single.yaml',
    'uneven-twin.yaml',
  ]);
});

describe.each(names)('%s', (name) => {
  const scenario = demo(name);

  test('reads without warning', () => {
    expect(scenario.warnings).toEqual([]);
  });

  test('holds finite numbers only', () => {
    const strange: string[] = [];
    const walk = (node: unknown, path: string): void => {
      if (typeof node === 'number' && !Number.isFinite(node)) strange.push(path);
      if (node === null || node === undefined) strange.push(path);
      if (node instanceof Object) {
        for (const [key, child] of Object.entries(node)) walk(child, `${path}.${key}`);
      }
    };
    walk(scenario, '');
    expect(strange).toEqual([]);
  });

  test('goes to a worker whole', () => {
    expect(structuredClone(scenario)).toEqual(scenario);
  });

  test('asks for 100 to 400 points, rising', () => {
    const { speeds, sweep } = scenario;
    const points = speeds.length * sweep.lengths.length;
    expect(points).toBeGreaterThanOrEqual(100);
    expect(points).toBeLessThanOrEqual(400);
    for (const row of [speeds, sweep.lengths]) {
      expect(row).toEqual([...row].sort((a, b) => a - b));
      expect(new Set(row).size).toBe(row.length);
    }
  });

  test('gives an origin for every default, and its value in words', () => {
    for (const { path, value, why } of scenario.defaultsUsed) {
      expect(path).not.toBe('');
      expect(value).not.toBe('');
      expect(why.length).toBeGreaterThan(5);
    }
  });

  test('says beside every figure of the engine where a builder finds it', () => {
    expect(figuresWithoutRemark(text(name))).toEqual([]);
  });
});

test('hill-climb: figures of the file in SI and crank degrees', () => {
  const { engine, speeds, sweep, target } = demo('hill-climb.yaml');
  expect(engine.cylinder).toMatchObject({ count: 4, bore: 0.086, stroke: 0.086, rodLength: 0.143 });
  expect(engine.ambient).toEqual({ pressure: 98500, temperature: 293.15, relativeHumidity: 0.55 });
  expect(engine.intake.valve.lift).toEqual({
    kind: 'timing',
    open: 332,
    close: 600,
    checkLift: 0.001,
    maximum: 0.0108,
    fullness: USUAL_FULLNESS,
  });
  expect(engine.exhaust.valve.lift).toMatchObject({ open: 122, close: 386 });
  expect(engine.intake.runner.length).toBe(0);
  expect(engine.exhaust).toMatchObject({ joined: 4, tail: { length: 1.4, outerDiameter: 0.06 } });
  expect(speeds).toHaveLength(15);
  expect(speeds[14]).toBe(8600);
  expect(sweep.lengths).toHaveLength(13);
  expect(sweep.lengths[2]).toBe(0.1);
  expect(target).toEqual({ from: 5400, to: 7400 });
});

test('sprint-single: inches, lobe centres and a single pipe', () => {
  const { engine } = demo('sprint-single.yaml');
  expect(engine.intake.trumpet.length).toBe(0.08636);
  expect(engine.intake.valve.lift).toMatchObject({ open: 332, close: 596 });
  expect(engine.exhaust.valve.lift).toMatchObject({ open: 126, close: 382 });
  expect(engine.exhaust.joined).toBe(1);
  expect(engine.exhaust.tail).toBeUndefined();
  const volume = (Math.PI / 4) * engine.cylinder.bore ** 2 * engine.cylinder.stroke;
  expect(volume).toBeLessThan(250e-6);
  expect(volume).toBeGreaterThan(245e-6);
});

test('endurance-six: lift table, spread and weights', () => {
  const { engine, spreads, target } = demo('endurance-six.yaml');
  const { lift } = engine.intake.valve;
  if (lift.kind !== 'table') throw new Error('a table was expected');
  expect(lift.angle[0]).toBe(300);
  expect(Math.max(...lift.lift)).toBe(0.01119);
  expect(spreads).toEqual([
    { path: 'exhaust.valves.lift.open', value: 124, spread: 2 },
    { path: 'exhaust.valves.lift.close', value: 382, spread: 2 },
  ]);
  expect(target.weights).toHaveLength(4);
  expect(engine.exhaust.joined).toBe(3);
});

test('boosted-four: gauge pressure counts from ambient', () => {
  const { engine } = demo('boosted-four.yaml');
  expect(engine.intake.feed.pressure).toBe(171_000);
  expect(engine.intake.feed.temperature).toBeCloseTo(321.15, 10);
  expect(engine.ambient.pressure).toBe(101_000);
});
