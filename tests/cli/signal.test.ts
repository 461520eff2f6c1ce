/** The command `signal` on the road four, on a coarse mesh at two speeds and three plate angles. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { answer, fileOf, freshFolder } from './commandLine.ts';

const demo = readFileSync('scenarios/road-four.yaml', 'utf8');
const text = demo
  .replace('joined: 4', 'joined: 1')
  .replace('  mostLag:', '  speeds: [4000 rpm]\n  angles: [9 deg, 20 deg, 90 deg]\n  mostLag:')
  .concat('\nnumerics:\n  intakeCell: 40 mm\n  exhaustCell: 150 mm\n  settle: 0.02\n');

const rowsOf = (csv: string) =>
  Papa.parse<Record<string, string>>(csv, { header: true, skipEmptyLines: true });

describe('signal', () => {
  it('says what the sensor sees, writes what it says and ends with 0', async () => {
    const folder = freshFolder();
    const { code, stdout, stderr } = await answer('signal', fileOf(text), '--out', folder);
    expect(stderr).toBe('');
    expect(code).toBe(0);
    expect(stdout).toMatch(/Smallest ripple within a lag of 20\.0 ms/);
    expect(stdout).toMatch(/bigger bar/);
    expect(stdout).toMatch(/As a barometer/);
    expect(stdout).toMatch(/Gauges on joined runners show \d+ % of the difference/);
    const document = JSON.parse(readFileSync(join(folder, 'signal.json'), 'utf8'));
    expect(document.schema).toMatchObject({ name: 'trumpetry-signal' });
    expect(document.points).toHaveLength(6);
    expect(document.hoses).toBe(4);
    const off = document.one_plate_off;
    expect(Math.abs(off.imbalance)).toBeLessThan(1e-9);
    expect(off.air_above_others_fraction).toBeGreaterThan(0.02);
    expect(off.fitted_air_above_others_fraction).toBeLessThan(off.air_above_others_fraction);
    expect(off.fitted_pressure_above_others_kPa).toBeLessThan(off.pressure_above_others_kPa);
    // Equal fuel with the common mixture at 1.
    expect((off.fitted_lambda + 3 * off.fitted_lambda_of_others) / 4).toBeCloseTo(1, 3);
    expect(off.air_given_fraction).toBeCloseTo(3 * off.air_got_by_each_other_fraction, 2);
    const points = rowsOf(readFileSync(join(folder, 'signal.csv'), 'utf8'));
    expect(points.errors).toEqual([]);
    for (const row of points.data) {
      expect(Number(row.ripple_kPa)).toBeLessThan(Number(row.one_runner_ripple_kPa));
    }
    const bars = rowsOf(readFileSync(join(folder, 'signal-bars.csv'), 'utf8'));
    expect(bars.data.filter((row) => row.unbeaten === 'true').length).toBeGreaterThan(3);
    expect(rowsOf(readFileSync(join(folder, 'signal-cycle.csv'), 'utf8')).data).toHaveLength(720);
    const page = readFileSync(join(folder, 'signal.html'), 'utf8');
    expect(page).not.toMatch(/(src|href)="https?:/);
    expect(page).toMatch(/<figcaption>The bar and its hoses, not to scale<\/figcaption>/);
    expect(page).toMatch(/jets of 1\.3 mm at the runners<\/text>/);
    // The map has a tile a point, with its figure in it.
    const map = /Ripple at the sensor over speed and plate angle[\s\S]*?<\/svg>/.exec(page)![0];
    expect(map.match(/<rect /g)).toHaveLength(6);
    for (const { ripple_kPa } of points.data)
      expect(map).toContain(`>${Number(ripple_kPa).toFixed(1)}</text>`);
  });

  it('asks for hoses and a bar where a scenario has none, and ends with 2', async () => {
    const { code, stdout, stderr } = await answer('signal', 'scenarios/hill-climb.yaml');
    expect(code).toBe(2);
    expect(stdout).toBe('');
    expect(stderr).toMatch(/needs hoses and a bar; add a section pressureBar/);
  });

  it('says that it cannot tell of cylinders fired unevenly, and ends with 2', async () => {
    const uneven = '  firing:\n    intervals: [90 deg, 270 deg, 90 deg, 270 deg]\n  bore: 82 mm';
    const { code, stdout, stderr } = await answer(
      'signal',
      fileOf(text.replace('  bore: 82 mm', uneven)),
    );
    expect(code).toBe(2);
    expect(stdout).toBe('');
    expect(stderr).toMatch(
      /takes cylinders fired evenly, and engine\.firing has them fire unevenly/,
    );
  });

  it('does not ask first for hoses where it could not tell of them anyway', async () => {
    const { code, stderr } = await answer('signal', 'scenarios/uneven-twin.yaml');
    expect(code).toBe(2);
    expect(stderr).toMatch(/fire unevenly; trace has the pressure behind the plate/);
    expect(stderr).not.toMatch(/add a section/);
  });

  it.each([
    [
      'hoseBore: 4 mm',
      'hoseBore: 0 mm',
      /:\d+:\d+ pressureBar\.hoseBore: .*out of range[\s\S]*limit: 0\.2 mm to 25 mm/,
    ],
    ['hoseLength: 350 mm', 'hoseLength: 0 mm', /pressureBar\.hoseLength: .*out of range/],
    [
      'volume: 20 cm3',
      'volume: 0.3 cm3',
      /smaller than the sensor's[\s\S]*limit: at least 0\.6 cm3[\s\S]*remedy: count all/,
    ],
    [
      'hoseBore: 4 mm',
      'hoseBore: 4 mm\n  hoses: 5',
      /more hoses than cylinders: 5 for 4[\s\S]*limit: at most 4[\s\S]*remedy: give each runner one/,
    ],
    [
      'jetBore: 1.3 mm',
      'jetBore: 5 mm',
      /the jet is wider than its hose[\s\S]*limit: at most 4 mm/,
    ],
    ['hoseBore: 4 mm', 'hoseBore: 4 mm\n  windowFrom: 600 deg', /the window ends before it starts/],
    [
      'hoseBore: 4 mm',
      'hoseBore: 4 mm\n  angles: [5 deg, 90 deg]',
      /the plate is shut[\s\S]*limit: more than 7 deg/,
    ],
  ])('refuses %s as %s', async (right, wrong, said) => {
    const { code, stdout, stderr } = await answer('signal', fileOf(demo.replace(right, wrong)));
    expect(stderr).toMatch(said);
    expect(stdout).toBe('');
    expect(code).toBe(2);
  });
});
