/** What is in doubt in a scenario, and engines that the doubt allows. */
import { describe, expect, it } from 'vitest';
import { doubtfulEngines, doubtfulInputs, doubtsByTrade } from '../../sim/scenario/doubt.ts';
import { demoText, readDemo } from '../toy.ts';

const HILL = demoText('hill-climb');
const inputs = (name: string) => doubtfulInputs(demoText(name), `${name}.yaml`);
const named = (list: ReturnType<typeof inputs>, path: string) =>
  list.find((input) => input.path === path);

describe('inputs in doubt', () => {
  it('take the spread of the file before that of the trade', () => {
    const six = inputs('endurance-six');
    expect(named(six, 'exhaust.valves.lift.open')).toMatchObject({ half: 2, given: true });
    const own = HILL.replace('close: 60 deg ABDC', 'close: 60 deg ABDC +- 4 deg');
    const list = doubtfulInputs(own, 'own.yaml');
    expect(named(list, 'intake.valves.lift.close')).toMatchObject({
      value: 600,
      half: 4,
      given: true,
    });
    expect(named(list, 'intake.valves.lift.open')).toMatchObject({ half: 2, given: false });
  });

  it('are those of the file alone where trade sense is not wanted', () => {
    const list = doubtfulInputs(demoText('endurance-six'), 'six.yaml', false);
    expect(list.map((input) => input.path)).toEqual([
      'exhaust.valves.lift.open',
      'exhaust.valves.lift.close',
    ]);
    expect(doubtfulInputs(HILL, 'hill.yaml', false)).toEqual([]);
  });

  it('reach defaults that were taken', () => {
    const list = inputs('hill-climb');
    expect(named(list, 'intake.trumpet.bellmouth.endCorrection')?.half).toBeCloseTo(0.05, 12);
    expect(named(list, 'exhaust.primary.wallTemperature')?.half).toBe(100);
    // 70 % of the loss by rule, 0.03.
    expect(named(list, 'intake.trumpet.bellmouth.entryLoss')?.half).toBeCloseTo(0.021, 9);
  });

  it('reach crevices and blow-by, and say halves of per cents in points', () => {
    const list = inputs('hill-climb');
    expect(named(list, 'engine.crevice')).toMatchObject({
      half: 0.005,
      text: '1.5 % +- 0.5 %',
      given: false,
    });
    expect(named(list, 'engine.blowBy')).toMatchObject({ half: 0.003, text: '0.5 % +- 0.3 %' });
    const own = HILL.replace('  cylinders: 4', '  cylinders: 4\n  blowBy: 0.2 % +- 0.1 %');
    const blowBy = named(doubtfulInputs(own, 'own.yaml'), 'engine.blowBy');
    expect(blowBy).toMatchObject({ text: '0.2 % +- 0.1 %', given: true });
    expect(blowBy!.half).toBeCloseTo(0.001, 12);
    const loss = HILL.replace('radius: 12 mm #', 'entryLoss: 4 %\n      radius: 12 mm #');
    expect(
      named(doubtfulInputs(loss, 'own.yaml'), 'intake.trumpet.bellmouth.entryLoss'),
    ).toMatchObject({
      text: '4 % +- 70 % of it',
    });
  });

  it('are in inches where the value is', () => {
    const list = inputs('sprint-single');
    expect(named(list, 'intake.port.length')).toMatchObject({ text: '3.1 in +- 0.12 in' });
    expect(named(list, 'intake.port.length')!.half).toBeCloseTo(0.003, 12);
  });

  it('reach the shape of a lift that is known by its timing alone', () => {
    expect(named(inputs('hill-climb'), 'intake.valves.lift.fullness')).toMatchObject({
      half: 0.04,
    });
    const six = inputs('endurance-six').map(({ path }) => path);
    expect(six).toContain('exhaust.valves.lift.fullness');
    expect(six).not.toContain('intake.valves.lift.fullness');
  });

  it('move all coefficients of a flow table together', () => {
    const list = inputs('sprint-single');
    expect(named(list, 'intake.valves.flowCoefficient')).toMatchObject({ half: 0.12 });
    expect(named(inputs('boosted-four'), 'intake.valves.flowCoefficient')).toMatchObject({
      half: 0.05,
    });
    expect(named(inputs('hill-climb'), 'intake.valves.flowCoefficient')).toBeUndefined();
  });

  it('leave the question alone', () => {
    for (const name of ['hill-climb', 'sprint-single', 'endurance-six', 'boosted-four']) {
      const paths = inputs(name).map((input) => input.path);
      expect(paths.filter((path) => /^(speeds|sweep|target|numerics|fit)/.test(path))).toEqual([]);
      expect(paths).not.toContain('intake.trumpet.length');
      expect(new Set(paths).size).toBe(paths.length);
    }
  });

  it('have an origin each', () => {
    for (const { half, why } of doubtsByTrade()) {
      expect(half).toMatch(/^[\d.]+( (mm|m|deg|K|mbar|%))?$/);
      expect(why.length).toBeGreaterThan(3);
    }
  });
});

