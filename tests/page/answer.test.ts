/** The answer on the page, against the core's to the same question. */
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { smoothAt } from '../../sim/decision/smooth.ts';
import {
  allPoints,
  decisionWords,
  efficiencies,
  goodEnough,
  lengthStudy,
  readScenario,
  runHere,
  sweepDocument,
} from '../../sim/index.ts';
import { questionOf } from '../../web/compute/question.ts';
import { typeset } from '../../web/format.ts';
import { address, again, browser, open } from './opened.ts';
import { answer, refined, scenario, text } from './quick.ts';
import { apart, column, columns, go, openAnswered, openFile, saved } from './reader.ts';

/** The line that is drawn of the length recommended. */
function linesOf(page: Page, view: string): Promise<{ x: number[]; y: number[] }> {
  return page.evaluate((view) => {
    type Traced = Element & { data: { name: string; mode: string; x: number[]; y: number[] }[] };
    const plot = document.querySelector(`${view} .js-plotly-plot`) as Traced;
    const { x, y } = plot.data.find(
      ({ name, mode }) => /^recommended/.test(name) && mode === 'lines',
    )!;
    return { x: [...x], y: [...y] };
  }, view);
}

test('stands on the page at once, to the digit as the core computes it now', async () => {
  const study = await answer();
  // Building the page and starting the browser are no part of what the reader waits for.
  await Promise.all([address(), browser()]);
  const began = performance.now();
  const { page, said } = await open();
  expect(performance.now() - began).toBeLessThan(5000);
  const shown = await page.locator('.answer').textContent();
  const { gain, price, inside, edge, found } = decisionWords(study);
  expect(shown).toContain(`Cut to ${Math.round(study.recommended.length * 1e3)}\u00a0mm`);
  for (const sentence of [gain, price, inside, edge, found])
    expect(shown).toContain(typeset(sentence));
  const facts = await page.locator('.facts').textContent();
  const range = goodEnough(study);
  if (range)
    expect(facts).toContain(
      `${Math.round(range.from * 1e3)} to ${Math.round(range.to * 1e3)}\u00a0mm`,
    );
  expect(facts).toContain(`+${study.decision.gainPercent.toFixed(1)}\u00a0%`);
  await page.locator('#filling .js-plotly-plot').waitFor();
  expect(said).toEqual([]);
  const table = columns(await saved(page, 'filling', 'CSV'));
  const document = JSON.parse(JSON.stringify(sweepDocument(study, scenario)));
  const best = column(table, 'recommended');
  expect(best).toHaveLength(scenario.speeds.length);
  best.forEach((value, i) => {
    expect(apart(value, document.recommended.volumetric_efficiency[i]!)).toBeLessThan(1e-9);
  });
  const map = columns(await saved(page, 'map', 'CSV'));
  scenario.speeds.forEach((speed, j) => {
    column(map, `at ${speed} rpm`).forEach((value, i) => {
      expect(apart(value, document.volumetric_efficiency[i]![j]!)).toBeLessThan(1e-9);
    });
  });
});

test('has one screen at 1440 by 900: length and curve together, nothing scrolls', async () => {
  const { page } = await again();
  await page.locator('#filling .js-plotly-plot .main-svg').first().waitFor();
  const [high, window] = await page.evaluate(() => [
    document.documentElement.scrollHeight,
    innerHeight,
  ]);
  expect(high).toBe(window);
  for (const part of ['.answer', '#filling', '#map', '.intake', '.wave-frame', '.dial']) {
    const box = (await page.locator(part).boundingBox())!;
    expect(box.y + box.height, part).toBeLessThanOrEqual(900);
    expect(box.height, part).toBeGreaterThan(50);
  }
});

