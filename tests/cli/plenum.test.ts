/** The command `plenum` on the hill-climb four on a coarse mesh. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { answer, coarseText, fileOf, freshFolder } from './commandLine.ts';

const withPlenum = (...lines: string[]) =>
  coarseText().concat(`\nplenum:\n  ${lines.join('\n  ')}\n`);

describe('plenum', () => {
  it('says where each wins, writes what it says and ends with 0', async () => {
    const folder = freshFolder();
    const { code, stdout, stderr } = await answer(
      'plenum',
      fileOf(withPlenum('volume: 2.5 L', 'plateBore: 62 mm')),
      '--length',
      '180mm',
      '--out',
      folder,
    );
    expect(stderr).toBe('');
    expect(code).toBe(0);
    const document = JSON.parse(readFileSync(join(folder, 'plenum.json'), 'utf8'));
    expect(document.schema).toEqual({ name: 'trumpetry-plenum', version: 1 });
    expect(document.length_mm).toBe(180);
    expect(document.plenum_given).toBe(true);
    expect(document.plenum).toMatchObject({ plenum_volume_cm3: 2500, plate_bore_mm: 62 });
    const { gain_in_band_percent: gain } = document.bodies_against_plenum;
    const size = Math.abs(gain).toFixed(1);
    expect(stdout).toMatch(
      new RegExp(`Individual bodies on trumpets of 180 mm give (${size} % (more|less)|nothing)`),
    );
    expect(stdout).toMatch(/times as\s+much/);
    expect(stdout).not.toMatch(/no section plenum/);
    // In litres and decimetres: the plenum, 62 mm of body, four runners of 330 mm and ports from 45 to 41 mm.
    const port = (Math.PI / 12) * (0.45 ** 2 + 0.45 * 0.41 + 0.41 ** 2);
    const runner = (Math.PI / 4) * 0.45 ** 2 * 3.3;
    const room = 2.5 + (Math.PI / 4) * 0.62 ** 3 + 4 * (runner + port);
    // On 2 l at a filling of 0.8.
    const swept = Math.PI * 0.86 ** 3;
    expect(document.turns_to_fill.plenum).toBeCloseTo((2 * room) / (0.8 * swept), 2);
    for (const row of document.full_load) {
      const share = row.bodies_volumetric_efficiency / row.plenum_volumetric_efficiency - 1;
      expect(row.bodies_over_plenum_fraction).toBeCloseTo(share, 8);
      expect(row.plenum_mean_kPa).toBeLessThan(98.5);
    }
    const { data, errors } = Papa.parse<Record<string, string>>(
      readFileSync(join(folder, 'plenum.csv'), 'utf8'),
      { header: true, skipEmptyLines: true },
    );
    expect(errors).toEqual([]);
    expect(data.map(({ speed_rpm }) => Number(speed_rpm))).toEqual([6000, 7000, 8000]);
    expect(Number(data[0]!.plenum_swing_kPa)).toBe(document.full_load[0].plenum_swing_kPa);
    const page = readFileSync(join(folder, 'plenum.html'), 'utf8');
    expect(page).toMatch(/<svg/);
    expect(page).not.toMatch(/(src|href)="https?:/);
  }, 60_000);

  it.each([
    [['volume: 2.5'], /plenum\.volume: .*no unit/],
    [
      ['plateBore: 4 mm'],
      /:\d+:\d+ plenum\.plateBore: .*out of range[\s\S]*limit: 15 mm to 200 mm/,
    ],
    [
      ['runnerLength: 60 mm', 'mouthRadius: 38 mm'],
      /plenum\.runnerLength: the runner is hardly longer than its lip[\s\S]*limit: at least 86 mm[\s\S]*remedy: count from the rim/,
    ],
    [['throttle: 62 mm'], /plenum\.throttle: .*unknown key|plenum\.throttle/],
  ])('refuses %s', async (lines, said) => {
    const { code, stdout, stderr } = await answer('plenum', fileOf(withPlenum(...lines)));
    expect(stderr).toMatch(said);
    expect(stdout).toBe('');
    expect(code).toBe(2);
  });
});
