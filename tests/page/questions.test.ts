/** Questions worked out when asked, each at its place, against the core. */
import { expect, test } from 'vitest';
import {
  idleSentences,
  isFailure,
  joinedIdleOf,
  lengthStudy,
  listenTables,
  meterQuestion,
  meterSentences,
  meterStudyOf,
  meterTables,
  pedalSentences,
  pedalStudyOf,
  plenumSentences,
  plenumStudyOf,
  readScenario,
  runHere,
  runJob,
  sensorStudy,
  shelfWords,
  soundOf,
  TASKS,
  withLength,
  worthSentences,
  worthStudyOf,
} from '../../sim/index.ts';
import { questionOf } from '../../web/compute/question.ts';
import { typeset } from '../../web/format.ts';
import { again } from './opened.ts';
import { answer, more, scenario, text } from './quick.ts';
import { apart, choose, column, columns, go, openFile, saved, TEN_DIGITS } from './reader.ts';

const { speeds } = scenario;

/** Sensors weighed at four points, not at the usual twenty-five, which a test of its own looks at. */
const METERED = `${text}\nmeter:\n  speeds: [9000 rpm, 11000 rpm]\n  angles: [30 deg, 90 deg]\n`;

test('doubt, choices, shelf and injectors agree with the core', async () => {
  const { page, said } = await again();
  await choose(page, 'more.yaml');
  await go(page, 'price');
  await page.locator('#shelf .finding').waitFor();
  const asked = readScenario(more, 'more.yaml');
  const question = { ...asked, lengths: asked.sweep.lengths, fit: asked.fit! };
  const answer = await lengthStudy(question, runHere);
  expect(await page.locator('#shelf .finding').textContent()).toBe(typeset(shelfWords(answer)));
  expect(shelfWords(answer)).toContain('as it is: as good in the band as the length above');
  const choices = columns(await saved(page, 'price-of-gain', 'CSV'));
  expect(column(choices, 'gain_in_band_percent')).toHaveLength(answer.weighed.length);
  answer.weighed.forEach(({ gainPercent }, i) => {
    expect(column(choices, 'gain_in_band_percent')[i]).toBeCloseTo(gainPercent, 7);
  });
  expect(column(columns(await saved(page, 'shelf', 'CSV')), 'length_mm')).toEqual([80, 160]);

  await go(page, 'doubt');
  await page.getByRole('button', { name: 'Work out how sure it is' }).click();
  await page.locator('#doubt').getByRole('button', { name: 'Stop' }).click();
  await page.locator('#doubt').getByText('Stopped.').waitFor();
  await page.locator('#doubt').getByRole('button', { name: 'Go on' }).click();
  await go(page, 'injectors');
  await page.getByRole('button', { name: 'Compare the placements' }).click();
  await go(page, 'doubt');
  await page.locator('#doubt .finding').waitFor();
  const curves = columns(await saved(page, 'doubt', 'CSV'));
  const [low, high] = [column(curves, 'p5'), column(curves, 'p95')];
  low.forEach((value, i) => {
    expect(high[i]).toBeGreaterThan(value);
  });
  const ranking = columns(await saved(page, 'measure-next', 'CSV'));
  expect(ranking.key).toEqual(['engine.bore']);

  const facts = (await page.locator('.facts').textContent())!;
  expect(facts).toContain('at least, that it gains');
  // Both speeds of that file lie in its band.
  expect(facts).toContain('Worst outsidenot known');
  await go(page, 'injectors');
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
});

test('pedal and sound agree with the core, and follow what is changed of them', async () => {
  const { page, said } = await again();
  await choose(page, 'more.yaml');
  const asked = readScenario(more, 'more.yaml');
  const pedal = pedalStudyOf(asked.pedal!);
  await go(page, 'pedal');
  await page.locator('#pedal .finding').waitFor();
  expect(await page.locator('#pedal .finding').textContent()).toBe(
    typeset(pedalSentences(pedal)[0]!),
  );
  const force = columns(await saved(page, 'pedal', 'CSV'));
  expect(column(force, 'foot_force_out_N').at(-1)).toBeCloseTo(pedal.curve.at(-1)!.out, 7);
  await openFile(page, 'more.yaml', more.replace('count: 2 # springs alike', 'count: 1'));
  await page.locator('#pedal .finding', { hasText: 'NOT SAFE' }).waitFor();
  // An engine with slides has no plates: none in what is told, none under its plots.
  const slides = more.replace('    shaftDiameter: 8 mm\n', '    kind: slide\n');
  await openFile(page, 'slides.yaml', slides);
  await page.locator('#pedal', { hasText: 'slide' }).waitFor();
  expect(await page.locator('#pedal').textContent()).not.toMatch(/\bplates?\b/i);
  await choose(page, 'more.yaml');

  await go(page, 'sound');
  await page.getByRole('button', { name: 'Work out the sound' }).click();
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
  await page.locator('#listen .finding').waitFor();
  const levels = columns(await saved(page, 'listen', 'CSV'));
  const near = listenTables.heardA(heard.lengths[0]!.points[0]!, 'near')!;
  expect(Math.abs(column(levels, 'level_near_dBA')[0]! - near)).toBeLessThan(0.01);
  await page.getByRole('button', { name: 'run up' }).first().click();
  await page.locator('#listen button[aria-pressed="true"]', { hasText: 'Stop' }).waitFor();
  expect(said).toEqual([]);
});

