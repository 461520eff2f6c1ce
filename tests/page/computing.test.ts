/** What the page says while it computes, when it is stopped, and when something of it breaks. */
import { expect, test } from 'vitest';
import { again, open } from './opened.ts';
import { refined, text } from './quick.ts';
import { columns, go, openAnswered, openFile, saved, take } from './reader.ts';

test('stops when told, says what it is then, and goes on where it was', async () => {
  const { page, said } = await again();
  // A finer mesh, so that there is time to stop it.
  const slow = refined.replace('bore: 77 mm', 'bore: 76 mm').replace('30 mm', '10 mm');
  await openFile(page, 'slow.yaml', slow);
  await page.getByRole('button', { name: 'Stop' }).click();
  await page.getByText('Stopped before the answer was complete.').first().waitFor();
  expect(await page.locator('progress').count()).toBe(0);
  expect(await page.locator('.headline').textContent()).not.toMatch(/[Cc]ut/);
  await go(page, 'sheet');
  await page.getByText('No sheet yet').waitFor();
  await page.getByRole('button', { name: 'Go on' }).click();
  await page.locator('.sheet-cut').waitFor();
  expect(await page.getByText('Stopped').count()).toBe(0);
  expect(said).toEqual([]);
});

test('survives a worker that stops, and says so', async () => {
  const { page } = await again();
  // A finer mesh, so that there is something left to do when it stops.
  const slow = text.replace('bore: 77 mm', 'bore: 75 mm').replace('30 mm', '5 mm');
  await openFile(page, 'slow.yaml', slow);
  await page.locator('.answer progress').waitFor();
  await page.workers()[0]!.evaluate(() => {
    setTimeout(() => {
      throw new Error('cut for the test');
    });
  });
  await page.getByText('A background worker stopped').waitFor();
  await page.locator('.answer progress').waitFor({ state: 'detached' });
  const table = columns(await saved(page, 'filling', 'CSV'));
  for (const state of table['state, recommended']!) expect(state).toBe('computed');
  await page.close();
});

test('a worker that cannot be loaded is asked for a few times, and what failed is not called exact', async () => {
  const { page } = await open({ locale: 'en-GB' });
  let asked = 0;
  await page.route('**/assets/worker-*', (route) => {
    asked++;
    return route.abort();
  });
  await page.reload();
  await take(page, 75);
  await page.locator('.dial .hand-says', { hasText: '5 of 5 speeds failed' }).waitFor();
  expect(await page.locator('.dial .standing.full').count()).toBe(0);
  await page.getByText('A background worker stopped').waitFor();
  // Two workers for each share of the curve and for the cycle that follows, and two at the start.
  await page.waitForTimeout(1000);
  expect(asked).toBeLessThan(30);
  await page.close();
});

test('marks points that failed or did not settle', async () => {
  const { page } = await again();
  const strict = text.replace('settle: 0.02', 'settle: 0.000001\n  maximumCycles: 3');
  await openAnswered(page, 'strict.yaml', strict);
  const table = columns(await saved(page, 'filling', 'CSV'));
  expect(table['state, fitted now']).toContain('not settled');
  await go(page, 'trust');
  await page.getByText('Points to distrust').waitFor();
});
