/** A length to try: by mouse, touch, keyboard, figure and map, and the curve that answers it. */
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { curveDocument, runHere, runLengths } from '../../sim/index.ts';
import { again, open } from './opened.ts';
import { scenario } from './quick.ts';
import { apart, column, columns, exactCurve, go, saved, TEN_DIGITS, take } from './reader.ts';

const { engine, speeds } = scenario;

/** Processor time of the page's own thread so far [s]: what other processes do is not in it. */
async function threadTime(page: Page): Promise<() => Promise<number>> {
  const session = await page.context().newCDPSession(page);
  await session.send('Performance.enable', { timeDomain: 'threadTicks' });
  return async () => {
    const { metrics } = await session.send('Performance.getMetrics');
    return metrics.find(({ name }) => name === 'TaskDuration')!.value;
  };
}

test('shows an estimate after a quarter of a second of work, then what the core gives for it', async () => {
  const { page, said } = await again();
  await page.locator('#filling .js-plotly-plot').waitFor();
  expect(await page.locator('#filling .tried').count()).toBe(0);
  const time = await threadTime(page);
  const began = await time();
  await take(page, 97);
  await page.locator('.dial .standing').waitFor();
  await page.locator('#filling .tried').waitFor({ state: 'attached' });
  expect((await time()) - began).toBeLessThan(0.25);
  // What it loses against the length fitted now is hatched.
  const hatched = await page.locator('#filling .losses').getAttribute('fill');
  await page.locator(`pattern${hatched!.slice(4, -1)} path`).waitFor({ state: 'attached' });
  await exactCurve(page);
  const table = columns(await saved(page, 'filling', 'CSV'));
  const [curve] = await runLengths(engine, [0.097], speeds, runHere);
  const document = JSON.parse(JSON.stringify(curveDocument(curve!, scenario)));
  column(table, 'your length, 97').forEach((value, i) => {
    expect(apart(value, document.volumetric_efficiency[i]!)).toBeLessThan(TEN_DIGITS);
  });
  await go(page, 'wave');
  const pressures = columns(await saved(page, 'closing-pressure', 'CSV'));
  column(pressures, 'your length, 97').forEach((value, i) => {
    expect(apart(value, document.pressure_at_valve_closing_kPa[i]!)).toBeLessThan(TEN_DIGITS);
  });
  expect(said).toEqual([]);
});

test('may have the WebAssembly kernel in its workers: the policy of the page lets them', async () => {
  const { page } = await again();
  await take(page, 98);
  await exactCurve(page);
  const [worker] = page.workers();
  const compiles = await worker!.evaluate(() => {
    const empty = new Uint8Array([0, 0x61, 0x73, 0x6d, 1, 0, 0, 0]);
    return new WebAssembly.Module(empty) instanceof WebAssembly.Module;
  });
  expect(compiles).toBe(true);
});

test('is dragged by the mouth of the drawing, and the drawing, the figure and the words follow', async () => {
  const { page, said } = await again();
  const grip = (await page.locator('.grip-bar').boundingBox())!;
  const from = Number(await page.getByLabel('in millimetres, exact').inputValue());
  const [x, y] = [grip.x + grip.width / 2, grip.y + grip.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let i = 1; i <= 10; i++) await page.mouse.move(x - 5 * i, y);
  await page.mouse.up();
  const to = Number(await page.getByLabel('in millimetres, exact').inputValue());
  const moved = (await page.locator('.grip-bar').boundingBox())!;
  expect(from - to).toBeGreaterThan(5);
  expect(Math.abs(grip.x - moved.x - 50)).toBeLessThan(2);
  await exactCurve(page);
  expect(await page.locator('.hand-says').textContent()).toContain(`${to}\u00a0mm`);
  await page.locator('.dial').getByRole('button', { name: 'Back to the answer' }).click();
  expect(Number(await page.getByLabel('in millimetres, exact').inputValue())).toBe(from);
  expect(said).toEqual([]);
});

/** The slider is held and moved to lengths [mm], and let go where that is asked. */
async function slide(page: Page, lengths: readonly number[], release: boolean): Promise<void> {
  await page.locator('.dial-slider').evaluate(
    (slider: HTMLInputElement, { lengths: to, release: letGo }) => {
      for (const mm of to) {
        slider.value = String(mm);
        slider.dispatchEvent(new Event('input', { bubbles: true }));
      }
      if (letGo) slider.dispatchEvent(new Event('change', { bubbles: true }));
    },
    { lengths, release },
  );
}

