/**
 * `node --import tsx tests/bench/pageSpeed.ts`: how soon the page answers a length that is tried, and what a frame
 * costs while the mouth is dragged, at the processor's own pace and slowed four times, in one run. The hill-climb
 * four at forty speeds. Times by the clock say little on a machine that others work on: its load stands beside
 * them, what the page's own thread worked, of which others know nothing, and what the solver alone took for the same
 * curves in the same minutes, on two workers of Node: the page can be no faster.
 */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { cpus, loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import type { CDPSession, Page } from 'playwright-core';
import { build } from 'vite';
import { withWorkers } from '../../sim/cli/workers.ts';
import { type PointRunner, readScenario, runLengths } from '../../sim/index.ts';
import { pageConfig } from '../../web/build/pageConfig.ts';
import { launched } from '../page/chromium.ts';
import { serve } from '../page/serve.ts';
import { heading, median, row } from './measure.ts';

const root = join(import.meta.dirname, '../..');
const SPEEDS = Array.from({ length: 40 }, (_, i) => `${3000 + 140 * i} rpm`);
/** Lengths taken one after the other [mm], none computed before. */
const TAKEN = [97, 143, 171, 209, 233];
const MOVES = 90;

/** The demo at forty speeds and few lengths, so that it is built soon. */
function scenario(folder: string): string {
  const text = readFileSync(join(root, 'scenarios/hill-climb.yaml'), 'utf8')
    .replace(/\nspeeds:[\s\S]*?\n\n/, `\nspeeds:\n  at: [${SPEEDS.join(', ')}]\n\n`)
    .replace('step: 20 mm', 'step: 60 mm');
  const file = join(folder, 'forty.yaml');
  writeFileSync(file, text);
  return file;
}

interface Measured {
  /** Until the estimate and until the exact curve, by the clock [ms]. */
  estimate: number[];
  exact: number[];
  /** From frame to frame while the mouth is dragged [ms]. */
  frames: number[];
  /** What the page's thread worked a move, and what painting tiles took besides, by their own clocks [ms]. */
  work: number;
  painting: number;
}

async function taken(page: Page, mm: number): Promise<[number, number]> {
  return page.evaluate(async (to) => {
    const field = document.querySelector<HTMLInputElement>('.dial-box input')!;
    const until = (done: () => boolean) =>
      new Promise<number>((resolve) => {
        const look = () => {
          if (!done()) return;
          watch.disconnect();
          resolve(performance.now());
        };
        // No frame is asked for: each would take a bit of a core that computes.
        const watch = new MutationObserver(look);
        watch.observe(document.body, { subtree: true, childList: true, characterData: true });
        look();
      });
    const began = performance.now();
    field.value = String(to);
    field.dispatchEvent(new Event('change', { bubbles: true }));
    const says = () => document.querySelector('.hand-says')?.textContent ?? '';
    const estimate = await until(() => says().startsWith(`${to}\u00a0mm`));
    const exact = await until(
      () =>
        says().startsWith(`${to}\u00a0mm`) &&
        document.querySelector('.dial .standing.full') !== null,
    );
    return [estimate - began, exact - began];
  }, mm);
}

/** Drags the mouth to and fro, a move a frame; gives the times between frames. */
function dragged(page: Page, moves: number): Promise<number[]> {
  return page.evaluate(async (count) => {
    const frame = () => new Promise<number>((resolve) => requestAnimationFrame(resolve));
    const drawing = document.querySelector('svg.intake')!;
    const box = document.querySelector('.grip-bar')!.getBoundingClientRect();
    const at = (type: string, x: number) =>
      new PointerEvent(type, {
        bubbles: true,
        pointerId: 1,
        buttons: type === 'pointerup' ? 0 : 1,
        clientX: x,
        clientY: box.y + box.height / 2,
      });
    // No pointer is down, so there is none to capture.
    drawing.setPointerCapture = () => {};
    drawing.hasPointerCapture = () => true;
    document.querySelector('.grip-bar')!.dispatchEvent(at('pointerdown', box.x));
    const times: number[] = [];
    let last = await frame();
    for (let i = 0; i < count; i++) {
      drawing.dispatchEvent(at('pointermove', box.x - 120 * Math.sin(i / 12)));
      const now = await frame();
      times.push(now - last);
      last = now;
    }
    drawing.dispatchEvent(at('pointerup', box.x));
    return times;
  }, moves);
}

/** Processor time of the page's thread so far [ms]. */
async function worked(session: CDPSession): Promise<number> {
  const { metrics } = await session.send('Performance.getMetrics');
  return metrics.find(({ name }) => name === 'TaskDuration')!.value * 1e3;
}

interface TraceEvent {
  name: string;
  ph: string;
  /** By the clock of the thread [us]. */
  tdur?: number;
}

/** Work of the threads that paint tiles a move, by their own clocks [ms]. */
async function painted(page: Page): Promise<number> {
  await browser.startTracing(page, { categories: ['devtools.timeline', 'cc'] });
  await dragged(page, MOVES);
  const { traceEvents } = JSON.parse(String(await browser.stopTracing())) as {
    traceEvents: TraceEvent[];
  };
  const tasks = traceEvents.filter(({ name, ph }) => name === 'RasterTask' && ph === 'X');
  return tasks.reduce((sum, { tdur = 0 }) => sum + tdur, 0) / 1e3 / MOVES;
}

async function measure(page: Page, session: CDPSession): Promise<Measured> {
  const [estimate, exact]: [number[], number[]] = [[], []];
  for (const mm of TAKEN) {
    const [first, last] = await taken(page, mm);
    estimate.push(first);
    exact.push(last);
  }
  const before = await worked(session);
  const frames = await dragged(page, MOVES);
  const work = ((await worked(session)) - before) / MOVES;
  const painting = await painted(page);
  await page.getByRole('button', { name: 'Back to the answer' }).click();
  return { estimate, exact, frames, work, painting };
}

const late = (times: readonly number[]) =>
  [...times].sort((a, b) => a - b)[Math.floor(times.length * 0.95)]!;
const ms = (time: number) => `${time.toFixed(time < 100 ? 1 : 0)} ms`;

const folder = mkdtempSync(join(tmpdir(), 'trumpetry-speed-'));
const file = scenario(folder);
const outDir = join(folder, 'page');
await build({
  ...pageConfig({ root, demos: [file], outDir }),
  configFile: false,
  logLevel: 'error',
});
const { server, address } = await serve(outDir);
const browser = await launched();

/** Seconds that the solver alone takes for each of the curves, in threads that have computed before. */
async function alone(pool: PointRunner): Promise<number[]> {
  const { engine, speeds } = readScenario(readFileSync(file, 'utf8'), file);
  const times: number[] = [];
  for (const mm of TAKEN) {
    const began = performance.now();
    await runLengths(engine, [mm / 1e3], speeds, pool);
    times.push(performance.now() - began);
  }
  return times;
}

/** The page opened anew at a pace, and moved once. */
async function opened(rate: number): Promise<[Page, CDPSession]> {
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  page.setDefaultTimeout(120_000);
  // The loader of TypeScript names functions by a helper that pages do not have.
  await page.addInitScript('globalThis.__name = (named) => named');
  const session = await page.context().newCDPSession(page);
  await page.goto(address);
  await page.locator('.sentence strong.best').waitFor();
  await page.locator('#map .js-plotly-plot').waitFor();
  await page.locator('.tiles').waitFor({ timeout: 60_000 });
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => {}));
  await session.send('Performance.enable', { timeDomain: 'threadTicks' });
  await session.send('Emulation.setCPUThrottlingRate', { rate });
  await taken(page, 120);
  return [page, session];
}

console.log(`${cpus().length} cores, Chromium ${browser.version()}, forty speeds`);
heading(
  'slowed',
  'load',
  'estimate',
  'exact, median',
  'exact, worst',
  'solver alone, median',
  'exact / alone',
  'frame, median',
  'frame, 95 %',
  'thread a move',
  'painting a move',
);
await withWorkers(2, async (pool) => {
  await alone(pool);
  for (const rate of [1, 4]) {
    const before = await alone(pool);
    const [page, session] = await opened(rate);
    const { estimate, exact, frames, work, painting } = await measure(page, session);
    await page.close();
    const solver = median([...before, ...(await alone(pool))]);
    row(
      `${rate}x`,
      loadavg()[0]!.toFixed(1),
      ms(median(estimate)),
      ms(median(exact)),
      ms(Math.max(...exact)),
      ms(solver),
      (median(exact) / solver).toFixed(2),
      ms(median(frames)),
      ms(late(frames)),
      ms(work),
      ms(painting),
    );
  }
});
await browser.close();
server.close();
rmSync(folder, { recursive: true, force: true });
