/** Wrong injectors are told by name, at their place. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { ScenarioError, type ScenarioIssue } from '../../sim/errors.ts';
import { readScenario } from '../../sim/scenario/read.ts';
import { placementStudy } from '../../sim/study/inject/compute.ts';
import { runHere } from '../../sim/sweep/runner.ts';

const text = readFileSync('scenarios/endurance-six.yaml', 'utf8');

function issues(from: string, to: string): readonly ScenarioIssue[] {
  expect(text).toContain(from);
  try {
    readScenario(text.replace(from, to), 'six.yaml');
  } catch (error) {
    if (error instanceof ScenarioError) return error.issues;
    throw error;
  }
  return [];
}

describe('injectors', () => {
  test.each([
    [
      'inside the wall',
      'offset: 18 mm',
      'offset: 40 mm',
      'injectors.each.0.offset',
      'inside the wall of the runner',
    ],
    [
      'inside the port wall',
      'fromValve: 110 mm # drawing of the head\n      offset: 18 mm',
      'fromValve: 60 mm\n      offset: 24 mm',
      'injectors.each.0.offset',
      'inside the wall of the port',
    ],
    ['share above 1', 'outer: 50 %', 'outer: 120 %', 'injectors.staging.1.outer', 'out of range'],
    ['zero flow', 'flow: 400 cc/min', 'flow: 0 cc/min', 'injectors.each.0.flow', 'out of range'],
    ['unknown fuel', 'name: petrol', 'name: kerosene', 'fuel.name', 'not known'],
    [
      'past the valve',
      'fromValve: 110 mm',
      'fromValve: -10 mm',
      'injectors.each.0.fromValve',
      'past the valve',
    ],
    [
      'past the valve',
      'fromMouth: -40 mm',
      'fromMouth: 400 mm',
      'injectors.each.1.fromMouth',
      'past the valve',
    ],
    [
      'two places',
      'fromValve: 110 mm',
      'fromValve: 110 mm\n      fromMouth: 50 mm',
      'injectors.each.0.fromMouth',
      'the place of the nozzle is given twice',
    ],
    [
      'no place',
      'fromValve: 110 mm # drawing of the head',
      '',
      'injectors.each.0',
      'the place of the nozzle is missing',
    ],
    ['a misspelt key', 'cone: 18 deg', 'kone: 18 deg', 'injectors.each.0.kone', 'not a key'],
    [
      'speeds that do not rise',
      'speed: 5000 rpm, outer',
      'speed: 3000 rpm, outer',
      'injectors.staging.1.speed',
      'rise',
    ],
    [
      'a drop size without unit',
      'dropSize: 110 um',
      'dropSize: 110',
      'injectors.each.0.dropSize',
      'no unit',
    ],
  ])('%s', (_name, from, to, path, message) => {
    const found = issues(from, to).find((issue) => issue.path === path);
    expect(found?.message).toContain(message);
    expect(found!.line).toBeGreaterThan(1);
    expect(found!.remedy.length).toBeGreaterThan(5);
  });

  test('injection longer than the cycle', () => {
    const small = text
      .replace('flow: 400 cc/min', 'flow: 60 cc/min')
      .replace('flow: 550 cc/min', 'flow: 60 cc/min');
    try {
      readScenario(small, 'six.yaml');
      throw new Error('was taken');
    } catch (error) {
      expect(String(error)).toContain('longer than the cycle');
    }
  });

  test('one injector alone has no placement to study', async () => {
    const { engine, injectors } = readScenario(text, 'six.yaml');
    const one = { ...injectors!, list: injectors!.list.slice(0, 1) };
    const study = placementStudy({ engine, injectors: one, speeds: [6000] }, runHere);
    await expect(study).rejects.toThrow('two injectors');
  });
});
