/** What the sweep of lengths offers, other keys have too: doubt, floors, and the length itself by its name. */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { computerOf } from '../golden/computer.ts';
import { toyRunner } from '../toy.ts';
import { answerFrom, coarseText, fileOf, freshFolder } from './commandLine.ts';

/** Fills best at 50 mm of bore; compression counts for little, warm air costs. */
const { run } = toyRunner(({ engine, length }) => {
  const { trumpet } = engine.intake;
  const bore = 1e3 * (trumpet.innerDiameter - 0.05);
  const warm = engine.ambient.temperature - 293.15;
  return 1 - 0.01 * bore ** 2 - 2 * (length - 0.15) ** 2 - 1e-3 * warm;
});
const workers = computerOf(run, () => Promise.reject(new Error('no trace is asked for')));

const file = fileOf(
  coarseText()
    .replace(/(temperature: .*degC)/, '$1 +- 5 degC')
    .concat('\nfit:\n  shelf: [120 mm, 180 mm]\nuncertainty:\n  tradeSense: no\n'),
);

test('doubt is carried through for any key', async () => {
  const out = freshFolder();
  const vary = ['--vary', 'intake.trumpet.diameter=45mm,48mm', '--samples', '16'];
  const { code, stdout } = await answerFrom(workers, 'sweep', file, ...vary, '--out', out);
  expect(code).toBe(0);
  expect(stdout).toContain('With every input anywhere within its spread, 48mm beats the engine as');
  const read = (name: string) => readFileSync(join(out, folderOf(out), name), 'utf8');
  const { recommended, uncertainty } = JSON.parse(read('variants.json'));
  expect(recommended).toEqual(['48mm']);
  expect(uncertainty.recommended.name).toBe('48mm');
  expect(uncertainty.samples).toBe(16);
  // 2 mm off the best against 5 mm, at the middle of the spread: 0.96 over 0.75 less what else differs.
  expect(uncertainty.probability_better[0]).toBe(1);
  expect(uncertainty.gain_percent.mean[0]).toBeGreaterThan(20);
  expect(read('uncertainty.csv').split('\r\n')[0]).toBe('variant,speed_rpm,mean,p5,p50,p95');
});

test('of a condition no doubt is carried through, since nothing is recommended', async () => {
  const vary = ['--vary', 'ambient.humidity=10 %,90 %', '--uncertainty', '--json'];
  const { code, stdout } = await answerFrom(workers, 'sweep', file, ...vary);
  expect(code).toBe(0);
  const document = JSON.parse(stdout);
  expect(document.recommended).toBeNull();
  expect(document).not.toHaveProperty('uncertainty');
});

test('the length by its name is the sweep of lengths, shelf and all', async () => {
  const vary = ['--vary', 'intake.trumpet.length=100mm..200mm/50mm', '--json'];
  const { stdout } = await answerFrom(workers, 'sweep', file, ...vary);
  const document = JSON.parse(stdout);
  expect(document.schema.name).toBe('trumpetry-sweep');
  expect(document.recommended.length_mm).toBe(150);
  expect(document.shelf.buy_mm).toBe(180);
});

test('a table weighs nothing', async () => {
  const vary = ['--vary', 'ambient.temperature=10 degC,30 degC', '--json'];
  const { code, stdout } = await answerFrom(workers, 'table', file, ...vary);
  expect(code).toBe(0);
  const document = JSON.parse(stdout);
  expect(document.schema.name).toBe('trumpetry-table');
  expect(document['ambient.temperature']).toHaveLength(2 * 3);
  expect(document).not.toHaveProperty('recommended');
  const bare = await answerFrom(workers, 'table', file, '--json');
  expect(bare.code).toBe(2);
  expect(bare.stderr).toContain('--vary is missing');
});

/** Results of each scenario stand in a folder of their own. */
function folderOf(out: string): string {
  return existsSync(join(out, 'engine')) ? 'engine' : '.';
}
