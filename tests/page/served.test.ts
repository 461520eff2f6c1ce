/** The built page as `npm run page` serves it: on this machine only, framed by none, for no other place. */
import { cpSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createServer, get, type IncomingMessage } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { text as textOf } from 'node:stream/consumers';
import type { Page } from 'playwright-core';
import { type PreviewServer, preview } from 'vite';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { browser, builtPage, quickConfig } from './opened.ts';
import { serve } from './serve.ts';

const folder = mkdtempSync(join(tmpdir(), 'trumpetry-served-'));
const outDir = join(folder, 'page');
const beside = join(folder, 'beside.txt');
let server: PreviewServer;
let at: AddressInfo;

beforeAll(async () => {
  const config = quickConfig(outDir);
  cpSync(await builtPage(), outDir, { recursive: true });
  server = await preview({ ...config, preview: { ...config.preview, port: 0 } });
  at = server.httpServer.address() as AddressInfo;
});

afterAll(async () => {
  await server.close();
  rmSync(folder, { recursive: true });
});

function answer(path: string, headers: Record<string, string> = {}): Promise<IncomingMessage> {
  return new Promise((resolve, reject) => {
    get({ port: at.port, path, headers }, resolve).on('error', reject);
  });
}

test('on this machine only', () => {
  expect(at.address).toBe('127.0.0.1');
});

test.each(['/', '/mark.svg', '/nowhere'])('%s: headers of the policy', async (path) => {
  const { headers } = await answer(path, { origin: 'http://localhost:1' });
  expect(headers['content-security-policy']).toBe("frame-ancestors 'none'");
  expect(headers['x-content-type-options']).toBe('nosniff');
  expect(headers['cross-origin-resource-policy']).toBe('same-origin');
  expect(Object.keys(headers).filter((name) => name.startsWith('access-control'))).toEqual([]);
});

test('a name of elsewhere that points here is refused', async () => {
  expect((await answer('/', { host: 'elsewhere.example' })).statusCode).toBe(403);
});

test.each(['/../beside.txt', '/%2e%2e/beside.txt', `/@fs${beside}`, beside])(
  '%s: nothing outside the page is served',
  async (path) => {
    writeFileSync(beside, 'not to be read');
    expect(await textOf(await answer(path))).not.toContain('not to be read');
    writeFileSync(join(outDir, 'inside.txt'), 'not to be read');
    expect(await textOf(await answer('/inside.txt'))).toContain('not to be read');
  },
);

test('it works so in a browser, and nobody frames it', async () => {
  const context = await (await browser()).newContext();
  try {
    const page = await context.newPage();
    const said: string[] = [];
    page.on('console', (message) => {
      if (['error', 'warning'].includes(message.type())) said.push(message.text());
    });
    const address = `http://127.0.0.1:${at.port}/`;
    await page.goto(address);
    await page.locator('.sentence strong').waitFor();
    expect(said).toEqual([]);
    expect(await framed(page, address)).toBe('chrome-error://chromewebdata/');
    const other = await serve(outDir);
    expect(await framed(page, other.address)).toBe(other.address);
    other.server.close();
  } finally {
    await context.close();
  }
});

/** Where a frame of another page has got to that was sent to the address. */
async function framed(page: Page, address: string): Promise<string> {
  const outer = createServer((_, response) => response.end(`<iframe src="${address}"></iframe>`));
  await new Promise<void>((resolve) => outer.listen(0, '127.0.0.1', resolve));
  await page.goto(`http://127.0.0.1:${(outer.address() as AddressInfo).port}/`);
  await page.waitForLoadState('load');
  outer.close();
  return page.frames()[1]!.url();
}