test('signal and idle agree with the core', async () => {
  const { page, said } = await again();
  await choose(page, 'more.yaml');
  const { engine, pressureBar, idle } = readScenario(more, 'more.yaml');
  const bar = pressureBar!;
  await go(page, 'sensor');
  await page.getByRole('button', { name: 'Work out the signal' }).click();
  await go(page, 'idle');
  await page.getByRole('button', { name: 'Compare the ways' }).click();
  // The core works at it while the page does.
  const task = async (name: 'trace', job: never) => TASKS[name](job);
  const computer = { ...runHere, task };
  const signal = await sensorStudy({ engine, spec: bar }, computer as never);
  const own = await joinedIdleOf({ engine, spec: idle!, bar }, computer as never);
  await page.locator('#idle .finding').waitFor();
  expect(await page.locator('#idle .finding').textContent()).toBe(typeset(idleSentences(own)[0]!));
  await go(page, 'sensor');
  await page.locator('#signal .finding').waitFor();
  const points = columns(await saved(page, 'signal', 'CSV'));
  const [ripple] = column(points, 'ripple_kPa');
  expect(apart(ripple!, signal.points[0]!.joined.ripple / 1e3)).toBeLessThan(1e-6);
  const better = columns(await saved(page, 'signal-choice', 'CSV'));
  expect(column(better, 'lag_ms').length).toBeGreaterThan(3);
  expect(said).toEqual([]);
});

