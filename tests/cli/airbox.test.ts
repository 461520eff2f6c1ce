/** The command `airbox` on the hill-climb four on a coarse mesh. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { answer, coarseText, fileOf, freshFolder } from './commandLine.ts';

const withBox = (...lines: string[]) =>
  coarseText()
    .replace('step: 100 mm', 'step: 200 mm')
    .concat(`\nairbox:\n  ${lines.join('\n  ')}\n`);

describe('airbox', () => {
  it('says what the box does, writes what it says and ends with 0', async () => {
    const folder = freshFolder();
    const file = fileOf(withBox('volume: 6 L', 'snorkelDiameter: 70 mm', 'inletAt: middle'));
    const { code, stdout, stderr } = await answer('airbox', file, '--out', folder);
    expect(stderr).toBe('');
    expect(code).toBe(0);
    expect(stdout).toMatch(
      /A box of 6000 cm3 on a snorkel of 70 mm by 300 mm over trumpets of 90 mm/,
    );
    expect(stdout).toMatch(/flame trap/);
    expect(stdout).not.toMatch(/no section airbox/);
    const document = JSON.parse(readFileSync(join(folder, 'airbox.json'), 'utf8'));
    expect(document.schema).toEqual({ name: 'trumpetry-airbox', version: 1 });
    expect(document.airbox).toMatchObject({ box_volume_cm3: 6000, snorkel_bore_mm: 70 });
    const means = document.lengths.map((one: Record<string, number>) => one.box_band_mean);
    const best = document.lengths[means.indexOf(Math.max(...means))];
    expect(document.best_box_length_mm).toBe(best.length_mm);
    const read = (name: string) =>
      Papa.parse<Record<string, string>>(readFileSync(join(folder, name), 'utf8'), {
        header: true,
        skipEmptyLines: true,
      });
    const { data, errors } = read('airbox-cylinders.csv');
    expect(errors).toEqual([]);
    for (const row of document.full_load) {
      const own = data.filter(({ speed_rpm }) => Number(speed_rpm) === row.speed_rpm);
      expect(own.map(({ place_along_row }) => place_along_row)).toEqual(['1', '2', '3', '4']);
      const fillings = own.map((one) => Number(one.volumetric_efficiency));
      const spread =
        (Math.max(...fillings) - Math.min(...fillings)) / row.box_volumetric_efficiency;
      expect(row.box_spread_fraction).toBeCloseTo(spread, 8);
      expect(row.box_over_open_fraction).toBeCloseTo(
        row.box_volumetric_efficiency / row.open_volumetric_efficiency - 1,
        8,
      );
    }
    expect(readFileSync(join(folder, 'airbox.html'), 'utf8')).toMatch(/<svg/);
  }, 60_000);

  it.each([
    [['volume: 0.05 L'], /:\d+:\d+ airbox\.volume: .*out of range[\s\S]*limit: 100 cm3 to 200 L/],
    [['inletAt: side'], /airbox\.inletAt: [\s\S]*end[\s\S]*middle/],
    [['snorkelDiameter: 8'], /airbox\.snorkelDiameter: .*no unit/],
  ])('refuses %s', async (lines, said) => {
    const { code, stdout, stderr } = await answer('airbox', fileOf(withBox(...lines)));
    expect(stderr).toMatch(said);
    expect(stdout).toBe('');
    expect(code).toBe(2);
  });
});
