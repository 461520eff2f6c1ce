/** The page in a real browser: what a reader does, and what the core says to the same question. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import type { Download, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import {
  askedScrews,
  curveDocument,
  decisionWords,
  idleSentences,
  idleStudyOf,
  isFailure,
  type LengthStudy,
  lengthStudy,
  listenTables,
  mixtureTrims,
  pedalSentences,
  pedalStudyOf,
  readScenario,
  readTrims,
  runHere,
  runJob,
  runLengths,
  screwsStudy,
  sensorStudy,
  shelfWords,
  soundOf,
  sweepDocument,
  TASKS,
} from '../../sim/index.ts';
import { questionOf } from '../../web/compute/question.ts';
import { QUICK, type Site, site } from './opened.ts';

const text = readFileSync(QUICK, 'utf8');
const scenario = readScenario(text, 'quick.yaml');
const { engine, speeds, sweep, target } = scenario;

let at: Site;
let study: LengthStudy;

beforeAll(async () => {
  at = await site();
  study = await lengthStudy(questionOf(scenario), runHere);
});

afterAll(() => at.close());

/** Relative difference of two numbers. */
const apart = (a: number, b: number) => Math.abs(a - b) / Math.abs(b);

const exact = (page: Page) => page.getByLabel('Trumpet length in millimetres, exact');

async function take(page: Page, mm: number): Promise<void> {
  await exact(page).fill(String(mm));
  await exact(page).press('Enter');
}

async function saved(page: Page, view: string, kind: 'CSV' | 'PNG'): Promise<Buffer> {
  // On a loaded machine a click on a plot just coming near gave no download in four of five runs; the
  // cause was not found, nor could it be brought about again. So the plot is let settle first.
  await page.locator(`#${view} .take`).scrollIntoViewIfNeeded();
  await page.locator(`#${view} .js-plotly-plot .main-svg`).first().waitFor();
  await page.waitForTimeout(150);
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page
      .locator(`#${view} .take`)
      .getByRole('button', { name: `(${kind})` })
      .click(),
  ]);
  return readDownload(download);
}

async function readDownload(download: Download): Promise<Buffer> {
  return readFileSync(await download.path());
}

