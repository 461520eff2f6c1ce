/**
 * `node --import tsx tests/page/pictures.ts out [--ask]`: a picture of every place of the page and of every tab of the
 * drawer, light and dark, at 1440, 1024 and 390 px and at 200 and 400 % of 1280, for eyes to look at; with `--ask`
 * every question that waits for the reader is worked out first. What stands over the edge is printed.
 */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { TABS } from '../../web/state/place.ts';
import { browser, open } from './opened.ts';
import { more } from './quick.ts';

const [out = 'pictures', ...flags] = process.argv.slice(2);
const SIZES = [
  { name: '1440', width: 1440, height: 900 },
  { name: '1024', width: 1024, height: 768 },
  { name: '390', width: 390, height: 844 },
  { name: 'zoom200', width: 640, height: 400 },
  { name: 'zoom400', width: 320, height: 256 },
];

async function goTo(page: Page, address: string): Promise<void> {
  await page.evaluate((to) => {
    location.hash = `#/${to}`;
  }, address);
  await page.waitForFunction(() => document.querySelector('main, .drawer') !== null);
  // Every plot is brought near, and has its frame to be drawn in.
  await page.evaluate(async () => {
    for (const one of document.querySelectorAll('.plot')) {
      one.scrollIntoView();
      await new Promise(requestAnimationFrame);
    }
    scrollTo({ top: 0 });
  });
  await page
    .waitForFunction(() =>
      [...document.querySelectorAll('.plot-box .plot')].every((one) =>
        one.classList.contains('js-plotly-plot'),
      ),
    )
    .catch(() => console.log(`${address}: a plot is not drawn`));
}

async function askAll(page: Page, place: string): Promise<void> {
  await goTo(page, place);
  const buttons = page.locator('.view .ask button, .view .asked button');
  for (const button of await buttons.all()) await button.click();
  await page.locator('.view progress').first().waitFor({ state: 'detached', timeout: 300_000 });
}

/** What stands over the right edge of the window, but where it scrolls of its own. */
function over(page: Page): Promise<string[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll('main *, .drawer *')]
      .filter((one) => {
        const { right, width } = one.getBoundingClientRect();
        return (
          width > 0 && right > innerWidth + 1 && !one.closest('.sr, .bench, .numbers, .places')
        );
      })
      .map((one) => `${one.tagName.toLowerCase()}.${one.getAttribute('class') ?? ''}`)
      .slice(0, 5),
  );
}

mkdirSync(out, { recursive: true });
const { page } = await open();
await page.locator('input[type=file][accept*=yaml]').setInputFiles({
  name: 'more.yaml',
  mimeType: 'text/yaml',
  buffer: Buffer.from(more),
});
await page.locator('.strip.stale').waitFor({ state: 'attached' });
await page.locator('.strip:not(.stale) .facts').waitFor({ state: 'attached' });
await page.locator('.dial-box input').fill('80');
await page.locator('.dial-box input').press('Enter');
await page.locator('.dial .standing.full').waitFor();
const places = await page
  .locator('.places a')
  .evaluateAll((links) => links.map((link) => link.getAttribute('href')!.slice(2)));
if (flags.includes('--ask')) for (const place of places) await askAll(page, place);
for (const scheme of ['light', 'dark'] as const) {
  await page.emulateMedia({ colorScheme: scheme });
  for (const { name, width, height } of SIZES) {
    await page.setViewportSize({ width, height });
    for (const address of [...places, ...TABS.map((tab) => `length/${tab}`)]) {
      await goTo(page, address);
      const file = `${name}-${scheme}-${address.replace('/', '-')}.png`;
      await page.screenshot({ path: join(out, file), fullPage: true });
      const wide = await over(page);
      if (wide.length > 0) console.log(`${file}: over the edge: ${wide.join(', ')}`);
    }
  }
}
await (await browser()).close();
process.exit(0);