test('plenum and worth agree with the core', async () => {
  const { page, said } = await again();
  await openFile(page, 'quick.yaml', METERED);
  await page.locator('.engine-choice', { hasText: 'quick.yaml (yours)' }).waitFor();
  const computer = { ...runHere, task: async (name: 'trace', job: never) => TASKS[name](job) };
  const ask = async (place: string, label: string) => {
    await go(page, place);
    await page.getByRole('button', { name: label }).click();
  };
  const told = async (place: string, view: string) => {
    await go(page, place);
    await page.locator(`#${view} .finding`).waitFor();
    return page.locator(`#${view} .finding`).textContent();
  };
  await ask('plenum', 'Weigh against a plenum');
  await ask('worth', 'Weigh it all');
  // The core works at it while the page does.
  const { recommended } = await answer();
  const { plenum, target, lengthUnit } = scenario;
  const engine = withLength(scenario.engine, recommended.length);
  const asked = { engine, plenum, speeds, target, lengthUnit };
  const beside = await plenumStudyOf(asked, computer as never);
  const read = readScenario(METERED, 'quick.yaml');
  const question = { scenario: read, text: METERED, file: 'quick.yaml' };
  const worth = worthSentences(await worthStudyOf(question, computer as never));
  expect(await told('plenum', 'plenum')).toBe(typeset(plenumSentences(beside)[0]!));
  expect(await told('worth', 'worth')).toBe(typeset(worth[0]!));
  const sensor = worth.find((sentence) => sentence.startsWith('Sensor'));
  await page.locator('#worth .says').getByText(typeset(sensor!)).waitFor();
  // What other studies say more of is a click away; a single has nothing to balance.
  const led = page.locator('#worth .says a');
  expect(await led.evaluateAll((all) => all.map((one) => one.getAttribute('href')))).toEqual([
    '#/plenum',
    '#/sensor',
    '#/load',
  ]);
  expect(await page.locator('#worth .says').textContent()).not.toMatch(/\((response|signal|idle)/);
  expect(said).toEqual([]);
});

test('the sensor to trust is the one that the core trusts', async () => {
  const { page, said } = await again();
  const computer = { ...runHere, task: async (name: 'trace', job: never) => TASKS[name](job) };
  await go(page, 'sensor');
  await page.getByRole('button', { name: 'Weigh the sensors' }).click();
  const { recommended } = await answer();
  const asked = meterQuestion(scenario, recommended.length);
  const study = await meterStudyOf(asked, computer as never);
  await page.locator('#meter .finding').waitFor();
  expect(await page.locator('#meter .finding').textContent()).toBe(
    typeset(meterSentences(study)[0]!),
  );
  const shown = columns(await saved(page, 'meter', 'CSV'));
  expect(shown.trust).toEqual(study.points.map(meterTables.trustWords));
  study.points.forEach(({ errors }, i) => {
    expect(apart(column(shown, 'flow_error_fraction')[i]!, errors!.flow)).toBeLessThan(TEN_DIGITS);
  });
  expect(said).toEqual([]);
});

test('a table of load agrees with the core', async () => {
  const { page, said } = await again();
  await choose(page, 'more.yaml');
  await go(page, 'load');
  await page.getByRole('button', { name: 'Work out the table' }).click();
  await page.locator('#load .finding').waitFor({ timeout: 120_000 });
  // What is told on the page names no option of the command line.
  const told = (await page.locator('#load .says').textContent())!;
  expect(told).toMatch(/wants at least \d+ angles by \d+ speeds\./);
  expect(told).not.toContain('--');
  const filling = columns(await saved(page, 'load', 'CSV'));
  const angles = column(filling, 'plate_deg');
  expect(angles.at(-1)).toBe(90);
  const { engine, speeds: asked } = readScenario(more, 'more.yaml');
  const throttle = { ...engine.intake.throttle, angle: angles[1]! };
  const top = Math.max(...asked);
  const set = { ...engine, intake: { ...engine.intake, throttle } };
  const point = runJob({ engine: set, speed: top, hastened: true });
  const shown = column(filling, `filling_percent_at_${top}_rpm`)[1]!;
  const own = isFailure(point) ? Number.NaN : point.volumetricEfficiency;
  expect(apart(shown, 100 * own)).toBeLessThan(TEN_DIGITS);
  expect(said).toEqual([]);
});

test('values of another key are weighed where the scenario names one', async () => {
  const { page, said } = await again();
  const vary = 'sweep:\n  vary:\n    - { key: intake.port.length, values: "60 mm, 80 mm" }\n';
  await openFile(page, 'varied.yaml', text.replace('sweep:\n', vary));
  await go(page, 'keys');
  await page.getByRole('button', { name: 'Try the values' }).click();
  await page.locator('#varied .finding').waitFor();
  const best = await page.locator('#varied .finding').textContent();
  const [, figure] = /^Best of those tried: intake\.port\.length (\d+)\u00a0mm/.exec(best!)!;
  const value = `${figure} mm`;
  const table = columns(await saved(page, 'varied', 'CSV'));
  expect(table['intake.port.length']).toEqual(['60 mm', '80 mm']);
  const means = column(table, 'band_mean');
  expect(value).toBe(table['intake.port.length']![means.indexOf(Math.max(...means))]);
  // All variants beside one another: an axis for the key and one for what it gives, and a picture of them.
  const axes = page.locator('#varied-together .annotation-text');
  await page.locator('#varied-together').scrollIntoViewIfNeeded();
  await axes.first().waitFor();
  expect((await axes.allTextContents()).join(' ')).toMatch(/port\.length.*gain/i);
  expect(await page.locator('#varied-together .scatterlayer .trace').count()).toBe(2);
  expect((await saved(page, 'varied-together', 'PNG')).length).toBeGreaterThan(10_000);
  // A part of an axis is chosen by the keyboard, taken back, and drawn with the pointer.
  const together = page.locator('#varied-together');
  const within = together.locator('[role=status]', { hasText: 'lie within' });
  await together.getByText('Keep only variants within').click();
  expect(await within.textContent()).toBe('2 of 2 variants lie within.');
  const least = together.getByRole('combobox', { name: 'from' }).first();
  await least.focus();
  await page.keyboard.press('ArrowDown');
  await within.getByText('1 of 2').waitFor();
  await page.keyboard.press('ArrowUp');
  await within.getByText('2 of 2').waitFor();
  await together.locator('.nsewdrag').scrollIntoViewIfNeeded();
  const plot = (await together.locator('.nsewdrag').boundingBox())!;
  // The axes run from -0.06 to 1.3, the first stands at the left.
  const up = (place: number) => plot.y + plot.height * (1 - (place + 0.06) / 1.36);
  await page.mouse.move(plot.x + 2, up(0.05));
  await page.mouse.down();
  await page.mouse.move(plot.x + 2, up(0.9), { steps: 4 });
  await page.mouse.up();
  await within.getByText('0 of 2').waitFor();
  await page.mouse.click(plot.x + 2, up(0.5));
  await within.getByText('2 of 2').waitFor();
  expect(said).toEqual([]);
});
