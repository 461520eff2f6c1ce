/** Conditions of the day are no choice: what they cost is said, and nothing of them recommended. */
import { describe, expect, test } from 'vitest';
import { readVariedKey } from '../../sim/scenario/readValue.ts';
import { variantEngines } from '../../sim/scenario/variants.ts';
import { withConditions } from '../../sim/study/vary/ask.ts';
import { variantStudy } from '../../sim/study/vary/compute.ts';
import { variantDocument } from '../../sim/study/vary/tables.ts';
import { variantSentences } from '../../sim/study/vary/tell.ts';
import { demoText, readDemo, toyRunner } from '../toy.ts';

const scenario = readDemo('hill-climb');
const { engine: baseline, speeds, target } = scenario;

/** Filling falls by a thousandth a kelvin and is best with trumpets of 150 mm, whatever the air. */
const runner = toyRunner(({ length, engine }) => {
  const { temperature } = engine.ambient;
  return 1 - 0.001 * (temperature - 283.15) - 20 * (length - 0.15) ** 2;
});

async function studyOf(...texts: string[]) {
  const axes = texts.map((text) => {
    const axis = readVariedKey(text);
    if ('problem' in axis) throw new Error(axis.problem);
    return axis;
  });
  const keys = withConditions(axes);
  const engines = variantEngines(demoText('hill-climb'), 'hill-climb.yaml', keys);
  return variantStudy({ baseline, keys, engines, speeds, target }, runner);
}

test('a condition alone: what it costs, and no value recommended', async () => {
  const study = await studyOf('ambient.temperature=10 degC,30 degC');
  expect(study.recommended).toBeUndefined();
  expect(study.pareto).toEqual([]);
  const text = variantSentences(study).join(' ');
  expect(text).toContain('ambient.temperature is a condition, not a choice');
  // The length fitted now, 90 mm, loses 20 x 0.06^2 = 0.072 at either temperature.
  const share = 0.02 / (1 - 0.072);
  expect(text).toContain(`30 degC gives ${(100 * share).toFixed(1)} % less in the band`);
  expect(text).not.toContain('Best of those tried');
  expect(variantDocument(study, scenario)).toMatchObject({
    recommended: null,
    costs: [{ value: '10 degC', change_percent: 0 }, { value: '30 degC' }],
  });
});

test('a condition beside a choice: the best of the choice for each of its values', async () => {
  const study = await studyOf(
    'intake.trumpet.length=90mm,150mm,200mm',
    'ambient.temperature=10 degC,30 degC',
  );
  expect(study.keys.map(({ path }) => path)).toEqual([
    'ambient.temperature',
    'intake.trumpet.length',
  ]);
  expect(study.recommended).toBeUndefined();
  expect(study.bestSecond!.map(({ text, best }) => [text, best.texts[1]])).toEqual([
    ['10 degC', '150mm'],
    ['30 degC', '150mm'],
  ]);
  expect(study.costs!.map(({ changePercent }) => changePercent)[1]).toBeCloseTo(-2, 9);
});

test('two choices are weighed as before', async () => {
  const study = await studyOf('intake.trumpet.length=90mm,150mm');
  expect(study.recommended!.texts).toEqual(['150mm']);
  expect(study.costs).toBeUndefined();
});

describe('of two choices', () => {
  const ends = ['intake.trumpet.length=90mm,110mm,130mm', 'intake.trumpet.diameter=44mm,45mm'];

  test('those whose best value is the last one tried are named: further on may be better', async () => {
    const text = variantSentences(await studyOf(...ends)).join(' ');
    expect(text).toContain('130mm is the greatest value of intake.trumpet.length tried');
    expect(text).toContain('so further on may be better still');
    const inside = await studyOf('intake.trumpet.length=90mm,150mm,200mm');
    expect(variantSentences(inside).join(' ')).not.toContain('further on');
  });

  test('no speed outside the band: none of them is said to lose nothing', async () => {
    const whole = { ...(await studyOf(...ends)), target: { from: speeds[0]!, to: speeds.at(-1)! } };
    const text = variantSentences(whole).join(' ');
    expect(text).toContain('no speed outside it was computed, so the price there is not known');
    expect(text).not.toMatch(/outside it loses/);
  });
});
