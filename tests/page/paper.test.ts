/** On paper: the cut sheet for the workshop, and any other place. */
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { again } from './opened.ts';
import { answer } from './quick.ts';
import { brightness, go, ground } from './reader.ts';

/** A4 less margins of 10 mm, at 96 px an inch. */
const PAPER = { width: 718, height: 1047 };

test('the cut sheet says the length in large type, with its drawing, in the dark too, on one or two sheets', async () => {
  const study = await answer();
  const { page } = await again();
  await go(page, 'sheet');
  const length = `${Math.round(study.recommended.length * 1e3)}\u00a0mm`;
  expect(await page.locator('.sheet-cut').textContent()).toBe(`Cut to ${length}`);
  expect(await page.locator('.sheet').textContent()).toContain('plane of the rim');
  expect(await printed(page)).toBe(1);
  await page.setViewportSize(PAPER);
  await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
  // 20 mm, and the 5 mm of a line that is read at arm's length.
  expect(await typeOf(page, '.sheet-cut')).toBeGreaterThan((20 / 25.4) * 96);
  expect(await typeOf(page, '.sheet li')).toBeGreaterThan((5 / 25.4) * 96);
  for (const hidden of ['.top-row', '.places', '.answer', '.take']) {
    expect(await page.locator(hidden).first().isVisible(), hidden).toBe(false);
  }
  const drawing = (await page.locator('.sheet .drawing').boundingBox())!;
  expect(drawing.width).toBeGreaterThan(0.8 * PAPER.width);
  expect(await page.locator('.sheet .drawing').textContent()).toContain(`length to cut`);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(PAPER.width);
  expect(brightness(await page.evaluate(ground))).toBeGreaterThan(128);
  for (const dark of ['.sheet-cut strong', '.sheet li', '.drawing text'])
    expect(brightness(await inkOf(page, dark)), dark).toBeLessThan(128);
  const pdf = await page.pdf({ format: 'A4', margin: MARGIN });
  expect(pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)!.length).toBeLessThanOrEqual(2);
});

const MARGIN = { top: '10mm', right: '10mm', bottom: '10mm', left: '10mm' };

/** How often the browser is told to print by the sheet's own button. */
async function printed(page: Page): Promise<unknown> {
  await page.evaluate('printed = 0; print = () => printed++');
  await page.getByRole('button', { name: 'Print this sheet' }).click();
  return page.evaluate('printed');
}

const typeOf = (page: Page, what: string) =>
  page
    .locator(what)
    .first()
    .evaluate((one) => Number.parseFloat(getComputedStyle(one).fontSize));

const inkOf = (page: Page, what: string) =>
  page
    .locator(what)
    .first()
    .evaluate((one) => {
      const { color, fill } = getComputedStyle(one);
      return one instanceof SVGElement ? fill : color;
    });

test('any place prints on white, out of the dark too, with its answer and plots and nothing to press', async () => {
  const { page } = await again();
  await go(page, 'price');
  await page.locator('#price-of-gain .js-plotly-plot').waitFor();
  await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
  expect(brightness(await page.evaluate(ground))).toBeGreaterThan(128);
  for (const seen of ['.sentence', '.facts', '#gain-and-price h2', '#gain-and-price .main-svg']) {
    expect(await page.locator(seen).first().isVisible(), seen).toBe(true);
  }
  for (const hidden of ['.top-row', '.places', '.begin', '.all-words summary', '.take button']) {
    expect(await page.locator(hidden).first().isVisible(), hidden).toBe(false);
  }
  const inks = await page
    .locator('#gain-and-price .xtick text')
    .evaluateAll((ticks) => ticks.map((tick) => getComputedStyle(tick).fill));
  for (const ink of inks) expect(brightness(ink)).toBeLessThan(128);
});
