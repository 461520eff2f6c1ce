/** The page built with the quick scenario, served and opened in a real browser, for the tests. */
import { mkdtempSync, rmSync } from 'node:fs';
import type { Server } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core';
import { build } from 'vite';
import { pageConfig } from '../../web/build/pageConfig.ts';
import { chromiumPath } from './chromium.ts';
import { serve } from './serve.ts';

const root = join(import.meta.dirname, '../..');

export const QUICK = join(import.meta.dirname, 'quick.yaml');

export interface Site {
  address: string;
  /** Opens the page in a fresh context; `said` gathers console errors, warnings and exceptions. */
  open(
    options?: BrowserContextOptions & { hash?: string },
  ): Promise<{ page: Page; said: string[] }>;
  close(): Promise<void>;
}

export async function site(): Promise<Site> {
  const outDir = mkdtempSync(join(tmpdir(), 'trumpetry-page-'));
  const config = pageConfig({ root, demos: [QUICK], outDir });
  await build({ ...config, configFile: false, logLevel: 'error' });
  const { server, address } = await serve(outDir);
  const browser = await chromium.launch({
    executablePath: chromiumPath(),
    args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking'],
  });
  return {
    address,
    open: ({ hash = '', ...options } = {}) => open(browser, address + hash, options),
    close: () => close(browser, server, outDir),
  };
}

async function open(browser: Browser, address: string, options: BrowserContextOptions) {
  const context = await browser.newContext({ viewport: { width: 1280, height: 900 }, ...options });
  const page = await context.newPage();
  page.setDefaultTimeout(60_000);
  const said: string[] = [];
  page.on('console', (message) => {
    if (['error', 'warning'].includes(message.type())) said.push(message.text());
  });
  page.on('pageerror', (error) => said.push(String(error)));
  await page.goto(address);
  await page.locator('.sentence strong').waitFor();
  return { page, said };
}

async function close(browser: Browser, server: Server, outDir: string): Promise<void> {
  await browser.close();
  server.close();
  rmSync(outDir, { recursive: true });
}
