/** What a reader does on the page, and what is read off it. */
import { readFileSync } from 'node:fs';
import type { Download, Page } from 'playwright-core';
import { expect } from 'vitest';

/** A figure of ten digits, as documents write it; the bits are the same (bytes.test.ts). */
export const TEN_DIGITS = 1e-9;

/** Relative difference of two numbers. */
export const apart = (a: number, b: number) => Math.abs(a - b) / Math.abs(b);

/** Goes to a place of the page by the row of places. */
export async function go(page: Page, place: string): Promise<void> {
  await page.locator(`.places a[href="#/${place}"]`).click();
}

/** Opens the engine's drawer at a tab. */
export async function drawer(page: Page, tab = 'Figures'): Promise<void> {
  if ((await page.locator('.drawer').count()) === 0) {
    await page.getByRole('button', { name: 'Your engine' }).click();
  }
  await page.getByRole('tab', { name: tab }).click();
}

/** Writes a figure of the engine's form. */
export async function write(page: Page, label: string, figure: string): Promise<void> {
  await drawer(page);
  await page.getByLabel(label, { exact: true }).fill(figure);
  await page.getByLabel(label, { exact: true }).press('Enter');
}

/** Takes a length to try [mm]. */
export async function take(page: Page, mm: number): Promise<void> {
  const exact = page.getByLabel('Trumpet length in millimetres, exact');
  await exact.fill(String(mm));
  await exact.press('Enter');
}

export const exactCurve = (page: Page) => page.locator('.dial .standing.full').waitFor();

/** Waits for the answer to a figure just written: the old one is stale for a second, then the new one is complete. */
export async function answered(page: Page): Promise<void> {
  await page.locator('.strip.stale').waitFor({ state: 'attached' });
  await page.locator('.strip:not(.stale) .facts').waitFor({ state: 'attached' });
}

/** Chooses a demo; its answer is there with the page. */
export async function choose(page: Page, demo: string): Promise<void> {
  await page.locator('.engine-choice select').selectOption(demo);
  await page.locator('.strip:not(.stale) .facts').waitFor({ state: 'attached' });
}

/** Opens a file as the scenario. */
export async function openFile(page: Page, name: string, content: string | Buffer): Promise<void> {
  await page.locator('input[type=file][accept*=yaml]').setInputFiles({
    name,
    mimeType: 'text/yaml',
    buffer: Buffer.from(content),
  });
}

/** Opens a file that can be read, and waits for its answer to be complete. */
export async function openAnswered(page: Page, name: string, content: string): Promise<void> {
  await openFile(page, name, content);
  await page.locator('.engine-choice', { hasText: `${name} (yours)` }).waitFor();
  await page.locator('.strip .facts').waitFor({ state: 'attached' });
}

/** What a view saves. */
export async function saved(
  page: Page,
  view: string,
  kind: 'CSV' | 'PNG' | 'SVG',
): Promise<Buffer> {
  await page.locator(`#${view} .js-plotly-plot .main-svg`).first().waitFor();
  await page.locator(`#${view} details.panel-take`).evaluateAll((all) => {
    for (const one of all) (one as HTMLDetailsElement).open = true;
  });
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page
      .locator(`#${view} .take`)
      .getByRole('button', { name: `(${kind})` })
      .click(),
  ]);
  await page.locator(`#${view} details.panel-take`).evaluateAll((all) => {
    for (const one of all) (one as HTMLDetailsElement).open = false;
  });
  return readDownload(download);
}

export async function readDownload(download: Download): Promise<Buffer> {
  return readFileSync(await download.path());
}

/** Columns of a CSV by name. */
export function columns(bytes: Buffer): Record<string, string[]> {
  const [head = [], ...rows] = bytes
    .toString('utf8')
    .trimEnd()
    .split('\r\n')
    .map((line) => line.match(/("([^"]|"")*"|[^,]*)(,|$)/g)!.map((cell) => unquoted(cell)));
  return Object.fromEntries(head.map((name, i) => [name, rows.map((row) => row[i]!)]));
}

const unquoted = (cell: string) =>
  cell
    .replace(/,$/, '')
    .replace(/^"(.*)"$/, '$1')
    .replaceAll('""', '"');

export function column(table: Record<string, string[]>, words: string): number[] {
  const name = Object.keys(table).find((key) => key.includes(words));
  expect(name, `a column with "${words}" among ${Object.keys(table).join('; ')}`).toBeDefined();
  return table[name!]!.map(Number);
}

/** Names of the views of the place that is open, of those that match a selector. */
export function views(page: Page, matching = ''): Promise<string[]> {
  return page.locator(`.view${matching}`).evaluateAll((nodes) => nodes.map((node) => node.id));
}

/** Addresses of all places in the row. */
export function places(page: Page): Promise<string[]> {
  return page
    .locator('.places a')
    .evaluateAll((links) => links.map((link) => link.getAttribute('href')!.slice(2)));
}

/** Colour behind everything: run in the page. */
export const ground = () => getComputedStyle(document.documentElement).backgroundColor;

/** Of a colour `rgb(r, g, b)`, 0 to 255. */
export const brightness = (colour: string) => {
  const [r = 0, g = 0, b = 0] = colour.match(/[\d.]+/g)!.map(Number);
  return (r + g + b) / 3;
};
