/** The page on a phone's home screen: its manifest, and icons that are there without a network. */
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { type Icon, iconSvg, MANIFEST_ICONS, TOUCH_ICON } from '../../web/build/icons.ts';
import { browser, builtPage, open } from './opened.ts';
import { serve } from './serve.ts';

const mark = readFileSync('web/public/mark.svg', 'utf8');

interface Listed {
  src: string;
  sizes: string;
  type: string;
  purpose?: string;
}

test('has the icons that phones ask for, each of the mark as it is, with no network at all', async () => {
  const { page, said } = await open({ serviceWorkers: 'allow' });
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => {}));
  const session = await page.context().newCDPSession(page);
  const { data, errors } = await session.send('Page.getAppManifest');
  expect(errors).toEqual([]);
  const { icons } = JSON.parse(data!) as { icons: Listed[] };
  const drawn = icons.filter(({ type }) => type === 'image/png');
  const asked = drawn.map(({ sizes, purpose }) => `${sizes} ${purpose}`);
  expect(asked).toEqual(['192x192 any', '512x512 any', '512x512 maskable']);
  const touch = (await page.locator('link[rel=apple-touch-icon]').getAttribute('href'))!;
  await session.send('Network.clearBrowserCache');
  await page.context().setOffline(true);
  await page.reload();
  for (const icon of [...MANIFEST_ICONS, TOUCH_ICON]) {
    const src = icon === TOUCH_ICON ? touch : drawn.find((one) => one.src.includes(icon.file))!.src;
    const kept = await pixels(page, src);
    expect(kept.width, src).toBe(icon.size);
    expect(kept.height, src).toBe(icon.size);
    const afresh = await pixels(page, iconSvg(mark, icon));
    // Edges are smoothed in another way from one Chromium to the next.
    expect(apart(kept.bytes, afresh.bytes), src).toBeLessThan(0.5);
    if (icon.corner === 0) expect(clear(kept.bytes), `${src} is opaque`).toBe(0);
    if (icon.purpose === 'maskable') outsideIsPaper(icon, kept.bytes);
  }
  expect(said).toEqual([]);
  await page.close();
});

/** A picture of the page's folder, or one given as SVG, as the page sees it: red, green, blue and cover a pixel. */
async function pixels(page: Page, picture: string) {
  const { width, height, data } = await page.evaluate(async (of) => {
    const image = new Image();
    image.src = of.startsWith('<svg')
      ? URL.createObjectURL(new Blob([of], { type: 'image/svg+xml' }))
      : of;
    await image.decode();
    const { naturalWidth: width, naturalHeight: height } = image;
    const context = Object.assign(document.createElement('canvas'), { width, height }).getContext(
      '2d',
    )!;
    context.drawImage(image, 0, 0);
    const { data } = context.getImageData(0, 0, width, height);
    let text = '';
    for (const byte of data) text += String.fromCharCode(byte);
    return { width, height, data: btoa(text) };
  }, picture);
  return { width, height, bytes: Buffer.from(data, 'base64') };
}

/** Mean difference of two pictures, of 255. */
const apart = (a: Buffer, b: Buffer) =>
  a.reduce((sum, byte, i) => sum + Math.abs(byte - b[i]!), 0) / a.length;

/** Pixels that let something through. */
const clear = (bytes: Buffer) => bytes.filter((byte, i) => i % 4 === 3 && byte < 255).length;

/** The mark lies inside the circle that every mask leaves, and is there. */
function outsideIsPaper({ size }: Icon, bytes: Buffer): void {
  const paper = bytes.subarray(0, 4);
  let furthest = 0;
  for (let at = 0; at < bytes.length; at += 4) {
    if (bytes.subarray(at, at + 4).equals(paper)) continue;
    const [x, y] = [(at / 4) % size, Math.floor(at / 4 / size)];
    furthest = Math.max(furthest, Math.hypot(x + 0.5 - size / 2, y + 0.5 - size / 2));
  }
  expect(furthest / size).toBeGreaterThan(0.3);
  expect(furthest / size).toBeLessThan(0.4);
}

test('a new build waits until the page is closed, then takes over and leaves nothing of the old', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'trumpetry-newer-'));
  cpSync(await builtPage(), folder, { recursive: true });
  const { server, address } = await serve(folder);
  const context = await (await browser()).newContext();
  try {
    const first = await context.newPage();
    await first.goto(address);
    await first.evaluate(() => navigator.serviceWorker.ready.then(() => {}));
    // From its second opening on it is the worker's page.
    await first.reload();
    const title = await first.title();
    renew(folder, title);
    await first.evaluate(async () => {
      const kept = await navigator.serviceWorker.ready;
      await kept.update();
      while (!kept.waiting) await new Promise((resolve) => setTimeout(resolve, 50));
    });
    await first.reload();
    expect(await first.title()).toBe(title);
    await first.close();
    // The worker of a page that has just closed ends a moment later: no page may be open then.
    const next = async () => {
      const page = await context.newPage();
      await page.goto(address);
      const seen = { title: await page.title(), kept: await page.evaluate(() => caches.keys()) };
      await page.close();
      return seen;
    };
    await expect
      .poll(next, { timeout: 60_000, interval: 1000 })
      .toEqual({ title: `Newer ${title}`, kept: [NEWER] });
  } finally {
    await context.close();
    server.close();
    rmSync(folder, { recursive: true });
  }
});

const NEWER = 'trumpetry-0123456789abcdef';

/** Another build of the page: of another title, and so of another digest. */
function renew(folder: string, title: string): void {
  for (const [file, from, to] of [
    ['index.html', `<title>${title}`, `<title>Newer ${title}`],
    ['sw.js', /trumpetry-[0-9a-f]{16}/, NEWER],
  ] as const) {
    const text = readFileSync(join(folder, file), 'utf8');
    writeFileSync(join(folder, file), text.replace(from, to));
  }
}