test('is computed here where the build has none; a first look never says what to cut', async () => {
  const { page, said } = await again();
  const changedText = refined.replace('bore: 77 mm', 'bore: 78 mm');
  await openFile(page, 'quick.yaml', changedText);
  const seen: string[] = [];
  await page.locator('.first-look').waitFor();
  seen.push((await page.locator('.headline').textContent())!);
  await page.locator('#filling .annotation', { hasText: 'first look' }).waitFor();
  expect(await page.locator('#filling .annotation', { hasText: 'best' }).count()).toBe(0);
  await page.locator('.strip:not(.stale) .facts').waitFor();
  expect(seen[0]).toMatch(/First look: near/);
  expect(seen[0]).not.toMatch(/[Cc]ut/);
  const changed = readScenario(changedText, 'quick.yaml');
  const there = await lengthStudy(questionOf(changed), runHere);
  const table = columns(await saved(page, 'filling', 'CSV'));
  const length = Math.round(there.recommended.length * 1e3);
  expect(await page.locator('.headline').textContent()).toContain(`Cut to ${length}`);
  const shown = column(table, `recommended, ${length}`);
  there.recommended.outcomes.forEach((outcome, i) => {
    const value = 'failure' in outcome ? Number.NaN : outcome.volumetricEfficiency;
    expect(apart(shown[i]!, value)).toBeLessThan(1e-9);
  });
  // What is drawn goes through the points that were computed between the speeds.
  const drawn = await linesOf(page, '#filling');
  const between = there.recommended.between!;
  expect(between.length).toBeGreaterThan(3);
  for (const outcome of between) {
    if ('failure' in outcome) continue;
    const after = drawn.x.findIndex((speed) => speed >= outcome.speed);
    const part = (outcome.speed - drawn.x[after - 1]!) / (drawn.x[after]! - drawn.x[after - 1]!);
    const y = drawn.y[after - 1]! + part * (drawn.y[after]! - drawn.y[after - 1]!);
    expect(apart(y, outcome.volumetricEfficiency)).toBeLessThan(1e-3);
  }
  // Gain and price are drawn between the speeds too.
  await page.evaluate(() => {
    location.hash = '#/price';
  });
  await page.locator('#gain-and-price .js-plotly-plot .main-svg').first().waitFor();
  const change = await linesOf(page, '#gain-and-price');
  const [ours, own] = [there.recommended, there.baseline].map((curve) => {
    const points = allPoints(curve);
    const speeds = points.map(({ speed }) => speed);
    return smoothAt(speeds, efficiencies(points), change.x);
  });
  change.y.forEach((percent, i) => {
    expect(Math.abs(percent - 100 * (ours![i]! / own![i]! - 1))).toBeLessThan(1e-9);
  });
  expect(said).toEqual([]);
});

test('is in the unit of the file: inches in, inches out', async () => {
  const { page } = await again();
  const inches = text.replace('length: 60 mm #', 'length: 2.4 in #');
  await openAnswered(page, 'inches.yaml', inches);
  const shown = async () => (await page.locator('main').textContent())!.replaceAll('\u00a0', ' ');
  expect(await shown()).toMatch(/Cut to\s+[\d.]+ in/);
  // What is read aloud follows a second later.
  await expect.poll(shown).not.toMatch(/\d mm\b/);
  const slider = page.getByLabel('Trumpet length in inches', { exact: true });
  const before = Number(await slider.inputValue());
  await slider.press('ArrowLeft');
  expect(before - Number(await slider.inputValue())).toBeCloseTo(0.05, 6);
  await go(page, 'dyno');
  await page.locator('#measured-run input[type=file]').setInputFiles({
    name: 'run.csv',
    mimeType: 'text/csv',
    buffer: Buffer.from('speed_rpm,torque_Nm\n8000,18\n9000,20\n10000,24\n11000,23\n12000,21\n'),
  });
  const made = page.getByLabel('made with trumpets of');
  expect(await made.inputValue()).toBe('2.4');
  expect((await page.locator('.run-length').textContent())!.trim()).toMatch(/of\s+in$/);
});
