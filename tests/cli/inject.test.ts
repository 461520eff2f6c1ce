/** The command `inject` on the six, on a coarse mesh at two speeds. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { slow } from '../slow.ts';
import { answer, fileOf, freshFolder } from './commandLine.ts';

const text = readFileSync('scenarios/endurance-six.yaml', 'utf8')
  .replace('from: 2500 rpm', 'from: 6000 rpm')
  .replace('to: 8000 rpm', 'to: 7000 rpm')
  .replace('step: 500 rpm', 'step: 1000 rpm')
  .replace('from: 4500 rpm', 'from: 6000 rpm')
  .replace(/\n {2}floors:\n(?: {4}.*\n)+/, '\n')
  .concat('\nnumerics:\n  intakeCell: 25 mm\n  exhaustCell: 60 mm\n  settle: 0.01\n');

describe('inject', () => {
  slow('says where to put them, writes what it says and ends with 0', async () => {
    const folder = freshFolder();
    const { code, stdout, stderr } = await answer('inject', fileOf(text), '--out', folder);
    expect(stderr).toBe('');
    expect(code).toBe(0);
    expect(stdout).toMatch(/near the valve/);
    expect(stdout).toMatch(/above the trumpet/);
    const document = JSON.parse(readFileSync(join(folder, 'inject.json'), 'utf8'));
    expect(document.schema).toMatchObject({ name: 'trumpetry-inject' });
    expect(document.speeds_rpm).toEqual([6000, 7000]);
    const { data, errors } = Papa.parse<Record<string, string>>(
      readFileSync(join(folder, 'inject.csv'), 'utf8'),
      { header: true, skipEmptyLines: true },
    );
    expect(errors).toEqual([]);
    expect(data.length).toBeGreaterThanOrEqual(4);
    expect(readFileSync(join(folder, 'inject.html'), 'utf8')).not.toMatch(/(src|href)="https?:/);
  });

  it('asks for two injectors where a scenario has none, and ends with 2', async () => {
    const { code, stdout, stderr } = await answer('inject', 'scenarios/hill-climb.yaml');
    expect(code).toBe(2);
    expect(stdout).toBe('');
    expect(stderr).toMatch(/needs two injectors a cylinder/);
  });
});
