/** The engine of the reader: files good and bad, the form, the text, links. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { expect, test } from 'vitest';
import { figuresOf, withFigure } from '../../web/state/figures.ts';
import { address, again, open } from './opened.ts';
import { text } from './quick.ts';
import { drawer, openFile, readDownload, write } from './reader.ts';

/** A second here, and this on a machine with ten other jobs; parsed once a figure it took 18 s [ms]. */
const PATIENCE = 8000;

const present = text.split('\n').findIndex((line) => line.includes('bore: 77 mm')) + 1;
const bad = text.replace('bore: 77 mm', 'boar: 77 mm');

test('a bad file changes nothing: what is wrong and where stands at the top, and it can be mended', async () => {
  const { page, said } = await again();
  const before = await page.locator('.headline').textContent();
  await openFile(page, 'bad.yaml', bad);
  const alert = page.locator('.troubles');
  await alert.getByText('bad.yaml was not taken').waitFor();
  expect(await alert.textContent()).toContain(`line ${present}: engine.boar`);
  expect(await alert.textContent()).toContain('did you mean "bore"?');
  expect(await alert.textContent()).toContain('The page keeps quick.yaml');
  expect(await page.locator('.headline').textContent()).toBe(before);
  expect(await page.getByText('before your last change').count()).toBe(0);

  await alert.getByRole('button', { name: 'Mend it here' }).click();
  const line = page.getByRole('button', { name: `line ${present}` }).first();
  await line.waitFor();
  await page.locator('.issues').getByText('did you mean "bore"?').waitFor();
  await page.locator('.cm-gutter-lint .cm-lint-marker-error').first().waitFor();
  await page.getByText('for the figures before your last change').waitFor();
  await line.click();
  await page.locator('.cm-line', { hasText: 'boar' }).getByText('boar').dblclick();
  await page.keyboard.type('bore');
  await page.locator('.issues').waitFor({ state: 'detached' });
  expect(said).toEqual([]);
});

test('a file that is opened is on show as soon as it is read, and so is why it cannot be: no timer ends before', async () => {
  const { page } = await open({ locale: 'en-GB' });
  await page.evaluate(() => {
    window.setTimeout = (() => 0) as never;
  });
  await openFile(page, 'own.yaml', text.replace('Quick single for tests', 'Her own'));
  await page.locator('.engine', { hasText: 'Her own' }).waitFor();
  const wider = text.replace('Quick single for tests', 'Wider').replace('77 mm', '78 mm');
  await openFile(page, 'wider.yaml', wider);
  await page.locator('.strip:not(.stale) .engine', { hasText: 'Wider' }).waitFor();
  await openFile(page, 'bad.yaml', bad);
  await page.locator('.troubles').getByText('The page keeps wider.yaml').waitFor();
  expect(await page.locator('.engine').first().textContent()).toBe('Wider');
  await page.close();
});

test('31 MB, nonsense, a bomb of aliases: told in words, never parsed for long', async () => {
  const { page, said } = await again();
  const alert = page.locator('.troubles');
  const bomb = `a: &a [x,x,x,x,x,x,x,x,x]\n${'bcdefghi'
    .split('')
    .map((one, i) => `${one}: &${one} [${`*${'abcdefghi'[i]},`.repeat(9)}x]`)
    .join('\n')}`;
  const large = join(mkdtempSync(join(tmpdir(), 'trumpetry-large-')), 'large.yaml');
  writeFileSync(large, Buffer.alloc(30.5 * 1024 * 1024, 'a: 1\n'));
  await page.locator('input[type=file][accept*=yaml]').setInputFiles(large);
  await alert.getByText('31 MB, limit 1 MB').waitFor({ timeout: 3000 });
  rmSync(dirname(large), { recursive: true });
  const files: [string, string | Buffer, string][] = [
    ['nonsense.yaml', 'the quick brown fox }{ : [', 'nonsense.yaml was not taken'],
    ['bomb.yaml', bomb, 'alias'],
    ['long.yaml', '# much\n'.repeat(60_000), 'limit: at most 262144 characters'],
    ['picture.yaml', Buffer.from([0x89, 0x50, 0x4e, 0x47, 0, 1, 2, 255]), 'picture.yaml was not'],
  ];
  for (const [name, content, words] of files) {
    const began = performance.now();
    await openFile(page, name, content);
    await alert.getByText(`${name} was not taken`).waitFor();
    expect(performance.now() - began, name).toBeLessThan(PATIENCE);
    expect((await alert.textContent())!.replaceAll('\u00a0', ' '), name).toContain(words);
  }
  await alert.getByRole('button', { name: 'Leave it' }).click();
  expect(await alert.textContent()).toBe('');
  expect(await page.locator('.engine').first().textContent()).toBe('Quick single for tests');
  expect(said).toEqual([]);
});

