/** The command `listen` on the hill-climb four on a coarse mesh: levels, orders, sounds, wrong input. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import FFT from 'fft.js';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import wavefile from 'wavefile';
import { answer, coarseText, fileOf, freshFolder } from './commandLine.ts';

/** The strongest tone of a sound file [Hz], and how far apart frequencies lie. */
function strongest(path: string) {
  const wave = new wavefile.WaveFile(readFileSync(path));
  const samples = Array.from(wave.getSamples(false, Float64Array) as unknown as Float64Array);
  const count = 32768;
  const fft = new FFT(count);
  const out = fft.createComplexArray();
  fft.realTransform(out, samples.slice(20000, 20000 + count));
  const power = Array.from(
    { length: count / 2 },
    (_, i) => out[2 * i]! ** 2 + out[2 * i + 1]! ** 2,
  );
  const step = 44100 / count;
  return { frequency: power.indexOf(Math.max(...power)) * step, step };
}

describe('listen', () => {
  it('tells levels and orders, and writes sounds whose orders stand where they should', async () => {
    const folder = freshFolder();
    const asked = ['--against', '180mm', '--speed', '7000rpm', '--out', folder];
    const { code, stdout, stderr } = await answer('listen', fileOf(coarseText()), ...asked);
    expect(stderr).toBe('');
    expect(code).toBe(0);
    expect(stdout).toMatch(
      /The intake alone, full load, trumpets of 90 mm: 1[12]\d\.\d dB\(A\) at 0\.5 m/,
    );
    expect(stdout).toMatch(/ear plugs/);
    expect(stdout).toMatch(/no exhaust/);
    const document = JSON.parse(readFileSync(join(folder, 'listen.json'), 'utf8'));
    expect(document.schema).toEqual({ name: 'trumpetry-listen', version: 1 });
    expect(document.lengths_mm).toEqual([90, 180]);
    expect(document.levels).toHaveLength(6);
    for (const {
      level_near_dBA: near,
      level_far_dBA: far,
      level_near_dB: plain,
    } of document.levels) {
      // Fifteen times as far: 23.5 dB less, but for the ground and the length of the row.
      expect(near - far).toBeGreaterThan(15);
      expect(near - far).toBeLessThan(32);
      expect(plain).toBeGreaterThan(near - 2);
    }
    const { data } = Papa.parse(readFileSync(join(folder, 'listen-orders.csv'), 'utf8'), {
      header: true,
      skipEmptyLines: true,
    });
    expect(data.length).toBe(2 * document.orders[0].engine_order.length);
    document.orders.forEach((orders: Record<string, number[]>, k: number) => {
      const loudest = orders.level_near_dB!.indexOf(Math.max(...orders.level_near_dB!));
      // Four cylinders alike: even orders, all but the row's length.
      expect(orders.engine_order![loudest]! % 2).toBe(0);
      const file = join(folder, `listen-${[90, 180][k]}mm-7000rpm.wav`);
      const { frequency, step } = strongest(file);
      expect(Math.abs(frequency - orders.frequency_Hz![loudest]!)).toBeLessThan(step);
      const runUp = readFileSync(join(folder, `listen-${[90, 180][k]}mm-run-up.wav`));
      expect(runUp.length).toBe(44 + 2 * 8 * 44100);
    });
    expect(readFileSync(join(folder, 'listen.html'), 'utf8')).toMatch(/<svg/);
  }, 120_000);

  it('hears the inlet of the box where the feed is boosted, and says so', async () => {
    const folder = freshFolder();
    const feed = '  feed:\n    pressure: 0.5 bar gauge\n    temperature: 40 degC\n';
    const boosted = coarseText().replace('intake:\n', `intake:\n${feed}`);
    const asked = ['--speed', '7000rpm', '--out', folder];
    const { code, stdout } = await answer('listen', fileOf(boosted), ...asked);
    expect(code).toBe(0);
    expect(stdout).toMatch(/^The inlet of the box alone, full load, trumpets of 90 mm: \d/m);
    expect(stdout.replace(/\s+/g, ' ')).toMatch(
      /stand in a pressurised box.* as if it ended in the open air.* no section airbox/,
    );
    const document = JSON.parse(readFileSync(join(folder, 'listen.json'), 'utf8'));
    expect(document.heard).toBe('inlet of the box');
    const { level_near_dB: levels, engine_order: orders, frequency_Hz: at } = document.orders[0];
    const loudest = levels.indexOf(Math.max(...levels));
    expect(orders[loudest] % 2).toBe(0);
    const { frequency, step } = strongest(join(folder, 'listen-90mm-7000rpm.wav'));
    expect(Math.abs(frequency - at[loudest])).toBeLessThan(step);
  }, 120_000);

  it.each<[string, string, string[], RegExp]>([
    [
      'a length against itself',
      coarseText(),
      ['--against', '90mm'],
      /--against: this is the length itself/,
    ],
    ['no length', coarseText(), ['--against', '90'], /--against 90: 90 has no unit/],
    [
      'a firing order that leaves one out',
      coarseText().replace('  bore: 86 mm', '  firing:\n    order: 1-3-4-4\n  bore: 86 mm'),
      [],
      /engine\.firing\.order: the firing order misses 2, names 4 twice\n +limit: the numbers 1 to 4\n +remedy/,
    ],
  ])('refuses %s with a remedy and ends with 2', async (_, text, options, says) => {
    const { code, stdout, stderr } = await answer('listen', fileOf(text), ...options);
    expect(code).toBe(2);
    expect(stdout).toBe('');
    expect(stderr).toMatch(says);
  });
});
