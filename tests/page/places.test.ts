/** Every place of the page: pictures and numbers, no network, no barrier. */
import { createRequire } from 'node:module';
import { strFromU8, unzipSync } from 'fflate';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { address, again, open } from './opened.ts';
import { answer, text } from './quick.ts';
import {
  answered,
  brightness,
  choose,
  columns,
  exactCurve,
  go,
  ground,
  places,
  readDownload,
  saved,
  take,
  views,
  write,
} from './reader.ts';

test('saves every plot as picture and numbers, plays and steps through the wave', async () => {
  const { page, said } = await again();
  for (const view of ['filling', 'map']) await savesAll(page, view);
  for (const place of ['price', 'wave']) {
    await go(page, place);
    await page.locator('.view .js-plotly-plot').first().waitFor();
    if (place === 'wave') await page.locator('#wave .js-plotly-plot').waitFor();
    for (const view of await views(page, ':has(.take button:not([disabled]))')) {
      await savesAll(page, view);
    }
  }
  const angle = page.getByLabel('Crank angle');
  expect(await angle.inputValue()).toBe('540');
  await page.getByRole('button', { name: 'Step on 5 degrees' }).click();
  expect(await angle.inputValue()).toBe('545');
  await page.getByRole('button', { name: 'Play' }).click();
  await expect.poll(() => angle.inputValue()).not.toBe('545');
  await page.getByRole('button', { name: 'Pause' }).click();
  expect(said).toEqual([]);
});

async function savesAll(page: Page, view: string): Promise<void> {
  const png = await saved(page, view, 'PNG');
  expect(png.subarray(1, 4).toString('latin1'), view).toBe('PNG');
  expect(png.length, view).toBeGreaterThan(10_000);
  const svg = (await saved(page, view, 'SVG')).toString('utf8');
  expect(svg, view).toMatch(/^<svg[^>]*>[\s\S]*Quick single for tests/);
  const table = columns(await saved(page, view, 'CSV'));
  expect(Object.values(table)[0]!.length, view).toBeGreaterThan(2);
}

test('saves all as one ZIP: scenario, report, and every plot with title, length and speed', async () => {
  const { page, said } = await again();
  await go(page, 'sheet');
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save all' }).click(),
  ]);
  expect(download.suggestedFilename()).toBe('quick.zip');
  const files = unzipSync(await readDownload(download));
  expect(strFromU8(files['quick.yaml']!)).toBe(text);
  const { length } = (await answer()).recommended;
  expect(strFromU8(files['quick-report.html']!)).toContain(`${Math.round(length * 1e3)} mm`);
  const views = ['filling', 'map', 'gain-and-price', 'price-of-gain'];
  for (const view of views) {
    expect(strFromU8(files[`quick-${view}.png`]!.slice(1, 4)), view).toBe('PNG');
    const svg = strFromU8(files[`quick-${view}.svg`]!);
    expect(svg, view).toMatch(/^<svg[^>]*>[\s\S]*Quick single for tests; 60.mm/);
    expect(svg, view).toMatch(/wave at \d+.rpm/);
    expect(strFromU8(files[`quick-${view}.csv`]!).split('\r\n').length, view).toBeGreaterThan(3);
  }
  expect(said).toEqual([]);
});

test('asks nothing of any other place, and works with the network cut', async () => {
  const { page, said } = await open({ locale: 'en-GB' });
  const asked: string[] = [];
  page.on('request', (request) => asked.push(request.url()));
  for (const place of await places(page)) await go(page, place);
  await go(page, 'length');
  await page.locator('#filling .js-plotly-plot').waitFor();
  await page.context().setOffline(true);
  await take(page, 75);
  await exactCurve(page);
  await write(page, 'Bore', '74 mm');
  await answered(page);
  const own = await address();
  for (const url of asked) expect(url.startsWith(own) || url.startsWith('data:'), url).toBe(true);
  expect(said).toEqual([]);
  await page.close();
});

test('opened once, it opens and computes with no network at all', async () => {
  const { page, said } = await open({ serviceWorkers: 'allow' });
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => {}));
  // Nothing but this window, which keeps nothing, is in the way of installing it.
  const session = await page.context().newCDPSession(page);
  const { installabilityErrors } = await session.send('Page.getInstallabilityErrors');
  expect(installabilityErrors.map(({ errorId }) => errorId)).toEqual(['in-incognito']);
  await session.send('Network.clearBrowserCache');
  await page.context().setOffline(true);
  await page.reload();
  await page.locator('.sentence strong').waitFor();
  await page.locator('#filling .js-plotly-plot').waitFor();
  await take(page, 75);
  await exactCurve(page);
  await page.getByRole('button', { name: 'Your engine' }).click();
  await page.getByRole('tab', { name: 'File' }).click();
  await page.locator('.cm-content').waitFor();
  await page.getByRole('button', { name: 'Close' }).click();
  // Another demo, and what was never computed of it; its sheet for the workshop.
  await page.locator('.engine-choice select').selectOption('more.yaml');
  await page.locator('.strip:not(.stale) .facts', { hasText: '10000 to 11000' }).waitFor();
  await take(page, 90);
  await exactCurve(page);
  await go(page, 'sheet');
  await page.locator('.sheet-cut').waitFor();
  const manifest = await page.locator('link[rel=manifest]').getAttribute('href');
  expect(manifest).toBe('./page.webmanifest');
  expect(said).toEqual([]);
  await page.close();
});

test('every place is accessible, light and dark', async () => {
  const { page } = await open({ colorScheme: 'light', bypassCSP: true });
  await choose(page, 'more.yaml');
  await take(page, 80);
  await exactCurve(page);
  await page.addScriptTag({ path: createRequire(import.meta.url).resolve('axe-core') });
  const all = await places(page);
  expect(all).toContain('injectors');
  for (const place of all) {
    await go(page, place);
    await page.locator(`.places a[href="#/${place}"][aria-current]`).waitFor();
    await noBarriers(page, place);
  }
  for (const tab of ['Begin', 'Figures', 'File', 'Kept set-ups']) {
    if (tab === 'Begin') await page.getByRole('button', { name: 'Your engine' }).click();
    await page.getByRole('tab', { name: tab }).click();
    if (tab === 'File') await page.locator('.cm-content').waitFor();
    await noBarriers(page, tab);
  }
  await page.close();
});

async function noBarriers(page: Page, where: string): Promise<void> {
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    await expect
      .poll(async () => brightness(await page.evaluate(ground)) > 128, {
        message: `${where}, ${colorScheme}`,
      })
      .toBe(colorScheme === 'light');
    expect(await barriers(page), `${where}, ${colorScheme}`).toEqual([]);
  }
}

function barriers(page: Page) {
  return page.evaluate(async () => {
    const { axe } = window as unknown as { axe: typeof import('axe-core') };
    const { violations } = await axe.run();
    return violations.map(({ id, impact, nodes }) => ({ id, impact, at: nodes[0]?.html }));
  });
}