/** Columns of a CSV by name. */
function columns(bytes: Buffer): Record<string, string[]> {
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

function column(table: Record<string, string[]>, words: string): number[] {
  const name = Object.keys(table).find((key) => key.includes(words));
  expect(name, `a column with "${words}" among ${Object.keys(table).join('; ')}`).toBeDefined();
  return table[name!]!.map(Number);
}

const fullAccuracy = (page: Page) => page.locator('.length-bar .standing.full').waitFor();

/** A figure of ten digits, as documents write it; the bits are the same (bytes.test.ts). */
const TEN_DIGITS = 1e-9;

describe('the answer', () => {
  test('stands on the page at once, to the digit as the core computes it now', async () => {
    const began = performance.now();
    const { page, said } = await at.open();
    expect(performance.now() - began).toBeLessThan(5000);
    const shown = await page.locator('.answer').textContent();
    const { gain, price, inside, edge, found } = decisionWords(study);
    expect(shown).toContain(`${Math.round(study.recommended.length * 1e3)}\u00a0mm`);
    for (const sentence of [gain, price, inside, edge, found]) expect(shown).toContain(sentence);
    await page.locator('#filling .js-plotly-plot').waitFor();
    expect(said).toEqual([]);
    const table = columns(await saved(page, 'filling', 'CSV'));
    const document = JSON.parse(JSON.stringify(sweepDocument(study, scenario)));
    const best = column(table, 'recommended');
    expect(best).toHaveLength(speeds.length);
    best.forEach((value, i) => {
      expect(apart(value, document.recommended.volumetric_efficiency[i]!)).toBeLessThan(1e-9);
    });
    const map = columns(await saved(page, 'map', 'CSV'));
    speeds.forEach((speed, j) => {
      column(map, `at ${speed} rpm`).forEach((value, i) => {
        expect(apart(value, document.volumetric_efficiency[i]![j]!)).toBeLessThan(1e-9);
      });
    });
    await page.context().close();
  });

  test('is computed here where the build has none, and the same again', async () => {
    const { page, said } = await at.open();
    await page.getByLabel('Bore').fill('78 mm');
    await page.getByLabel('Bore').press('Enter');
    await page.getByText('for the figures before your last change').waitFor();
    await page.locator('.answer progress').waitFor();
    await page.locator('.answer progress').waitFor({ state: 'detached' });
    const changed = readScenario(text.replace('bore: 77 mm', 'bore: 78 mm'), 'quick.yaml');
    const there = await lengthStudy(
      { engine: changed.engine, lengths: sweep.lengths, speeds, target },
      runHere,
    );
    const table = columns(await saved(page, 'filling', 'CSV'));
    const length = Math.round(there.recommended.length * 1e3);
    const shown = column(table, `recommended, ${length}`);
    there.recommended.outcomes.forEach((outcome, i) => {
      const value = 'failure' in outcome ? Number.NaN : outcome.volumetricEfficiency;
      expect(apart(shown[i]!, value)).toBeLessThan(1e-9);
    });
    expect(said).toEqual([]);
    await page.context().close();
  });
});

describe('the length under the hand', () => {
  test('shows a preview within half a second, then what the core gives for it', async () => {
    const { page, said } = await at.open();
    await page.locator('#filling .js-plotly-plot').waitFor();
    const lines = () => page.locator('#filling .scatterlayer .trace').count();
    expect(await lines()).toBe(2);
    const began = performance.now();
    await take(page, 97);
    await page.locator('.length-bar .standing').waitFor();
    await expect.poll(lines, { interval: 20, timeout: 2000 }).toBe(3);
    expect(performance.now() - began).toBeLessThan(500);
    await fullAccuracy(page);
    const table = columns(await saved(page, 'filling', 'CSV'));
    const [curve] = await runLengths(engine, [0.097], speeds, runHere);
    const document = JSON.parse(JSON.stringify(curveDocument(curve!, scenario)));
    column(table, 'under your hand, 97').forEach((value, i) => {
      expect(apart(value, document.volumetric_efficiency[i]!)).toBeLessThan(TEN_DIGITS);
    });
    const pressures = columns(await saved(page, 'closing-pressure', 'CSV'));
    column(pressures, 'under your hand, 97').forEach((value, i) => {
      expect(apart(value, document.pressure_at_valve_closing_kPa[i]!)).toBeLessThan(TEN_DIGITS);
    });
    expect(said).toEqual([]);
    await page.context().close();
  });

  test('may have the WebAssembly kernel in its workers: the policy of the page lets them', async () => {
    const { page } = await at.open();
    await page.locator('#filling .js-plotly-plot').waitFor();
    await take(page, 98);
    await fullAccuracy(page);
    const [worker] = page.workers();
    const compiles = await worker!.evaluate(() => {
      const empty = new Uint8Array([0, 0x61, 0x73, 0x6d, 1, 0, 0, 0]);
      return new WebAssembly.Module(empty) instanceof WebAssembly.Module;
    });
    expect(compiles).toBe(true);
    await page.context().close();
  });

  test('follows the keyboard alone', async () => {
    const { page } = await at.open();
    await page.keyboard.press('Tab');
    await expect
      .poll(() => page.evaluate(() => document.activeElement?.textContent))
      .toMatch(/Skip/);
    const slider = page.getByLabel('Trumpet length in millimetres', { exact: true });
    for (let i = 0; i < 30; i++) {
      if (await slider.evaluate((node) => node === document.activeElement)) break;
      await page.keyboard.press('Tab');
    }
    const before = Number(await slider.inputValue());
    await page.keyboard.press('ArrowLeft');
    await page.keyboard.press('ArrowLeft');
    expect(Number(await slider.inputValue())).toBe(before - 2);
    await fullAccuracy(page);
    await page.keyboard.press('Tab');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await page.getByText('Take a length in your hand').waitFor();
    await page.context().close();
  });
});

describe('computing', () => {
  test('stops when told and goes on where it was', async () => {
    const { page, said } = await at.open();
    await page.getByLabel('Bore').fill('76 mm');
    await page.getByLabel('Bore').press('Enter');
    await page.getByRole('button', { name: 'Stop' }).click();
    await page.getByText('Stopped. What was computed so far is shown.').waitFor();
    expect(await page.locator('progress').count()).toBe(0);
    await page.getByRole('button', { name: 'Go on' }).click();
    await page.locator('.answer progress').waitFor();
    await page.locator('.answer progress').waitFor({ state: 'detached' });
    expect(await page.getByText('Stopped.').count()).toBe(0);
    expect(said).toEqual([]);
    await page.context().close();
  });

  test('survives a worker that stops, and says so', async () => {
    const { page } = await at.open();
    await page.getByLabel('Bore').fill('75 mm');
    await page.getByLabel('Bore').press('Enter');
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
    await page.context().close();
  });

  test('marks points that failed or did not settle', async () => {
    const { page } = await at.open();
    const strict = text.replace('settle: 0.02', 'settle: 0.000001\n  maximumCycles: 3');
    await open(page, 'strict.yaml', strict);
    await page.getByText('Points to distrust').waitFor();
    const table = columns(await saved(page, 'filling', 'CSV'));
    expect(table['state, fitted now']).toContain('not settled');
    await page.context().close();
  });
});

async function open(page: Page, name: string, content: string): Promise<void> {
  await page.locator('input[type=file][accept*=yaml]').setInputFiles({
    name,
    mimeType: 'text/yaml',
    buffer: Buffer.from(content),
  });
}

describe('the scenario', () => {
  test('shows an error of a bad file at its line, and takes it back', async () => {
    const { page, said } = await at.open();
    await open(page, 'bad.yaml', text.replace('bore: 77 mm', 'boar: 77 mm'));
    const line = text.split('\n').findIndex((one) => one.includes('bore: 77 mm')) + 1;
    await page.locator('#your-engine').scrollIntoViewIfNeeded();
    await page
      .getByRole('button', { name: `line ${line}` })
      .first()
      .waitFor();
    await page.locator('.issues').getByText('did you mean "bore"?').waitFor();
    await page.locator('.cm-gutter-lint .cm-lint-marker-error').first().waitFor();
    await page.getByText('for the figures before your last change').waitFor();
    await page
      .getByRole('button', { name: `line ${line}` })
      .first()
      .click();
    await page.locator('.cm-line', { hasText: 'boar' }).getByText('boar').dblclick();
    await page.keyboard.type('bore');
    await page.locator('.issues').waitFor({ state: 'detached' });
    expect(said).toEqual([]);
    await page.context().close();
  });

  test('keeps remarks and layout when the form writes into it, and marks a wrong figure', async () => {
    const { page } = await at.open();
    await page.getByLabel('Trumpet fitted now').fill('70 mm');
    await page.getByLabel('Trumpet fitted now').press('Enter');
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save scenario' }).click(),
    ]);
    const kept = (await readDownload(download)).toString('utf8');
    expect(kept).toBe(text.replace('length: 60 mm #', 'length: 70 mm #'));
    await page.getByLabel('Bore').fill('77');
    await page.getByLabel('Bore').press('Enter');
    await page.locator('.wrong-says').getByText('has no unit').waitFor();
    expect(await page.getByLabel('Bore').getAttribute('aria-invalid')).toBe('true');
    await page.context().close();
  });

  test('travels in a link and comes back the same', async () => {
    const { page } = await at.open();
    await page.getByLabel('Bore').fill('79 mm');
    await page.getByLabel('Bore').press('Enter');
    await page.getByRole('button', { name: 'Copy a link' }).click();
    await page.waitForFunction(() => location.hash.length > 10);
    const hash = new URL(page.url()).hash;
    await page.context().close();
    const there = await at.open({ hash });
    expect(await there.page.getByLabel('Bore').inputValue()).toBe('79 mm');
    await there.page.context().close();
    const broken = await at.open({ hash: hash.slice(0, -40) });
    await broken.page.getByText('no readable scenario').waitFor();
    await broken.page.context().close();
  });
});

