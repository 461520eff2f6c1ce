/**
 * The page built with the quick scenario, served and opened in a real browser. One page and one browser
 * serve all tests that run in this process, and end with it.
 */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import type { Browser, BrowserContext, BrowserContextOptions, Page } from 'playwright-core';
import { build } from 'vite';
import { pageConfig } from '../../web/build/pageConfig.ts';
import { launched } from './chromium.ts';
import { more, QUICK } from './quick.ts';
import { choose } from './reader.ts';
import { serve } from './serve.ts';

const root = join(import.meta.dirname, '../..');

/** How the page that the tests open is built: with the answers to both of their engines. */
export function quickConfig(outDir: string) {
  const also = join(mkdtempSync(join(tmpdir(), 'trumpetry-more-')), 'more.yaml');
  writeFileSync(also, more);
  process.once('exit', () => rmSync(dirname(also), { recursive: true, force: true }));
  return { ...pageConfig({ root, demos: [QUICK, also], outDir }), configFile: false } as const;
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
  running ??= launched();
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

let shared: Promise<BrowserContext> | undefined;

/** One context for all that ask for nothing of their own: it keeps what it has fetched and compiled. */
function sharedContext(): Promise<BrowserContext> {
  shared ??= beginShared();
  return shared;
}

async function beginShared(): Promise<BrowserContext> {
  const context = await (await browser()).newContext({ viewport: DESK, serviceWorkers: 'block' });
  // Each page begins with an empty store, and keeps its own over a reload.
  await context.addInitScript(() => {
    if (sessionStorage.getItem('begun')) return;
    localStorage.clear();
    sessionStorage.setItem('begun', 'yes');
  });
  return context;
}

/** Pages of the test that runs. */
const opened: Page[] = [];

const DESK = { width: 1440, height: 900 };

/** The tab that was opened last, where nothing of its own was asked for it. */
let resting: Opened | undefined;

/** Opens the page in a tab of its own, at a place where `hash` names one. */
export async function open({
  hash = '',
  ...options
}: BrowserContextOptions & { hash?: string } = {}): Promise<Opened> {
  // Tests come one after the other: what a failed one left open must not compute on beside this one.
  for (const left of opened.splice(0)) await left.close();
  const own = Object.keys(options).length > 0;
  const context = own
    ? await (await browser()).newContext({ viewport: DESK, serviceWorkers: 'block', ...options })
    : await sharedContext();
  const page = await context.newPage();
  opened.push(page);
  page.setDefaultTimeout(30_000);
  const said: string[] = [];
  page.on('console', (message) => {
    if (message.text() === 'Service Worker registration blocked by Playwright') return;
    if (['error', 'warning'].includes(message.type())) said.push(message.text());
  });
  page.on('pageerror', (error) => said.push(String(error)));
  await page.goto((await address()) + hash);
  await page.locator('.sentence strong').waitFor({ state: 'attached' });
  resting = own ? undefined : { page, said };
  return { page, said };
}

/**
 * The tab of the test before, at the first place and with the first demo, or a new one: for tests that ask nothing of
 * how the page begins, since to begin takes a core two to four seconds. Points computed there are known.
 */
export async function again(): Promise<Opened> {
  if (!resting || resting.page.isClosed()) return open();
  const { page, said } = resting;
  said.length = 0;
  await page.setViewportSize(DESK);
  await page.emulateMedia({ media: null, colorScheme: null });
  await page.evaluate(() => {
    location.hash = '#/length';
  });
  await page.locator('.bench').waitFor();
  await choose(page, 'quick.yaml');
  const back = page.getByRole('button', { name: /^Back/ });
  if (await back.isEnabled()) await back.click();
  return resting;
}
