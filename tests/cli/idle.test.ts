/** The command `idle` on the road four. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { answer, fileOf, freshFolder } from './commandLine.ts';

const demo = readFileSync('scenarios/road-four.yaml', 'utf8');
/** On a mesh that tells little, so that it is quick. */
const quick = demo.concat(
  '\nnumerics:\n  intakeCell: 50 mm\n  exhaustCell: 200 mm\n  settle: 0.02\n',
);

describe('idle', () => {
  it('says what air can come through, writes what it says and ends with 0', async () => {
    const folder = freshFolder();
    const { code, stdout, stderr } = await answer('idle', fileOf(quick), '--out', folder);
    expect(stderr).toBe('');
    expect(code).toBe(0);
    expect(stdout).toMatch(/Best of these/);
    expect(stdout).toMatch(/misfires alone/);
    expect(stdout).toMatch(/must still shut by itself/);
    const document = JSON.parse(readFileSync(join(folder, 'idle.json'), 'utf8'));
    expect(document.schema).toMatchObject({ name: 'trumpetry-idle' });
    expect(document.ways).toHaveLength(6);
    expect(document.computed).toHaveLength(24);
    expect(document.spark_late).toHaveLength(2);
    const { data, errors } = Papa.parse<Record<string, string>>(
      readFileSync(join(folder, 'idle.csv'), 'utf8'),
      { header: true, skipEmptyLines: true },
    );
    expect(errors).toEqual([]);
    expect(data.map((row) => row.way)).toContain('pressure bar');
    for (const name of ['idle-computed.csv', 'idle-spark.csv', 'idle-valve.csv']) {
      expect(readFileSync(join(folder, name), 'utf8').split('\r\n').length).toBeGreaterThan(3);
    }
    expect(readFileSync(join(folder, 'idle.html'), 'utf8')).not.toMatch(/(src|href)="https?:/);
  });

  it('leaves the pressure bar out where the file has none', async () => {
    const without = quick.replace(/\npressureBar:\n(?: {2}.*\n)+/, '\n');
    const { code, stdout } = await answer('idle', fileOf(without), '--json');
    expect(code).toBe(0);
    const { ways, computed } = JSON.parse(stdout);
    expect(ways).toHaveLength(5);
    expect(computed).toHaveLength(20);
    expect(computed[0].sensor_ripple_kPa).toBeNull();
  });

  it('asks for a section where a scenario has none, and ends with 2', async () => {
    const { code, stderr } = await answer('idle', 'scenarios/hill-climb.yaml');
    expect(code).toBe(2);
    expect(stderr).toMatch(/no section idle; add one/);
  });

  it.each([
    [
      'frequency: 100 Hz',
      'frequency: 0 Hz',
      /:\d+:\d+ idle\.frequency: .*out of range[\s\S]*limit: 2 Hz to 2000 Hz/,
    ],
    [
      'deadTime: 1.5 ms',
      'deadTime: 12 ms',
      /the valve never opens[\s\S]*limit: less than 0\.01 s[\s\S]*remedy: drive it/,
    ],
    [
      'valveBore: 6 mm',
      'valveBore: 6 mm\n  nippleBore: 9 mm',
      /the nipple is wider than its hose[\s\S]*limit: at most 6 mm/,
    ],
    ['valveBore: 6 mm', 'valveBore: 0 mm', /idle\.valveBore: .*out of range/],
    ['frequency: 100 Hz', 'frequency: -100 Hz', /idle\.frequency: .*[\s\S]*limit: 2 Hz to 2000 Hz/],
    ['frequency: 100 Hz', 'frequency: 100 kPa', /:\d+:\d+ idle\.frequency: .*\n.*limit/],
    ['frequency: 100 Hz', 'frequency: .nan', /:\d+:\d+ idle\.frequency: /],
  ])('refuses %s as %s', async (right, wrong, said) => {
    const { code, stdout, stderr } = await answer('idle', fileOf(demo.replace(right, wrong)));
    expect(stderr).toMatch(said);
    expect(stdout).toBe('');
    expect(code).toBe(2);
  });
});