describe('the page', () => {
  test('saves every plot as picture and numbers, plays and steps through the wave', async () => {
    const { page, said } = await at.open();
    await page.locator('#wave').scrollIntoViewIfNeeded();
    await page.locator('#wave .js-plotly-plot').waitFor();
    for (const view of await views(page, ':has(.take button:not([disabled]))')) {
      const bytes = await saved(page, view, 'PNG');
      expect(bytes.subarray(1, 4).toString('latin1'), view).toBe('PNG');
      expect(bytes.length, view).toBeGreaterThan(10_000);
      const table = columns(await saved(page, view, 'CSV'));
      expect(Object.values(table)[0]!.length, view).toBeGreaterThan(2);
    }
    const angle = page.getByLabel('Crank angle');
    expect(await angle.inputValue()).toBe('540');
    await page.getByRole('button', { name: 'Step on 5 degrees' }).click();
    expect(await angle.inputValue()).toBe('545');
    await page.getByRole('button', { name: 'Play' }).click();
    await expect.poll(() => angle.inputValue()).not.toBe('545');
    await page.getByRole('button', { name: 'Pause' }).click();
    expect(said).toEqual([]);
    await page.context().close();
  });

  test('asks nothing of any other place, and works with the network cut', async () => {
    const { page, said } = await at.open();
    const asked: string[] = [];
    page.on('request', (request) => asked.push(request.url()));
    for (const view of await views(page)) await page.locator(`#${view}`).scrollIntoViewIfNeeded();
    await page.locator('.cm-content').waitFor();
    await page.context().setOffline(true);
    await take(page, 75);
    await fullAccuracy(page);
    await page.getByLabel('Bore').fill('74 mm');
    await page.getByLabel('Bore').press('Enter');
    await page.locator('.answer progress').waitFor();
    await page.locator('.answer progress').waitFor({ state: 'detached' });
    for (const url of asked)
      expect(url.startsWith(at.address) || url.startsWith('data:'), url).toBe(true);
    expect(said).toEqual([]);
    await page.context().close();
  });

  test.each(['light', 'dark'] as const)('is accessible, %s', async (colorScheme) => {
    const { page } = await at.open({ colorScheme, bypassCSP: true });
    await take(page, 80);
    await page.locator('#wave').scrollIntoViewIfNeeded();
    await page.locator('#wave .js-plotly-plot').waitFor();
    await page.locator('#filling').getByRole('button', { name: 'Show numbers' }).click();
    await page.locator('#your-engine').scrollIntoViewIfNeeded();
    await page.locator('.cm-content').waitFor();
    await fullAccuracy(page);
    await page.addScriptTag({ path: createRequire(import.meta.url).resolve('axe-core') });
    const found = await page.evaluate(async () => {
      const { axe } = window as unknown as { axe: typeof import('axe-core') };
      const { violations } = await axe.run();
      return violations.map(({ id, impact, nodes }) => ({ id, impact, at: nodes[0]?.html }));
    });
    expect(found.filter(({ impact }) => impact !== 'minor')).toEqual([]);
    await page.context().close();
  });

  test('fits a phone without sideways scroll', async () => {
    const { page } = await at.open({ viewport: { width: 360, height: 740 } });
    await take(page, 80);
    await page.locator('#wave').scrollIntoViewIfNeeded();
    await page.locator('#wave .js-plotly-plot').waitFor();
    await page.locator('#your-engine').scrollIntoViewIfNeeded();
    await page.locator('.cm-content').waitFor();
    const [wide, window] = await page.evaluate(() => [
      document.documentElement.scrollWidth,
      innerWidth,
    ]);
    expect(wide).toBeLessThanOrEqual(window!);
    await page.context().close();
  });
});

