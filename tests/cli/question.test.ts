/** Keys in place of the length, doubt, shelf and floors, shards and resume, from the command line. */
import { readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { answer, coarseText, fileOf, freshFolder } from './commandLine.ts';

const quick = coarseText().replace('step: 100 mm', 'step: 200 mm');

describe('sweep --vary', () => {
  it('tries values of two keys and says how the best moves', async () => {
    const file = fileOf(quick);
    const vary = [
      '--vary',
      'intake.trumpet.diameter=43mm,47mm',
      '--vary',
      'intake.trumpet.length=100mm..200mm/50mm',
    ];
    const { code, stdout } = await answer('sweep', file, ...vary, '--json', '--workers', '1');
    expect(code).toBe(0);
    const document = JSON.parse(stdout);
    expect(document.schema.name).toBe('trumpetry-variants');
    expect(document.keys.map(({ key }: { key: string }) => key)).toEqual([
      'intake.trumpet.diameter',
      'intake.trumpet.length',
    ]);
    expect(document.variants.map(({ values }: { values: string[] }) => values.join(' '))).toEqual([
      '43mm 100 mm',
      '43mm 150 mm',
      '43mm 200 mm',
      '47mm 100 mm',
      '47mm 150 mm',
      '47mm 200 mm',
    ]);
    expect(document.best_second).toHaveLength(2);
    const means = document.variants.map(({ band_mean }: { band_mean: number }) => band_mean);
    const best = document.variants[means.indexOf(Math.max(...means))]!;
    expect(document.recommended).toEqual(best.values);
  });

  it('writes a table and a report', async () => {
    const out = freshFolder();
    const { code, stdout } = await answer(
      'sweep',
      fileOf(quick),
      '--vary',
      'intake.valves.lift.close=56deg ABDC,64deg ABDC',
      '--out',
      out,
    );
    expect(code).toBe(0);
    expect(stdout).toContain('intake.valves.lift.close');
    const csv = readFileSync(join(out, 'variants.csv'), 'utf8');
    expect(csv.split('\r\n')[0]).toMatch(/^intake\.valves\.lift\.close,speed_rpm,/);
    expect(csv.split('\r\n')).toHaveLength(1 + 2 * 3 + 1);
    expect(readFileSync(join(out, 'report.html'), 'utf8')).toContain('64deg ABDC');
  });

  it.each([
    [['--vary', 'intake.trumpet.bore=43mm'], 'no key with a number'],
    [['--vary', 'diameter'], 'KEY=VALUES'],
    [['--vary', 'engine.bore=86mm', '--vary', 'engine.bore=87mm'], 'varied twice'],
    [['--shard', '3/2', '--out', 'x'], 'which of how many'],
    [['--shard', '1/2', '--json'], 'need --out'],
    [['--resume', '--json'], 'need --out'],
    [['--samples', '3'], 'out of range'],
  ])('refuses %j', async (words, says) => {
    const { code, stderr } = await answer('sweep', fileOf(quick), ...words);
    expect(code).toBe(2);
    expect(stderr).toContain(says);
  });
});

describe('sweep with a shelf, floors and doubt', () => {
  const file = fileOf(
    quick
      .replace(/(target:.*\n)/, '$1  floors:\n    - { speed: 8000 rpm, mostLoss: 2 % }\n')
      .replace('close: 60 deg ABDC', 'close: 60 deg ABDC +- 3 deg')
      .replace('length: 100 mm', 'length: 100 mm +- 4 mm')
      .concat(
        '\nfit:\n  room: 300 mm\n  shelf: [120 mm, 280 mm]\nuncertainty:\n  tradeSense: no\n',
      ),
  );

  it('answers with what to buy, the odds and what to measure', async () => {
    const words = ['--uncertainty', '--samples', '16', '--seed', '3', '--json'];
    const { code, stdout } = await answer('sweep', file, ...words);
    expect(code).toBe(0);
    const document = JSON.parse(stdout);
    expect(document.target.floors).toEqual([{ speed_rpm: 8000, most_loss_percent: 2 }]);
    expect(document.lengths_mm).toContain(280);
    expect(document.shelf?.buy_mm).toBeGreaterThanOrEqual(document.recommended.length_mm!);
    expect(document.trade_offs.map(({ length_mm }: { length_mm: number }) => length_mm)).toContain(
      90,
    );
    expect(document.mixed?.short_cylinders).toBe(2);
    const doubt = document.uncertainty;
    const inputs: { key: string; given: boolean; share_of_variance: number }[] = doubt.inputs;
    expect(doubt.samples).toBe(16);
    expect(inputs.map(({ key }) => key).sort()).toEqual([
      'intake.port.length',
      'intake.valves.lift.close',
    ]);
    expect(inputs.every(({ given }) => given)).toBe(true);
    const shares = inputs.map(({ share_of_variance }) => share_of_variance);
    expect([...shares].sort((a, b) => b - a)).toEqual(shares);
    const [probability, low, high] = doubt.probability_better as [number, number, number];
    expect(low).toBeLessThanOrEqual(probability);
    expect(high).toBeGreaterThanOrEqual(probability);
    doubt.recommended.p5.forEach((value: number, i: number) => {
      expect(value).toBeLessThanOrEqual(doubt.recommended.p95[i]!);
    });
  }, 300_000);
});

describe('the store of a result folder', () => {
  it('starts anew without --resume and goes on with it', async () => {
    const [file, out] = [fileOf(quick), freshFolder()];
    const store = join(out, 'points.jsonl');
    await answer('sweep', file, '--out', out);
    const first = readFileSync(store, 'utf8');
    const document = readFileSync(join(out, 'sweep.json'), 'utf8');
    await answer('sweep', file, '--out', out, '--resume');
    expect(readFileSync(store, 'utf8')).toBe(first);
    expect(readFileSync(join(out, 'sweep.json'), 'utf8')).toBe(document);
    await answer('sweep', file, '--out', out);
    expect(readFileSync(store, 'utf8').length).toBe(first.length);
    rmSync(out, { recursive: true });
  });

  it('merges nothing without a folder', async () => {
    const { code, stderr } = await answer('merge', fileOf(quick));
    expect(code).toBe(2);
    expect(stderr).toContain('--out');
  });
});