describe('engines in doubt', () => {
  const count = inputs('hill-climb').length;

  it('are the engine itself in the middle, to rounding', () => {
    const [middle] = doubtfulEngines(HILL, 'hill.yaml', [Array(count).fill(0.5)]);
    const { engine } = readDemo('hill-climb');
    const flat = (node: unknown): number[] =>
      typeof node === 'number'
        ? [node]
        : node instanceof Object
          ? Object.values(node).flatMap(flat)
          : [];
    const [ours, own] = [flat(middle!.engine), flat(engine)];
    expect(ours.length).toBe(own.length);
    ours.forEach((value, i) => {
      expect(Math.abs(value - own[i]!)).toBeLessThanOrEqual(1e-5 * Math.abs(own[i]!));
    });
  });

  it('reach the ends of the spreads, and what follows by rule follows', () => {
    const list = inputs('hill-climb');
    const places = list.map(({ path }) => (path === 'ambient.temperature' ? 1 : 0.5));
    const [warm] = doubtfulEngines(HILL, 'hill.yaml', [places]);
    expect(warm!.engine.ambient.temperature).toBeCloseTo(296.15, 6);
    expect(warm!.engine.intake.feed.temperature).toBeCloseTo(296.15, 6);
    expect(warm!.at[list.findIndex(({ path }) => path === 'ambient.temperature')]).toBe(1);
  });

  it('scale a typical flow table', () => {
    const text = demoText('sprint-single');
    const list = inputs('sprint-single');
    const places = list.map(({ path }) => (path === 'intake.valves.flowCoefficient' ? 1 : 0.5));
    const [rich] = doubtfulEngines(text, 'single.yaml', [places]);
    const flow = rich!.engine.intake.valve.flow;
    const own = readDemo('sprint-single').engine.intake.valve.flow;
    if (flow.kind !== 'coefficient' || own.kind !== 'coefficient') throw new Error('no table');
    expect(flow.coefficient[2]! / own.coefficient[2]!).toBeCloseTo(1.12, 9);
  });

  it('stay within the limits of a key', () => {
    const text = HILL.replace('humidity: 55 %', 'humidity: 95 %');
    const list = doubtfulInputs(text, 'wet.yaml');
    const places = list.map(({ path }) => (path === 'ambient.humidity' ? 1 : 0.5));
    const [wet] = doubtfulEngines(text, 'wet.yaml', [places]);
    expect(wet!.engine.ambient.relativeHumidity).toBe(1);
  });

  it.each([
    ['flow: 27 L/s', 'flow: 27 L/s +- 1 L/s'],
    ['flow: 400 cc/min', 'massFlow: 5 g/s +- 0.2 g/s'],
    ['  pressure: 1005 mbar', '  altitude: 300 m +- 20 m'],
  ])('take a spread whatever its unit: %s', (from, to) => {
    const text = demoText('endurance-six').replace(from, to);
    const list = doubtfulInputs(text, 'x', false);
    expect(list).toHaveLength(3);
    const [low, high] = [0, 1].map((at) => doubtfulEngines(text, 'x', [[at, at, at]], false)[0]!);
    expect(low!.engine.exhaust.valve.lift).not.toEqual(high!.engine.exhaust.valve.lift);
  });

  it('take the weather by trade sense beside an altitude', () => {
    const text = HILL.replace('pressure: 985 mbar', 'altitude: 300 m');
    const list = doubtfulInputs(text, 'x');
    expect(named(list, 'ambient.altitude')?.half).toBe(30);
    expect(named(list, 'ambient.pressure')).toBeUndefined();
    expect(doubtfulEngines(text, 'x', [list.map(() => 1)])).toHaveLength(1);
  });
});