test('every key that the file leaves out can be added, with its default and doubt in sight, and taken out again', async () => {
  const { page, said } = await again();
  await drawer(page);
  const box = page.locator('.drawer');
  expect(await box.getByLabel('intake: throttle, open loss').count()).toBe(0);
  await box.getByLabel('Add', { exact: true }).selectOption('intake.throttle.openLoss');
  await box.getByText('Likely to be off by +- 40 %').waitFor();
  expect(await box.textContent()).toMatch(/Default: butterfly.*Taken now: 0\.\d+\./);
  await box.getByLabel('intake: throttle, open loss').fill('0.4');
  await box.getByRole('button', { name: 'Add intake: throttle, open loss' }).click();
  const added = box.locator('[data-path="intake.throttle.openLoss"]');
  await added.waitFor();
  expect(await added.inputValue()).toBe('0.4');
  expect(await box.getByText('Likely to be off').count()).toBe(0);
  await box.getByRole('button', { name: 'Take out: intake: throttle, open loss' }).click();
  await added.waitFor({ state: 'detached' });
  await box.getByRole('tab', { name: 'File' }).click();
  await page.locator('.cm-content').waitFor();
  const kept = await page.evaluate(() => localStorage.getItem('trumpetry-present'));
  expect(kept).toContain('Quick single');
  expect(kept).not.toContain('openLoss');
  expect(said).toEqual([]);
});

test('a long text is parsed once for the whole form', async () => {
  const { page } = await again();
  const long = `${text}\nnotes: "${'x'.repeat(4000)}"\n${'# a remark of the builder\n'.repeat(5000)}`;
  expect(long.length).toBeGreaterThan(130_000);
  await openFile(page, 'long.yaml', long);
  const began = performance.now();
  await drawer(page);
  await page.getByLabel('Bore', { exact: true }).waitFor();
  expect(performance.now() - began).toBeLessThan(PATIENCE);
});

test('the form keeps remarks and layout, and marks a wrong figure', async () => {
  const { page } = await again();
  await write(page, 'Trumpet fitted now', '70 mm');
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save scenario' }).click(),
  ]);
  const kept = (await readDownload(download)).toString('utf8');
  expect(kept).toBe(text.replace('length: 60 mm #', 'length: 70 mm #'));
  await write(page, 'Bore', '77 apples');
  await page.locator('.wrong-says').getByText('apples').waitFor();
  expect(await page.getByLabel('Bore', { exact: true }).getAttribute('aria-invalid')).toBe('true');
  expect(await page.locator('.answer > .notice').textContent()).toContain('apples');
});

test.each([
  ['engine.bore', '78', '78 mm'],
  ['intake.valves.lift.open', '30', '30 deg BTDC'],
  ['engine.compressionRatio', '12.5', '12.5'],
  ['intake.trumpet.length', '3 1/2 in', '3 1/2 in'],
])(
  '%s written as %s reads %s: a bare number keeps the unit that stood there',
  (path, typed, reads) => {
    expect(figuresOf(withFigure(text, path, typed)).at(path)).toBe(reads);
  },
);

test('a bare number after a fraction with a spread takes the unit alone', () => {
  const inches = text.replace('length: 60 mm', 'length: 2 3/8 in +- 0.02 in');
  const next = withFigure(inches, 'intake.trumpet.length', '2.5');
  expect(figuresOf(next).at('intake.trumpet.length')).toBe('2.5 in');
});

test('a new title is taken, without a new answer', async () => {
  const { page } = await again();
  await openFile(page, 'named.yaml', text.replace('Quick single for tests', 'Her own single'));
  await expect.poll(() => page.locator('.engine').first().textContent()).toBe('Her own single');
  expect(await page.locator('.answer progress').count()).toBe(0);
});

test('travels in a link that holds the text as it is now, and comes back the same', async () => {
  const { page } = await open({ permissions: ['clipboard-read', 'clipboard-write'] });
  await write(page, 'Bore', '79 mm');
  await page.getByRole('button', { name: 'Copy a link' }).click();
  await page.getByText('Copied. The whole scenario is in the link itself.').waitFor();
  const link = await page.getByLabel('The link').inputValue();
  expect(await page.evaluate(() => navigator.clipboard.readText())).toBe(link);
  expect(link.startsWith(await address())).toBe(true);
  await page.close();
  const { hash } = new URL(link);
  const there = await open({ hash });
  expect(new URL(there.page.url()).hash).toBe('#/length');
  await drawer(there.page);
  expect(await there.page.getByLabel('Bore', { exact: true }).inputValue()).toBe('79 mm');
  await there.page.close();
  const broken = await open({ hash: hash.slice(0, -40) });
  await broken.page.getByText('no readable scenario').waitFor();
  await broken.page.close();
});
