/** What is kept on the device: the text, the place, set-ups with their curves. */
import { expect, test } from 'vitest';
import { readScenario } from '../../sim/index.ts';
import { open } from './opened.ts';
import { text } from './quick.ts';
import { drawer, exactCurve, go, openFile, readDownload, take, write } from './reader.ts';

test('reload keeps text and place; Back goes to the place before', async () => {
  const { page } = await open();
  await write(page, 'Bore', '80 mm');
  await page.keyboard.press('Escape');
  await page.locator('.drawer').waitFor({ state: 'detached' });
  await expect
    .poll(() => page.evaluate(() => document.activeElement?.textContent))
    .toBe('Your engine');
  await go(page, 'price');
  await page.locator('#gain-and-price').waitFor();
  await page.reload();
  await page.locator('#gain-and-price').waitFor();
  expect(await page.locator('.places a[aria-current]').textContent()).toBe('Gain and price');
  await go(page, 'trust');
  await page.locator('#trust').waitFor();
  await page.goBack();
  await page.locator('#gain-and-price').waitFor();
  await drawer(page);
  expect(await page.getByLabel('Bore', { exact: true }).inputValue()).toBe('80 mm');
  await page.goBack();
  await page.locator('.drawer').waitFor({ state: 'detached' });
  await page.close();
});

test('a set-up is kept with its curve, survives reload, is saved as a file and opened again', async () => {
  const { page, said } = await open();
  await take(page, 90);
  await exactCurve(page);
  await page.locator('.dial').getByRole('button', { name: 'Keep' }).click();
  await page.locator('#filling .annotation', { hasText: 'quick' }).waitFor();
  await page.reload();
  await page.locator('#filling .annotation', { hasText: 'quick' }).waitFor();
  await drawer(page, 'Kept set-ups');
  await page.getByLabel('Name of the set-up').fill('club day');
  await page.getByLabel('Name of the set-up').press('Enter');
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save as file' }).click(),
  ]);
  expect(download.suggestedFilename()).toBe('club-day.yaml');
  const filed = (await readDownload(download)).toString('utf8');
  expect(filed).toBe(text.replace('length: 60 mm #', 'length: 90 mm #'));
  expect(readScenario(filed, 'club-day.yaml').engine.intake.trumpet.length).toBe(0.09);
  await page.getByRole('checkbox', { name: /draw its curve/ }).uncheck();
  await page
    .locator('#filling .annotation', { hasText: 'club day' })
    .waitFor({ state: 'detached' });
  await page.getByRole('button', { name: /^Open\s*: club day/ }).click();
  await drawer(page);
  expect(await page.getByLabel('Trumpet fitted now').inputValue()).toBe('90 mm');
  expect(said).toEqual([]);
  await page.close();
});

test('an edited text is set aside when another file takes its place', async () => {
  const { page } = await open();
  await write(page, 'Bore', '74 mm');
  await openFile(page, 'other.yaml', text.replace('stroke: 53.6 mm', 'stroke: 54 mm'));
  await drawer(page, 'Kept set-ups');
  await page.getByRole('button', { name: /^Open\s*: quick.yaml, set aside/ }).click();
  await drawer(page);
  expect(await page.getByLabel('Bore', { exact: true }).inputValue()).toBe('74 mm');
  await page.close();
});
