/**
 * `node --import tsx tests/page/pictures.ts out [--ask]`: a picture of every place of the page and of every tab of the
 * drawer, light and dark, at 1440, 1024 and 390 px and at 200 and 400 % of 1280, for eyes to look at; with `--ask`
 * every question that waits for the reader is worked out first. What stands over the edge is printed, and what axe finds.
 */
import { mkdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { TABS } from '../../web/state/place.ts';
import { browser, open } from './opened.ts';
import { more } from './quick.ts';
import { openAnswered } from './reader.ts';

const [out = 'pictures', ...flags] = process.argv.slice(2);
const SIZES = [
  { name: '1440', width: 1440, height: 900 },
  { name: '1024', width: 1024, height: 768 },
  { name: '390', width: 390, height: 844 },
  { name: 'zoom200', width: 640, height: 400 },
  { name: 'zoom400', width: 320, height: 256 },
];

/** An engine that poses every question of the page. */
const SCENARIO = more
  .replace('cylinders: 1', 'cylinders: 2')
  .replace('plates: 1', 'plates: 2')
  .replace('at: [', 'at: [8000 rpm, 9000 rpm, ')
  .replace('11000 rpm]', '11000 rpm, 12000 rpm]')
  .replace(
    'sweep:\n',
    'sweep:\n  vary:\n    - { key: intake.port.length, values: "65 mm, 95 mm" }\n    - { key: exhaust.primary.length, values: "350 mm, 450 mm" }\n',
  );

/** Readings that the reader brings, by the view that takes them. */
const READINGS: Record<string, string> = {
  'measured-run': 'speed_rpm,torque_Nm\n8000,44.1\n9000,42.0\n10000,50.3\n11000,51.0\n12000,49.2\n',
  balance: 'speed_rpm,plate_deg,cylinder,vacuum_kPa\n1500,9,1,50\n1500,9,2,46\n',
  trims: 'speed_rpm,plate_deg,cylinder,lambda\n6000,60,1,0.9\n6000,60,2,1.02\n',
};

async function goTo(page: Page, address: string): Promise<void> {
  await page.evaluate((to) => {
    location.hash = `#/${to}`;
  }, address);
  const place = `.places a[href="#/${address.split('/')[0]}"][aria-current=page]`;
  await page.locator(place).waitFor({ state: 'attached' });
  // The page goes to its top once the place was painted.
  await page.evaluate(
    () => new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve, 100))),
  );
  // A plot is drawn when it comes near.
  for (const plot of await page.locator('.plot-box .plot').all()) {
    await plot.evaluate((one) => one.scrollIntoView());
    await plot
      .and(page.locator('.js-plotly-plot'))
      .waitFor()
      .catch(() => console.log(`${address}: a plot is not drawn`));
  }
  await page.evaluate(() => {
    document.querySelector('.bench')?.scrollTo({ left: 0, behavior: 'instant' });
    scrollTo({ top: 0 });
  });
}

/** On a phone the workbench has three panels side by side. */
async function panels(page: Page, take: (name: string) => Promise<void>): Promise<void> {
  for (const name of ['Wave', 'Map']) {
    await page.locator('.pager').getByRole('button', { name }).click();
    await page.locator('.pager [aria-current]', { hasText: name }).waitFor();
    // Swiped to its end.
    await page.waitForTimeout(1000);
    await take(name.toLowerCase());
  }
}

/** Presses what begins a study until nothing waits; readings are brought. */
async function askAll(page: Page, place: string): Promise<void> {
  await goTo(page, place);
  for (const [view, readings] of Object.entries(READINGS)) {
    const file = page.locator(`#${view} input[type=file]`);
    if ((await file.count()) === 0) continue;
    const buffer = Buffer.from(readings);
    await file.setInputFiles({ name: 'readings.csv', mimeType: 'text/csv', buffer });
  }
  const begin = page.locator('main p.progress button:enabled').filter({ hasNotText: 'Try again' });
  while ((await begin.count()) > 0) {
    await begin.first().click();
    await page.locator('main div.progress').waitFor({ state: 'detached', timeout: 600_000 });
  }
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

/** What bars a reader, by axe. */
async function barriers(page: Page): Promise<string[]> {
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(AXE);
  return page.evaluate(async () => {
    const { axe } = window as unknown as { axe: typeof import('axe-core') };
    const { violations } = await axe.run();
    return violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`);
  });
}

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core'), 'utf8');

mkdirSync(out, { recursive: true });
const { page } = await open();
await openAnswered(page, 'every.yaml', SCENARIO);
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
      if (address === 'length' && width === 390)
        await panels(page, async (panel) => {
          await page.screenshot({ path: join(out, file.replace('.png', `-${panel}.png`)) });
        });
      const wide = await over(page);
      if (wide.length > 0) console.log(`${file}: over the edge: ${wide.join(', ')}`);
      for (const barrier of await barriers(page)) console.log(`${file}: ${barrier}`);
    }
  }
}
await (await browser()).close();
process.exit(0);
