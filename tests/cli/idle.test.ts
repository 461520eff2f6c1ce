/** The command `idle` on the road four. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { answer, fileOf, freshFolder } from './commandLine.ts';

const demo = readFileSync('scenarios/road-four.yaml', 'utf8');

describe('idle', () => {
  it('says what air can come through, writes what it says and ends with 0', async () => {
    const folder = freshFolder();
    const { code, stdout, stderr } = await answer('idle', fileOf(demo), '--out', folder);
    expect(stderr).toBe('');
    expect(code).toBe(0);
    expect(stdout).toMatch(/Best of these/);
    expect(stdout).toMatch(/misfires alone/);
    expect(stdout).toMatch(/must still shut by itself/);
    const document = JSON.parse(readFileSync(join(folder, 'idle.json'), 'utf8'));
    expect(document.schema).toMatchObject({ name: 'trumpetry-idle' });
    expect(document.ways).toHaveLength(6);
    const { data, errors } = Papa.parse<Record<string, string>>(
      readFileSync(join(folder, 'idle.csv'), 'utf8'),
      { header: true, skipEmptyLines: true },
    );
    expect(errors).toEqual([]);
    expect(data.map((row) => row.way)).toContain('pressure bar');
    expect(readFileSync(join(folder, 'idle.html'), 'utf8')).not.toMatch(/(src|href)="https?:/);
  });

  it('leaves the pressure bar out where the file has none', async () => {
    const without = demo.replace(/\npressureBar:\n(?: {2}.*\n)+/, '\n');
    const { code, stdout } = await answer('idle', fileOf(without), '--json');
    expect(code).toBe(0);
    expect(JSON.parse(stdout).ways).toHaveLength(5);
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
  ])('refuses %s as %s', async (right, wrong, said) => {
    const { code, stdout, stderr } = await answer('idle', fileOf(demo.replace(right, wrong)));
    expect(stderr).toMatch(said);
    expect(stdout).toBe('');
    expect(code).toBe(2);
  });
});
