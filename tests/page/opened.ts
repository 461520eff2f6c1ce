/**
 * The page built with the quick scenario, served and opened in a real browser. One page and one browser
 * serve all tests that run in this process, and end with it.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core';
import { build } from 'vite';
import { pageConfig } from '../../web/build/pageConfig.ts';
import { chromiumPath } from './chromium.ts';
import { serve } from './serve.ts';

const root = join(import.meta.dirname, '../..');

export const QUICK = join(import.meta.dirname, 'quick.yaml');

/** How the page that the tests open is built. */
export function quickConfig(outDir: string) {
  return { ...pageConfig({ root, demos: [QUICK], outDir }), configFile: false } as const;
}

let built: Promise<string> | undefined;

/** Folder of the page, built once. */
export function builtPage(): Promise<string> {
  built ??= buildPage();
  return built;
}

async function buildPage(): Promise<string> {
  const outDir = mkdtempSync(join(tmpdir(), 'trumpetry-page-'));
  process.once('exit', () => rmSync(outDir, { recursive: true, force: true }));
  await build({ ...quickConfig(outDir), logLevel: 'error' });
  return outDir;
}

let running: Promise<Browser> | undefined;

/** The browser, begun once; it ends with this process. */
export function browser(): Promise<Browser> {
  running ??= chromium.launch({
    executablePath: chromiumPath(),
    args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking'],
  });
  return running;
}

let served: Promise<string> | undefined;

async function serveBuilt(): Promise<string> {
  const { server, address } = await serve(await builtPage());
  server.unref();
  return address;
}

/** Address of the page. */
export function address(): Promise<string> {
  served ??= serveBuilt();
  return served;
}

export interface Opened {
  page: Page;
  /** Console errors, warnings and exceptions. */
  said: string[];
}

/** Opens the page in a fresh context, at a place where `hash` names one. */
export async function open({
  hash = '',
  ...options
}: BrowserContextOptions & { hash?: string } = {}): Promise<Opened> {
  const context = await (await browser()).newContext({
    viewport: { width: 1440, height: 900 },
    ...options,
  });
  const page = await context.newPage();
  page.setDefaultTimeout(30_000);
  const said: string[] = [];
  page.on('console', (message) => {
    if (['error', 'warning'].includes(message.type())) said.push(message.text());
  });
  page.on('pageerror', (error) => said.push(String(error)));
  await page.goto((await address()) + hash);
  await page.locator('.sentence strong').waitFor();
  return { page, said };
}
