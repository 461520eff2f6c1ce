/**
 * A builder's first ten minutes: from the page as it opens, with a demo on it, to the cut sheet of an engine of
 * which twelve figures are known. Prints what each step takes; typing goes at the pace of a slow hand.
 */
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { OWN_FIGURES } from '../../sim/index.ts';
import { FOUR } from '../ownFigures.ts';
import { open } from './opened.ts';
import { drawer, go } from './reader.ts';

/** One cylinder of the four, which takes half the time. */
const SINGLE: Record<string, string> = { ...FOUR, 'engine.cylinders': '1' };

/** How long a step takes. */
interface Step {
  name: string;
  seconds: number;
}

test('from an empty page to the cut sheet of an own engine', { timeout: 300_000 }, async () => {
  const { page, said } = await open();
  const steps: Step[] = [];
  const timed = async (name: string, work: () => Promise<void>) => {
    const began = performance.now();
    await work();
    steps.push({ name, seconds: (performance.now() - began) / 1e3 });
  };
  await timed('find where to begin', () => page.getByText('begin your own').click());
  await timed('write twelve figures and the band', () => writeAll(page));
  await timed('ask', () => page.getByRole('button', { name: 'Find the length' }).click());
  await timed('first look', () => page.locator('.first-look').waitFor());
  expect(await page.locator('.strip').textContent()).not.toContain('Cut to');
  await timed('whole answer', () =>
    page.locator('.sentence strong.best').waitFor({ timeout: 200_000 }),
  );
  const answer = (await page.locator('.sentence strong.best').textContent())!;
  await timed('cut sheet', async () => {
    await go(page, 'sheet');
    await page.locator('.sheet-cut').waitFor();
  });
  const sheet = (await page.locator('.sheet').textContent())!;
  expect(sheet).toContain('My own single');
  expect(sheet).toContain(`to ${answer}`);
  expect(sheet).toContain('Fitted now: 60');
  expect(sheet).toMatch(/Figures in doubt, given with ± or assumed: \d+/);
  expect(sheet).toContain('from 5000 to 7000\u00a0rpm');
  console.table(Object.fromEntries(steps.map(({ name, seconds }) => [name, seconds.toFixed(1)])));
  expect(steps.reduce((sum, { seconds }) => sum + seconds, 0)).toBeLessThan(600);

  // What is assumed says so in the file, and is there to be mended in the form.
  await drawer(page, 'File');
  await page.locator('.cm-content').getByText('assumed: 1.7 of the stroke').first().waitFor();
  await drawer(page, 'Figures');
  expect(await page.getByText('figures of an invented demo').count()).toBe(0);
  expect(await page.getByLabel('Connecting rod').inputValue()).toBe('146 mm +- 13 mm');
  expect(said).toEqual([]);
  await page.close();
});

async function writeAll(page: Page): Promise<void> {
  await page.getByLabel('Name of the engine').fill('My own single');
  for (const { path } of OWN_FIGURES) {
    const field = page.locator(`[data-path="${path}"]`);
    await field.click();
    await page.keyboard.type(SINGLE[path]!);
    expect(await page.locator('.sketch .lit').count(), path).toBe(1);
  }
}

test('what is missing is said at its field, which takes the focus; a reload loses nothing', async () => {
  const { page } = await open({ hash: '#/length/begin' });
  await page.locator('[data-path="engine.bore"]').fill('86 apples');
  await page.locator('[data-path="engine.cylinders"]').fill('4');
  await page.getByRole('button', { name: 'Find the length' }).click();
  await page.getByText('13 of the figures must be mended').waitFor();
  const bore = page.locator('[data-path="engine.bore"]');
  expect(await bore.evaluate((node) => node === document.activeElement)).toBe(true);
  expect(await page.locator('.wrong-says', { hasText: 'apples' }).count()).toBe(1);
  const duration = page.locator('[data-path="intake.valves.lift.duration"]');
  expect(await duration.locator('xpath=..').textContent()).toMatch(/for example: \d+ deg\. /);
  // What is written meanwhile is not called missing any more.
  await duration.fill('244');
  await page.getByText('12 of the figures must be mended').waitFor();
  expect(await duration.getAttribute('aria-invalid')).toBe('false');
  await page.getByRole('radio', { name: 'in', exact: true }).check();
  await page.getByText('Bore [in]', { exact: true }).waitFor();
  await page.reload();
  await page.locator('[data-path="engine.bore"]').waitFor();
  expect(await bore.inputValue()).toBe('86 apples');
  expect(await page.getByText('Bore [in]', { exact: true }).count()).toBe(1);
  expect(await page.locator('.engine').first().textContent()).toBe('Quick single for tests');
  await page.close();
});

test('every figure of the form is sketched, and its line is lit while it has the focus', async () => {
  const { page } = await open();
  await drawer(page);
  const lit = await page.locator('.figures').evaluate(async (form) => {
    const fields = [
      ...form.querySelectorAll<HTMLInputElement>('.sketched:has(.sketch) input[data-path]'),
    ];
    const found: [string, number][] = [];
    for (const field of fields) {
      field.focus();
      await new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve)));
      found.push([field.dataset.path!, form.querySelectorAll('.sketch .lit').length]);
    }
    return found;
  });
  expect(lit.length).toBeGreaterThan(35);
  expect(lit.filter(([, count]) => count !== 1)).toEqual([]);
  const bare = page.locator('.figures .sketched:not(:has(.sketch)) input[data-path]');
  const paths = await bare.evaluateAll((all) =>
    all.map((one) => (one as HTMLElement).dataset.path),
  );
  expect(paths.filter((path) => !/^(title$|numerics\.)/.test(path!))).toEqual([]);
  await page.close();
});
