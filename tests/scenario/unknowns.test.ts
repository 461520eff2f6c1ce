/** What a fit may change in a scenario, and the copy that it writes. */
import { describe, expect, it } from 'vitest';
import { readScenario } from '../../sim/scenario/read.ts';
import {
  changedText,
  engineWith,
  scenarioUnknowns,
  UNKNOWN_NAMES,
  type UnknownName,
} from '../../sim/scenario/unknowns.ts';
import { demoText } from '../toy.ts';

const DEMOS = ['hill-climb', 'sprint-single', 'endurance-six', 'boosted-four'];

describe.each(DEMOS)('%s', (demo) => {
  const text = demoText(demo);

  it.each(UNKNOWN_NAMES)('%s at its start leaves the engine as it is', (name) => {
    const unknowns = scenarioUnknowns(text, demo, [name]);
    const engine = engineWith(text, demo, unknowns, [unknowns[0]!.start]);
    const flat = (value: unknown) =>
      JSON.parse(JSON.stringify(value), (_, x) => (typeof x === 'number' ? x.toPrecision(4) : x));
    expect(flat(engine)).toEqual(flat(readScenario(text, demo).engine));
  });

  it.each(UNKNOWN_NAMES)('%s written into a copy gives the engine that was fitted', (name) => {
    const unknowns = scenarioUnknowns(text, demo, [name]);
    const { start, deviation, changes } = unknowns[0]!;
    const value = start + deviation;
    const copy = changedText(text, demo, changes(value));
    expect(readScenario(copy, demo).engine).toEqual(engineWith(text, demo, unknowns, [value]));
    expect(readScenario(copy, demo).engine).not.toEqual(readScenario(text, demo).engine);
    const remarks = (file: string) => file.match(/#.*$/gm);
    expect(remarks(copy)).toEqual(remarks(text));
  });
});

describe('the hill-climb four', () => {
  const text = demoText('hill-climb');
  const engineAt = (name: UnknownName, value: number) =>
    engineWith(text, 'x', scenarioUnknowns(text, 'x', [name]), [value]);

  it('a later cam opens and closes later', () => {
    // 28 deg BTDC is 332 deg, 60 deg ABDC is 600 deg.
    expect(engineAt('intake-cam-phase', 2.5).intake.valve.lift).toMatchObject({
      open: 334.5,
      close: 602.5,
    });
    // 58 deg BBDC is 122 deg, 26 deg ATDC is 386 deg.
    expect(engineAt('exhaust-cam-phase', -2).exhaust.valve.lift).toMatchObject({
      open: 120,
      close: 384,
    });
  });

  it('a flow scale moves every point of the bench', () => {
    const flow = (value: number) => {
      const one = engineAt('intake-flow-scale', value).intake.valve.flow;
      return one.kind === 'bench' ? one.flow : [];
    };
    const ratios = flow(0.95).map((x, i) => x / flow(1)[i]!);
    for (const ratio of ratios) expect(ratio).toBeCloseTo(0.95, 4);
  });

  it('changes no other byte where the keys stand', () => {
    const [phase] = scenarioUnknowns(text, 'x', ['intake-cam-phase']);
    const copy = changedText(text, 'x', phase!.changes(2.5)).split('\n');
    const other = text
      .split('\n')
      .flatMap((line, i) => (line === copy[i] ? [] : [copy[i]!.trim()]));
    expect(other).toEqual(['open: 25.5 deg BTDC # cam card', 'close: 62.5 deg ABDC # cam card']);
  });
});
