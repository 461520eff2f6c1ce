/** Every place on narrow windows: phones, and desks at 200 and 400 %. */
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { again, open } from './opened.ts';
import { choose, places, take } from './reader.ts';

test('no place scrolls sideways, on phones and at 200 and 400 % of a desk', async () => {
  const { page } = await again();
  await take(page, 80);
  const all = await places(page);
  // 320 px are 400 % of 1280, 720 are 200 % of 1440.
  for (const [width, height] of [
    [320, 256],
    [390, 740],
    [720, 450],
  ] as const) {
    await page.setViewportSize({ width, height });
    for (const place of all) {
      await page.evaluate((to) => {
        location.hash = `#/${to}`;
      }, place);
      await page.locator(`.places a[href="#/${place}"][aria-current]`).waitFor();
      const wide = await page.evaluate(() => document.documentElement.scrollWidth);
      expect(wide, `${place} at ${width}`).toBeLessThanOrEqual(width);
      expect(await clipped(page), `clipped at ${place}, ${width}`).toEqual([]);
      expect(await covered(page), `covered at ${place}, ${width}`).toBeLessThan(0.35);
      const name = (await page.locator('.places [aria-current]').boundingBox())!;
      // Scrolling goes by whole pixels.
      expect(Math.floor(name.x + name.width), `name of ${place} at ${width}`).toBeLessThanOrEqual(
        width,
      );
      expect(Math.ceil(name.x), `name of ${place} at ${width}`).toBeGreaterThanOrEqual(0);
    }
  }
});

test('on a desk the name of every place is in sight', async () => {
  const { page } = await again();
  await page.setViewportSize({ width: 1024, height: 768 });
  await choose(page, 'more.yaml');
  const links = page.locator('.places a');
  expect(await links.count()).toBeGreaterThan(12);
  for (const link of await links.all()) {
    const { x, width } = (await link.boundingBox())!;
    expect(x, (await link.textContent()) ?? '').toBeGreaterThanOrEqual(0);
    expect(x + width, (await link.textContent()) ?? '').toBeLessThanOrEqual(1024);
  }
});

/** Texts of which a part cannot be seen, but for those that only a reader of the screen is told. */
function clipped(page: Page): Promise<(string | null)[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll('main *, .top *')]
      .filter((one) => {
        const { overflowX, overflowY, clipPath } = getComputedStyle(one);
        const text = [...one.childNodes].some(
          (node) => node.nodeType === Node.TEXT_NODE && node.textContent!.trim() !== '',
        );
        const across = overflowX === 'hidden' && one.scrollWidth > one.clientWidth + 1;
        const down = overflowY === 'hidden' && one.scrollHeight > one.clientHeight + 1;
        return text && clipPath === 'none' && (across || down);
      })
      .map((one) => one.textContent),
  );
}

/** Share of the window's height that what stays where it is takes from what scrolls. */
function covered(page: Page): Promise<number> {
  return page.evaluate(() =>
    [...document.querySelectorAll('.page *')]
      .filter((one) => ['fixed', 'sticky'].includes(getComputedStyle(one).position))
      .filter((one) => !one.closest('.numbers'))
      .reduce((sum, one) => sum + one.getBoundingClientRect().height / innerHeight, 0),
  );
}

test('on a phone the dial spans the width, steps by a millimetre, and stays in sight', async () => {
  const { page } = await open({
    viewport: { width: 390, height: 844 },
    hasTouch: true,
    isMobile: true,
  });
  const slider = page.getByLabel('Trumpet length in millimetres', { exact: true });
  const before = Number(await slider.inputValue());
  await page.getByRole('button', { name: 'longer' }).tap();
  expect(Number(await slider.inputValue())).toBe(before + 1);
  await page.getByRole('button', { name: 'shorter' }).tap();
  expect(Number(await slider.inputValue())).toBe(before);
  const dial = (await page.locator('.dial').boundingBox())!;
  expect(dial.width).toBe(390);
  expect(dial.y + dial.height).toBeLessThanOrEqual(844);
  await page.getByRole('button', { name: 'Map' }).tap();
  await expect
    .poll(async () => Math.round((await page.locator('.bench .map').boundingBox())!.x))
    .toBeLessThan(20);
  const pager = page.locator('.pager [aria-current]');
  await expect.poll(() => pager.textContent()).toBe('Map');
  // Swiped to the right, the panel before it comes, and is the one that is marked.
  await swipe(page, (await page.locator('.bench').boundingBox())!.y + 120);
  await expect.poll(() => pager.textContent()).toBe('Wave');
  // It comes to rest at its place, not where the finger left it.
  const { x } = (await page.locator('.bench').boundingBox())!;
  await expect
    .poll(async () => Math.abs((await page.locator('.bench .left').boundingBox())!.x - x))
    .toBeLessThan(2);
  await page.close();
});

/** A finger from the left to the right, at a height of the window [px]. */
async function swipe(page: Page, y: number): Promise<void> {
  const session = await page.context().newCDPSession(page);
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', ...touchPoints: { x: number }[]) =>
    session.send('Input.dispatchTouchEvent', {
      type,
      touchPoints: touchPoints.map(({ x }) => ({ x, y })),
    });
  await touch('touchStart', { x: 60 });
  for (let x = 80; x <= 320; x += 20) await touch('touchMove', { x });
  await touch('touchEnd');
}
