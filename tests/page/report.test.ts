/** The report in a browser: offline, accessible, on a phone, in the dark. */
import { readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { beforeAll, expect, test } from 'vitest';
import { reportHtml } from '../../sim/report/report.ts';
import { lengthStudy } from '../../sim/study/length/compute.ts';
import { sweepReport } from '../../sim/study/length/report.ts';
import { fileOf } from '../cli/commandLine.ts';
import { knownAnswer } from '../cli/knownAnswer.ts';
import { readDemo, toyRunner } from '../toy.ts';
import { browser } from './opened.ts';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const file = fileOf('', 'report.html');

beforeAll(async () => {
  const scenario = readDemo('hill-climb');
  const { engine, speeds, target } = scenario;
  const runner = toyRunner(({ length, speed }) => 1 - ((speed - 9000 + 12e3 * length) / 1e4) ** 2);
  const { lengths } = scenario.sweep;
  const study = await lengthStudy({ engine, lengths, speeds, target }, runner);
  writeFileSync(file, reportHtml(sweepReport(study, scenario)));
});

test.each([
  ['a desk', 1280, 'light'],
  ['a desk in the dark', 1280, 'dark'],
  ['a phone', 360, 'light'],
  ['a phone in the dark', 360, 'dark'],
] as const)('on %s', async (_, width, colorScheme) => {
  // The policy of the report forbids scripts, so the checker has to be let in past it.
  const context = await (await browser()).newContext({
    viewport: { width, height: 800 },
    colorScheme,
    bypassCSP: true,
  });
  const page = await context.newPage();
  const said: string[] = [];
  page.on('console', (message) => said.push(message.text()));
  page.on('request', (request) => {
    if (!request.url().startsWith('file:')) said.push(request.url());
  });
  await page.goto(`file://${file}`);
  expect(said).toEqual([]);
  expect(await page.evaluate('document.documentElement.scrollWidth')).toBe(width);
  expect(await page.locator('.answer p').first().textContent()).toMatch(
    /^Make the trumpets (longer|shorter): \d+.mm/,
  );
  await page.addScriptTag({ content: axe });
  const { violations } = (await page.evaluate('axe.run()')) as {
    violations: { id: string; nodes: { html: string }[] }[];
  };
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([]);
  await context.close();
});

test('worth prints on one page of A4, answer, table and cautions, however much it has to say', async () => {
  // Of points that are known: what is asked here is how it lies on paper.
  const { files } = await knownAnswer('boosted-four', 'worth-all');
  writeFileSync(file, files['worth.html']!);
  const page = await (await browser()).newPage();
  await page.goto(`file://${file}`);
  const pdf = await page.pdf({ format: 'A4', preferCSSPageSize: true });
  expect(pdf.toString('latin1').match(/\/Type\s*\/Page[^s]/g)).toHaveLength(1);
  await page.emulateMedia({ media: 'print' });
  for (const words of [
    'Boosted',
    'Idle: ',
    'Pedal: ',
    'Weighed side by side',
    'Measure before',
    'open can kill',
  ]) {
    expect(await page.getByText(words).first().isVisible(), words).toBe(true);
  }
  expect(await page.getByText('Defaults used').isVisible()).toBe(false);
  await page.emulateMedia({ media: 'screen' });
  expect(await page.getByText('Defaults used').isVisible()).toBe(true);
  for (const width of [1440, 1024, 390]) {
    await page.setViewportSize({ width, height: 800 });
    const right = await page
      .locator('table', { hasText: 'told by' })
      .locator('th, td')
      .evaluateAll((cells) => Math.max(...cells.map((cell) => cell.getBoundingClientRect().right)));
    expect(right, `what is weighed at ${width} px`).toBeLessThanOrEqual(width);
    const clipped = await page.locator('svg text').evaluateAll((texts) =>
      texts
        .filter((text) => {
          const picture = text.closest('svg')!.getBoundingClientRect();
          const { left, right: end } = text.getBoundingClientRect();
          return left < picture.left - 1 || end > picture.right + 1;
        })
        .map((text) => text.textContent),
    );
    expect(clipped, `texts beyond their pictures at ${width} px`).toEqual([]);
  }
  await page.close();
});
