/** check, curve and trace. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { answer, coarseText, fileOf, freshFolder } from './commandLine.ts';

const file = fileOf(coarseText());

describe('check', () => {
  test('says what was understood, in the units of a builder', async () => {
    const { code, stdout, stderr } = await answer('check', 'scenarios/hill-climb.yaml');
    expect(code).toBe(0);
    expect(stderr).toBe('');
    const words = stdout.replace(/\s+/g, ' ');
    expect(words).toContain('Target from 5400 rpm to 7400 rpm');
    expect(words).toContain('trumpet length 90 mm, diameter 45 mm');
    for (const lift of [
      'open 28 deg BTDC, close 60 deg ABDC, check lift 1 mm, maximum 10.8 mm',
      'open 58 deg BBDC, close 26 deg ATDC, check lift 1 mm, maximum 10.2 mm',
    ]) {
      expect(words).toContain(`valves lift ${lift}`);
    }
    expect(words).toContain('pressure 985 mbar temperature 20 degC humidity 0.55 (55 %)');
    expect(words).toContain('1998 cc together');
    expect(words).toContain('69.745 mbar (28 inH2O)');
    expect(words).toContain('flow 29 cfm to 234 cfm');
    expect(stdout).toMatch(/engine\.wallTemperature +450 K +common practice, no source/);
    expect(stdout).toContain('length to cut');
  });

  test('shows warnings', async () => {
    const text = coarseText().replace('length: 90 mm', 'length: 1.5 m');
    const fast = text
      .replace('stroke: 86 mm', 'stroke: 120 mm')
      .replace('rod: 143 mm', 'rod: 200 mm');
    const { code, stdout } = await answer('check', fileOf(fast));
    expect(code).toBe(0);
    expect(stdout).toMatch(
      /Warnings\n(?: {2}.*\n)* {2}speeds: the mean piston speed reaches 32.0 m\/s/,
    );
  });

  test.each(['hill-climb', 'sprint-single', 'endurance-six', 'boosted-four'])(
    '%s as JSON',
    async (name) => {
      const { code, stdout, stderr } = await answer('check', `scenarios/${name}.yaml`, '--json');
      expect(code).toBe(0);
      expect(stderr).toBe('');
      const document = JSON.parse(stdout);
      expect(document.schema).toEqual({ name: 'trumpetry-check', version: 1 });
      expect(document.scenario.hash).toMatch(/^[0-9a-f]{64}$/);
      expect(document.lengths_mm.length).toBeGreaterThan(5);
      expect(JSON.stringify(document.facts)).not.toMatch(/NaN|undefined|Infinity/);
    },
  );
});

test('curve: the length asked for, at every speed', async () => {
  const out = freshFolder();
  const { code, stdout, stderr } = await answer(
    'curve',
    file,
    '--length',
    '180mm',
    '--json',
    '--out',
    out,
  );
  const document = JSON.parse(stdout);
  expect(stderr).toBe('');
  expect(document.schema.name).toBe('trumpetry-curve');
  expect(document.length_mm).toBe(180);
  // Those of the file and what it took to resolve the curve between them.
  expect(document.speeds_rpm).toEqual(expect.arrayContaining([6000, 7000, 8000]));
  expect(document.speeds_rpm).toEqual([...document.speeds_rpm].sort((a, b) => a - b));
  expect(document.speeds_rpm.length).toBeGreaterThan(3);
  expect(document.volumetric_efficiency).toHaveLength(document.speeds_rpm.length);
  expect(code).toBe(document.settled.every((one: boolean) => one) ? 0 : 1);
  const rows = readFileSync(join(out, 'curve.csv'), 'utf8').trimEnd().split('\r\n');
  expect(rows).toHaveLength(document.speeds_rpm.length + 1);
  expect(readFileSync(join(out, 'curve.html'), 'utf8')).toMatch(/With trumpets of 180.mm/);
});

test('trace: one cycle at the stations asked for', async () => {
  const out = freshFolder();
  const { code, stdout, stderr } = await answer(
    ...['trace', file, '--speed', '7000 rpm', '--length', '7 in', '--out', out],
    ...['--stations', 'port,runner:50%'],
  );
  expect(stderr).toBe('');
  expect(code).toBe(0);
  expect(stdout).toMatch(/One cycle at 7000 rpm with trumpets of 177.8 mm: \d+ rows/);
  const [heads, ...rows] = readFileSync(join(out, 'trace.csv'), 'utf8')
    .trimEnd()
    .split('\r\n')
    .map((line) => line.split(','));
  expect(heads).toEqual([
    ...['crank_angle_deg', 'cylinder_pressure_kPa', 'cylinder_temperature_K'],
    ...['intake_lift_mm', 'exhaust_lift_mm'],
    ...[
      'port_pressure_kPa',
      'port_velocity_m_per_s',
      'port_mass_flow_g_per_s',
      'port_temperature_K',
    ],
    ...['runner_50_pressure_kPa', 'runner_50_velocity_m_per_s'],
    ...['runner_50_mass_flow_g_per_s', 'runner_50_temperature_K'],
  ]);
  const angles = rows.map(([angle]) => Number(angle));
  expect(angles).toEqual([...angles].sort((a, b) => a - b));
  expect(angles[0]).toBeGreaterThanOrEqual(0);
  expect(angles.at(-1)).toBeLessThanOrEqual(720);
  expect(angles.length).toBeGreaterThan(200);
  const peakLift = Math.max(...rows.map((row) => Number(row[3])));
  expect(peakLift).toBeGreaterThan(10.7);
  expect(peakLift).toBeLessThanOrEqual(10.8);
  for (const row of rows) expect(row.every((cell) => Number.isFinite(Number(cell)))).toBe(true);
});
