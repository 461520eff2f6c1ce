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
      'far',
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
          pressure: Number(row.lambda_over_wanted_by_pressure),
          angle: Number(row.lambda_over_wanted_by_angle),
        }));
      expect(own.length).toBe(40);
      // Closings of four cylinders lie half a turn apart: 6 ms.
      expect(own[1]!.at - own[0]!.at).toBeCloseTo(6, 6);
      const begin = own.findIndex((_, i) => own.slice(i, i + 4).every(({ share }) => share >= 0.9));
      expect(one.all_there_ms).toBeCloseTo(own[begin]!.at, 6);
      for (const signal of ['pressure', 'angle'] as const) {
        const fuelled = document.fuelled.find(
          (row: Record<string, unknown>) => row.way === one.way && row.fuelled_by === signal,
        );
        const lambdas = own.map((row) => row[signal]);
        expect(fuelled.lean_charges).toBe(lambdas.filter((lambda) => lambda > 1.1).length);
        expect(fuelled.leanest_lambda_over_wanted).toBeCloseTo(Math.max(...lambdas), 8);
        expect(fuelled.richest_lambda_over_wanted).toBeCloseTo(Math.min(...lambdas), 8);
      }
      const cylinders = document.cylinders.filter(({ way }: { way: string }) => way === one.way);
      expect(cylinders.map(({ cylinder }: { cylinder: number }) => cylinder)).toHaveLength(4);
      const first = cylinders.map((row: Record<string, number>) => row.first_there_ms);
      expect(Math.min(...first)).toBeCloseTo(one.quickest_first_there_ms, 8);
      expect(Math.max(...first)).toBeCloseTo(one.slowest_first_there_ms, 8);
    }
    const [bodies] = document.ways;
    expect(stdout.replace(/\s+/g, ' ')).toContain(
      `nine tenths of the new torque from ${bodies.all_there_ms.toFixed(0)} ms on`,
    );
    expect(document.film).toBeNull();
    expect(stdout).toMatch(/Walls are taken as dry, for the file has no injectors/);
    expect(stdout).toMatch(/no place nearer to the valve/);
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