test('workers are asked for the exact curve of the length let go, and for its cycle only then', async () => {
  const { page } = await again();
  await page.locator('.tiles').waitFor();
  await page.evaluate(() => {
    const asked: string[] = [];
    const { postMessage } = Worker.prototype;
    Worker.prototype.postMessage = function (question: { kind: string; quick?: boolean }) {
      asked.push(question.quick ? 'quick' : question.kind);
      postMessage.call(this, question);
    };
    Object.assign(window, { asked });
  });
  await slide(page, [97, 98, 99], true);
  await exactCurve(page);
  await page.locator('.panel-says', { hasText: 'your length, 99' }).waitFor();
  const asked = await page.evaluate(() => (window as unknown as { asked: string[] }).asked);
  const shares = asked.indexOf('trace');
  expect(shares).toBeGreaterThan(0);
  expect(asked).toEqual([...Array(shares).fill('speeds'), 'trace']);
});

test('while it is held a quick curve comes first and says how near it is', async () => {
  const { page } = await again();
  await page.locator('#filling .js-plotly-plot').waitFor();
  await page.evaluate(() => {
    const words: string[] = [];
    new MutationObserver(() => {
      const now = document.querySelector('.dial .standing')?.textContent ?? '';
      if (now !== '' && now !== words.at(-1)) words.push(now);
    }).observe(document.querySelector('.dial')!, {
      subtree: true,
      childList: true,
      characterData: true,
    });
    Object.assign(window, { words });
  });
  await slide(page, [101, 102, 103], false);
  const heard = () => page.evaluate(() => (window as unknown as { words: string[] }).words);
  // The words of the length before may stand a moment longer.
  await expect.poll(async () => (await heard()).slice(1).at(-1), { timeout: 20_000 }).toBe('exact');
  const words = await heard();
  expect(words).toContain('to 0.01 %, exact to come');
  expect(words.indexOf('to 0.01 %, exact to come')).toBeGreaterThan(
    words.findIndex((one) => one.startsWith('estimate')),
  );
});

test('is taken on the map, with its speed', async () => {
  const { page } = await again();
  await page.locator('#map .js-plotly-plot .main-svg').first().waitFor();
  const plot = (await page.locator('#map .nsewdrag').boundingBox())!;
  await page.mouse.click(plot.x + plot.width * 0.9, plot.y + plot.height / 2);
  expect(await page.locator('.wave-above select').inputValue()).toBe('12000');
  const taken = Number(await page.getByLabel('in millimetres, exact').inputValue());
  expect(Math.abs(taken - 100)).toBeLessThanOrEqual(3);
  // And dragged: speed and length follow while the pointer is down.
  await page.mouse.down();
  await page.mouse.move(plot.x + plot.width * 0.5, plot.y + plot.height * 0.4, { steps: 3 });
  await page.mouse.move(plot.x + plot.width * 0.1, plot.y + plot.height * 0.25, { steps: 3 });
  await page.mouse.up();
  expect(await page.locator('.wave-above select').inputValue()).toBe('8000');
  const dragged = Number(await page.getByLabel('in millimetres, exact').inputValue());
  expect(Math.abs(dragged - 140)).toBeLessThanOrEqual(3);
});

test('follows the keyboard alone', async () => {
  const { page } = await open();
  await page.keyboard.press('Tab');
  await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toMatch(/Skip/);
  const slider = page.getByLabel('Trumpet length in millimetres', { exact: true });
  for (let i = 0; i < 40; i++) {
    if (await slider.evaluate((node) => node === document.activeElement)) break;
    await page.keyboard.press('Tab');
  }
  const before = Number(await slider.inputValue());
  await page.keyboard.press('ArrowLeft');
  await page.keyboard.press('ArrowLeft');
  expect(Number(await slider.inputValue())).toBe(before - 2);
  await exactCurve(page);
  const back = page.getByRole('button', { name: 'Back to the answer' });
  for (let i = 0; i < 6; i++) {
    if (await back.evaluate((node) => node === document.activeElement)) break;
    await page.keyboard.press('Tab');
  }
  await page.keyboard.press('Enter');
  await page.getByText('Drag the mouth').waitFor();
  expect(Number(await slider.inputValue())).toBe(before);
});
