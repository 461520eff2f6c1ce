/** The command `response` on the hill-climb four on a coarse mesh. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { answer, coarseText, fileOf, freshFolder } from './commandLine.ts';

describe('response', () => {
  it('follows every charge, says when all are there, and writes what it says', async () => {
    const folder = freshFolder();
    const asked = ['--speed', '5000rpm', '--from', '12deg', '--to', '40deg', '--within', '10ms'];
    const { code, stdout, stderr } = await answer(
      'response',
      fileOf(coarseText()),
      ...asked,
      '--out',
      folder,
    );
    expect(stderr).toBe('');
    expect(code).toBe(0);
    const document = JSON.parse(readFileSync(join(folder, 'response.json'), 'utf8'));
    expect(document.schema).toEqual({ name: 'trumpetry-response', version: 1 });
    expect(document).toMatchObject({ speed_rpm: 5000, within_ms: 10, failures: [] });
    expect(document.ways.map(({ way }: { way: string }) => way)).toEqual([
      'bodies',
      'box',
      'plenum',
    ]);
    const { data, errors } = Papa.parse<Record<string, string>>(
      readFileSync(join(folder, 'response-charges.csv'), 'utf8'),
      { header: true, skipEmptyLines: true },
    );
    expect(errors).toEqual([]);
    for (const one of document.ways) {
      const own = data
        .filter(({ way }) => way === one.way)
        .map((row) => ({
          share: Number(row.share_of_change),
          at: Number(row.firing_ms),
          lambda: Number(row.lambda_over_wanted),
        }));
      expect(own.length).toBe(40);
      // Closings of four cylinders lie half a turn apart: 6 ms.
      expect(own[1]!.at - own[0]!.at).toBeCloseTo(6, 6);
      const first = own.findIndex((_, i) => own.slice(i, i + 4).every(({ share }) => share >= 0.9));
      expect(one.all_there_ms).toBeCloseTo(own[first]!.at, 6);
      expect(one.lean_charges).toBe(own.filter(({ lambda }) => lambda > 1.1).length);
    }
    const [bodies] = document.ways;
    expect(stdout.replace(/\s+/g, ' ')).toContain(
      `nine tenths of the new torque from ${bodies.all_there_ms.toFixed(0)} ms on`,
    );
    expect(stdout).toMatch(/burns pistons/);
    expect(readFileSync(join(folder, 'response.html'), 'utf8')).toMatch(/<svg/);
  }, 60_000);

  it.each([
    [['--from', '2deg'], /--from 2deg: .*limit: at least 5 deg; open them more/],
    [
      ['--from', '20deg', '--to', '10deg'],
      /--to 10deg: plates do not open; limit: more than 20 deg, at most 82 deg/,
    ],
    [['--to', '95deg'], /--to 95deg: .*out of range/],
    [['--within', '50'], /--within 50: 50 has no unit/],
  ])('refuses %s and ends with 2', async (options, said) => {
    const { code, stdout, stderr } = await answer('response', fileOf(coarseText()), ...options);
    expect(code).toBe(2);
    expect(stdout).toBe('');
    expect(stderr).toMatch(said);
  });
});
