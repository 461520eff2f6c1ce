/** The command `meter` on the hill-climb four on a coarse mesh. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { answer, coarseText, fileOf, freshFolder } from './commandLine.ts';

const TABLE = ['speeds: [2300 rpm, 8000 rpm]', 'angles: [14 deg, 38 deg, 90 deg]'];
const withMeter = (...lines: string[]) =>
  coarseText().concat(`\nmeter:\n  ${[...TABLE, ...lines].join('\n  ')}\n`);

describe('meter', () => {
  it('says which sensor to trust, writes what it says and ends with 0', async () => {
    const folder = freshFolder();
    const file = fileOf(withMeter('kind: difference', 'allowed: 6 %'));
    const { code, stdout, stderr } = await answer('meter', file, '--out', folder);
    expect(stderr).toBe('');
    expect(code).toBe(0);
    const document = JSON.parse(readFileSync(join(folder, 'meter.json'), 'utf8'));
    expect(document.schema).toEqual({ name: 'trumpetry-meter', version: 1 });
    expect(document).toMatchObject({ meter_given: true, airbox_given: false });
    expect(document.meter).toMatchObject({
      meter_kind: 'difference',
      allowed_error_fraction: 0.06,
    });
    const { data, errors } = Papa.parse<Record<string, string>>(
      readFileSync(join(folder, 'meter.csv'), 'utf8'),
      { header: true, skipEmptyLines: true },
    );
    expect(errors).toEqual([]);
    expect(data.map(({ speed_rpm }) => speed_rpm)).toEqual([
      ...Array(3).fill('2300'),
      ...Array(3).fill('8000'),
    ]);
    const names = { 'flow meter': 'flow', pressure: 'pressure', 'plate angle': 'angle' };
    const count: Record<string, number> = { flow: 0, pressure: 0, angle: 0, none: 0 };
    for (const [i, row] of data.entries()) {
      const sizes = Object.entries(names).map(([name, key]) => {
        const text = row[`${key}_error_fraction`]!;
        const size = text === '' ? Number.POSITIVE_INFINITY : Number(text);
        return { name, key, size };
      });
      const best = sizes.reduce((a, b) => (b.size < a.size ? b : a));
      const trusted = best.size <= 0.06 ? best : { name: 'none', key: 'none' };
      expect(row.trust).toBe(trusted.name);
      count[trusted.key]! += 1;
      const under = document.under[i];
      // By difference of pressure the meter's own error is the square-root error.
      expect(under.meter_pulsation_error_fraction).toBeCloseTo(under.difference_error_fraction, 9);
      const own = Math.hypot(under.difference_error_fraction, 0.02);
      expect(Number(row.flow_error_fraction)).toBeCloseTo(own, 8);
    }
    expect(document.trusted_at).toEqual(count);
    const flows = document.under.map((one: Record<string, number>) => one.mean_flow_g_per_s);
    expect(document.range.turn_down).toBeCloseTo(Math.max(...flows) / Math.min(...flows), 6);
    const most = Math.max(count.flow!, count.pressure!, count.angle!);
    expect(stdout.replace(/\s+/g, ' ')).toMatch(
      new RegExp(`Trust the .* most: of 6 speeds and openings it is the least wrong at ${most}`),
    );
    expect(stdout).toMatch(/lambda measured/);
    expect(stdout).toMatch(/no section airbox:/);
    expect(readFileSync(join(folder, 'meter.html'), 'utf8')).toMatch(/<svg/);
  }, 60_000);

  it.each([
    [['kind: vane'], /meter\.kind: [\s\S]*hot[\s\S]*difference[\s\S]*straight/],
    [
      ['position: 400 mm'],
      /meter\.position: the meter stands beyond the snorkel[\s\S]*at most 300 mm/,
    ],
    [['turnDown: 1'], /meter\.turnDown: .*out of range[\s\S]*limit: 2 to 1000/],
    [['lag: 5'], /meter\.lag: .*no unit/],
    [['climb: 9000 m'], /meter\.climb: .*out of range[\s\S]*6000 m/],
    [['correction: yes'], /meter\.correction: [\s\S]*day[\s\S]*none/],
    [['meters: 2'], /meters/],
  ])('refuses %s and ends with 2', async (lines, said) => {
    const { code, stdout, stderr } = await answer('meter', fileOf(withMeter(...lines)));
    expect(stderr).toMatch(said);
    expect(stdout).toBe('');
    expect(code).toBe(2);
  });

  it('refuses plates that are shut and speeds that fall', async () => {
    const shut = withMeter().replace('[14 deg,', '[7 deg,');
    const refused = await answer('meter', fileOf(shut));
    expect(refused.stderr).toMatch(/meter\.angles\.0: the plate is shut[\s\S]*more than 8 deg/);
    const falling = withMeter().replace('[2300 rpm, 8000 rpm]', '[8000 rpm, 2300 rpm]');
    expect((await answer('meter', fileOf(falling))).stderr).toMatch(/meter\.speeds/);
  });
});
