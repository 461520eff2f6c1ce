/** The command `idle` on the road four. */
import { readFileSync } from 'node:fs';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { slow } from '../slow.ts';
import { answer, fileOf } from './commandLine.ts';
import { knownAnswer } from './knownAnswer.ts';

const demo = readFileSync('scenarios/road-four.yaml', 'utf8');

describe('idle', () => {
  it('says what air can come through, writes what it says and ends with 0', async () => {
    const { code, stdout, stderr, files } = await knownAnswer('road-four', 'idle');
    expect(stderr).toBe('');
    expect(code).toBe(0);
    expect(stdout).toMatch(/Best of these/);
    expect(stdout).toMatch(/misfires alone/);
    expect(stdout).toMatch(/must still shut by itself/);
    const document = JSON.parse(files['idle.json']!);
    expect(document.schema).toMatchObject({ name: 'trumpetry-idle' });
    expect(document.ways).toHaveLength(6);
    expect(document.computed).toHaveLength(24);
    expect(document.spark_late).toHaveLength(2);
    const { data, errors } = Papa.parse<Record<string, string>>(files['idle.csv']!, {
      header: true,
      skipEmptyLines: true,
    });
    expect(errors).toEqual([]);
    expect(data.map((row) => row.way)).toContain('pressure bar');
    for (const name of ['idle-computed.csv', 'idle-spark.csv', 'idle-valve.csv']) {
      expect(files[name]!.split('\r\n').length).toBeGreaterThan(3);
    }
    expect(files['idle.html']).not.toMatch(/(src|href)="https?:/);
  });

  it('leaves the pressure bar out where the file has none', async () => {
    const { code, files } = await knownAnswer('road-four', 'idle-no-bar');
    expect(code).toBe(0);
    const { ways, computed } = JSON.parse(files['idle.json']!);
    expect(ways).toHaveLength(5);
    expect(computed).toHaveLength(20);
    expect(computed[0].sensor_ripple_kPa).toBeNull();
  });

  slow('computes all of it on the spot', { timeout: 600_000 }, async () => {
    const mesh = '\nnumerics:\n  intakeCell: 50 mm\n  exhaustCell: 200 mm\n  settle: 0.02\n';
    const { code, stderr } = await answer('idle', fileOf(demo.concat(mesh)), '--json');
    expect(stderr).toBe('');
    expect(code).toBe(0);
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