describe('questions worked out when asked', () => {
  /** The quick engine with a shelf, a floor, injectors and a doubtful bore, at two speeds. */
  const more = `${readFileSync(join(import.meta.dirname, 'questions.yaml'), 'utf8')}\n${text
    .replace('bore: 77 mm', 'bore: 77 mm +- 0.5 mm')
    .replace('from: 8000 rpm\n  to: 12000', 'from: 10000 rpm\n  to: 11000')
    .replace('from: 9000 rpm', 'from: 10000 rpm')}`;

  test('doubt, choices, shelf and injectors agree with the core', async () => {
    const { page, said } = await at.open();
    await open(page, 'more.yaml', more);
    await page.locator('#shelf .finding').waitFor();
    const asked = readScenario(more, 'more.yaml');
    const question = { ...asked, lengths: asked.sweep.lengths, fit: asked.fit! };
    const answer = await lengthStudy(question, runHere);
    expect(await page.locator('#shelf .finding').textContent()).toBe(shelfWords(answer));
    const choices = columns(await saved(page, 'price-of-gain', 'CSV'));
    expect(column(choices, 'gain_in_band_percent')).toHaveLength(answer.weighed.length);
    answer.weighed.forEach(({ gainPercent }, i) => {
      expect(column(choices, 'gain_in_band_percent')[i]).toBeCloseTo(gainPercent, 7);
    });
    expect(column(columns(await saved(page, 'shelf', 'CSV')), 'length_mm')).toEqual([80, 160]);

    const begin = page.getByRole('button', { name: 'Work out how sure it is' });
    await begin.click();
    await page.locator('#doubt').getByRole('button', { name: 'Stop' }).click();
    await page.locator('#doubt').getByText('Stopped.').waitFor();
    await page.locator('#doubt').getByRole('button', { name: 'Go on' }).click();
    await page.getByRole('button', { name: 'Compare the placements' }).click();
    await page.locator('#doubt .finding').waitFor();
    const curves = columns(await saved(page, 'doubt', 'CSV'));
    const [low, high] = [column(curves, 'p5'), column(curves, 'p95')];
    low.forEach((value, i) => {
      expect(high[i]).toBeGreaterThan(value);
    });
    const ranking = columns(await saved(page, 'measure-next', 'CSV'));
    expect(ranking.key).toEqual(['engine.bore']);

    await page.locator('#injector-place .finding').waitFor();
    // All fuel from above at the highest speed: one point stands for all, which do not know of each other.
    const staging = { speed: [0], share: [1], fromLoad: 0, loadBlend: 0 };
    const speed = asked.speeds.at(-1)!;
    const injectors = { ...asked.injectors!, staging };
    const point = runJob({ engine: { ...asked.engine, injectors }, speed });
    const place = columns(await saved(page, 'injector-place', 'CSV'));
    const shown = column(place, 'efficiency_above').at(-1)!;
    const own = isFailure(point) ? Number.NaN : point.volumetricEfficiency;
    expect(apart(shown, own)).toBeLessThan(TEN_DIGITS);
    for (const view of ['split', 'cooling', 'evaporation', 'stand-off', 'pulses']) {
      const table = columns(await saved(page, `injector-${view}`, 'CSV'));
      const [, first = []] = Object.values(table);
      expect(first.map(Number).filter(Number.isFinite).length, view).toBeGreaterThan(1);
    }
    expect(said).toEqual([]);
    await page.context().close();
  });

  test('pedal and sound agree with the core, and follow what is changed of them', async () => {
    const { page, said } = await at.open();
    await open(page, 'more.yaml', more);
    const asked = readScenario(more, 'more.yaml');
    const pedal = pedalStudyOf(asked.pedal!);
    await page.locator('#pedal .finding').waitFor();
    expect(await page.locator('#pedal .finding').textContent()).toBe(pedalSentences(pedal)[0]);
    const force = columns(await saved(page, 'pedal', 'CSV'));
    expect(column(force, 'foot_force_out_N').at(-1)).toBeCloseTo(pedal.curve.at(-1)!.out, 7);
    await page.locator('#shelf .finding').waitFor();
    await open(page, 'more.yaml', more.replace('count: 2 # springs alike', 'count: 1'));
    await page.locator('#pedal .finding', { hasText: 'NOT SAFE' }).waitFor();

    await page.getByRole('button', { name: 'Work out the sound' }).click();
    await page.locator('#listen .finding').waitFor();
    const answer = await lengthStudy({ ...questionOf(asked) }, runHere);
    const lengths = [asked.engine.intake.trumpet.length, answer.recommended.length];
    const { speeds: heardAt, mouths: row, lengthUnit } = asked;
    const computer = { ...runHere, task: async (_: string, job: never) => TASKS.trace(job) };
    const question = {
      engine: asked.engine,
      lengths,
      speeds: heardAt,
      speed: heardAt[0]!,
      row,
      lengthUnit,
    };
    const heard = await soundOf(question, computer as never);
    const levels = columns(await saved(page, 'listen', 'CSV'));
    const near = listenTables.heardA(heard.lengths[0]!.points[0]!, 'near')!;
    expect(Math.abs(column(levels, 'level_near_dBA')[0]! - near)).toBeLessThan(0.01);
    await page.getByRole('button', { name: 'run up' }).first().click();
    await page.locator('#listen button[aria-pressed="true"]', { hasText: 'Stop' }).waitFor();
    expect(said).toEqual([]);
    await page.context().close();
  });

  test('signal and idle agree with the core', async () => {
    const { page, said } = await at.open();
    await open(page, 'more.yaml', more);
    const { engine, pressureBar, idle } = readScenario(more, 'more.yaml');
    const bar = pressureBar!;
    await page.getByRole('button', { name: 'Work out the signal' }).click();
    await page.locator('#signal .finding').waitFor();
    const task = async (name: 'trace', job: never) => TASKS[name](job);
    const computer = { ...runHere, task };
    const signal = await sensorStudy({ engine, spec: bar }, computer as never);
    const points = columns(await saved(page, 'signal', 'CSV'));
    const [ripple] = column(points, 'ripple_kPa');
    expect(apart(ripple!, signal.points[0]!.bar.ripple / 1e3)).toBeLessThan(1e-6);
    const better = columns(await saved(page, 'signal-choice', 'CSV'));
    expect(column(better, 'lag_ms').length).toBeGreaterThan(3);
    await page.getByRole('button', { name: 'Compare the ways' }).click();
    await page.locator('#idle .finding').waitFor();
    const own = idleStudyOf({ engine, spec: idle!, bar });
    expect(await page.locator('#idle .finding').textContent()).toBe(idleSentences(own)[0]);
    expect(said).toEqual([]);
    await page.context().close();
  });

  test('a table of load agrees with the core', async () => {
    const { page, said } = await at.open();
    await open(page, 'quick.yaml', text);
    await page.getByRole('button', { name: 'Work out the table' }).click();
    await page.locator('#load .finding').waitFor({ timeout: 120_000 });
    const filling = columns(await saved(page, 'load', 'CSV'));
    const angles = column(filling, 'plate_deg');
    expect(angles.at(-1)).toBe(90);
    const { engine, speeds: asked } = readScenario(text, 'quick.yaml');
    const throttle = { ...engine.intake.throttle, angle: angles[1]! };
    const top = Math.max(...asked);
    const job = { engine: { ...engine, intake: { ...engine.intake, throttle } }, speed: top };
    const point = runJob(job);
    const shown = column(filling, `filling_percent_at_${top}_rpm`)[1]!;
    const own = isFailure(point) ? Number.NaN : point.volumetricEfficiency;
    expect(apart(shown, 100 * own)).toBeLessThan(TEN_DIGITS);
    expect(said).toEqual([]);
    await page.context().close();
  });

  test('values of another key are weighed where the scenario names one', async () => {
    const { page, said } = await at.open();
    const vary = 'sweep:\n  vary:\n    - { key: intake.port.length, values: "60 mm, 80 mm" }\n';
    await open(page, 'varied.yaml', text.replace('sweep:\n', vary));
    await page.getByRole('button', { name: 'Try the values' }).click();
    await page.locator('#varied .finding').waitFor();
    const best = await page.locator('#varied .finding').textContent();
    const [, value] = /^Best of those tried: intake\.port\.length (\d+ mm)/.exec(best!)!;
    const table = columns(await saved(page, 'varied', 'CSV'));
    expect(table['intake.port.length']).toEqual(['60 mm', '80 mm']);
    const means = column(table, 'band_mean');
    expect(value).toBe(table['intake.port.length']![means.indexOf(Math.max(...means))]);
    expect(said).toEqual([]);
    await page.context().close();
  });

  test('a run off the dyno lies over the prediction, and a bad one names its line', async () => {
    const { page, said } = await at.open();
    const rows = speeds.map((speed, i) => `${speed},${20 + i * (4 - i)}`);
    const run = async (head: string) =>
      page.locator('#measured-run input[type=file]').setInputFiles({
        name: 'run.csv',
        mimeType: 'text/csv',
        buffer: Buffer.from([head, ...rows].join('\n')),
      });
    await run('speed_rpm,tork_Nm');
    await page.locator('#measured-run').getByText('line 1').waitFor();
    await run('speed_rpm,torque_Nm');
    await page.locator('#measured-run .finding').getByText('correlate').waitFor();
    const table = columns(await saved(page, 'measured-run', 'CSV'));
    expect(Object.values(table)[0]!.map(Number)).toEqual(speeds);
    const figures = column(table, 'predicted_torque_Nm');
    for (const value of figures) expect(value).toBeGreaterThan(0);
    expect(said).toEqual([]);
    await page.context().close();
  });

  test('readings off the bodies and probes are worked out as by the core, and bad ones name their line', async () => {
    const { page, said } = await at.open();
    const twin = text.replace('cylinders: 1', 'cylinders: 2');
    await open(page, 'twin.yaml', twin);
    const { engine: two } = readScenario(twin, 'twin.yaml');
    const read = (view: string, content: string) =>
      page.locator(`#${view} input[type=file]`).setInputFiles({
        name: 'readings.csv',
        mimeType: 'text/csv',
        buffer: Buffer.from(content),
      });
    const vacuum = 'speed_rpm,plate_deg,cylinder,vacuum_kPa\n1500,9,1,50\n1500,9,2,46\n';
    await read('balance', vacuum.replace('_kPa', ''));
    await page.locator('#balance').getByText('line 1').waitFor();
    await read('balance', vacuum);
    await page.locator('#balance .finding').waitFor();
    const { turns } = screwsStudy(askedScrews(two, vacuum, 'readings.csv'));
    const screws = columns(await saved(page, 'balance', 'CSV'));
    expect(column(screws, 'turns')).toEqual(turns.map((one) => Number(one.turns.toPrecision(10))));
    const lambda = 'speed_rpm,plate_deg,cylinder,lambda\n6000,60,1,0.9\n6000,60,2,1.02\n';
    await read('trims', lambda);
    await page.locator('#trims .finding').waitFor();
    const { trims } = mixtureTrims(readTrims(two, lambda, 'readings.csv'));
    const fuel = columns(await saved(page, 'trims', 'CSV'));
    expect(column(fuel, 'fuel_trim')).toEqual(trims.map((one) => Number(one.toPrecision(10))));
    expect(said).toEqual([]);
    await page.context().close();
  });
});

/** Names of the views, of those that match a selector. */
function views(page: Page, matching = ''): Promise<string[]> {
  return page.locator(`.view${matching}`).evaluateAll((nodes) => nodes.map((node) => node.id));
}
