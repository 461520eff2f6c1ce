/** The command `pedal`: what it says and writes, and what it says of a wrong section. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { answer, fileOf, freshFolder } from './commandLine.ts';

const FOREST = readFileSync('scenarios/forest-four.yaml', 'utf8');

describe('pedal', () => {
  it('says whether plates shut and what the foot feels, writes it and ends with 0', async () => {
    const folder = freshFolder();
    const { code, stdout, stderr } = await answer('pedal', fileOf(FOREST), '--out', folder);
    expect(stderr).toBe('');
    expect(code).toBe(0);
    expect(stdout).toMatch(/Every plate is still drawn shut with any single spring/);
    expect(stdout).toMatch(/49 CFR 571\.124/);
    expect(stdout).toMatch(/licensed/);
    const read = (name: string) => readFileSync(join(folder, name), 'utf8');
    const document = JSON.parse(read('pedal.json'));
    expect(document.schema).toEqual({ name: 'trumpetry-pedal', version: 1 });
    expect(document.closes_with_any_part_gone).toBe(true);
    expect(document.hysteresis).toBeCloseTo(Math.exp((2 * 0.15 * 200 * Math.PI) / 180), 8);
    const { data } = Papa.parse<Record<string, string>>(read('pedal.csv'), {
      header: true,
      skipEmptyLines: true,
    });
    expect(data).toHaveLength(document.force.opening_deg.length);
    expect(Number(data.at(-1)!.opening_deg)).toBeCloseTo(82, 9);
    const page = read('pedal.html');
    expect(page).toMatch(/<svg/);
    expect(page).not.toMatch(/(src|href)="https?:|points? settled|Waves of finite/);
  });

  it('says NOT SAFE where one part gone leaves a plate open, with the part and the shaft', async () => {
    const alone = FOREST.replace(/(name: rear pair\n.*\n) {6}springs:\n(?: {8}.*\n)+/, '$1');
    expect(alone).not.toBe(FOREST);
    const { code, stdout } = await answer('pedal', fileOf(alone), '--json');
    expect(code).toBe(0);
    const document = JSON.parse(stdout);
    expect(document.closes_with_any_part_gone).toBe(false);
    const open = document.closing.filter(({ closes }: { closes: boolean }) => !closes);
    expect(open).toMatchObject([{ without: 'link front pair - rear pair', shaft: 'rear pair' }]);
    const text = await answer('pedal', fileOf(alone), '--out', freshFolder());
    const said = text.stdout.replace(/\s+/g, ' ');
    expect(said).toMatch(/NOT SAFE: .*rear pair without link front pair - rear pair/);
    expect(said).toMatch(/No spring of its own: rear pair/);
  });

  it('says how far the plates open where the foot meets a stop first', async () => {
    const short = FOREST.replace('travel: 85 mm', 'travel: 60 mm');
    const { stdout } = await answer('pedal', fileOf(short), '--json');
    // Foot travel runs straight with the angle: 0.2/0.115 of 32 mm a radian.
    const reached = (60 / ((200 / 115) * 32)) * (180 / Math.PI);
    expect(JSON.parse(stdout).reached_opening_deg).toBeCloseTo(reached, 6);
  });

  it.each<[string, string, RegExp, RegExp]>([
    ['no unit', FOREST.replace('lever: 32 mm', 'lever: 32'), /cable\.lever/, /unit/],
    [
      'plates that are not the cylinders',
      FOREST.replace('plates: 2 # cylinders 1', 'plates: 3 # cylinders 1'),
      /shafts\.0\.plates: all shafts together carry 5 plates/,
      /limit: +4, as engine\.cylinders/,
    ],
    [
      'a torsion spring with an arm',
      FOREST.replace('windUp: 45 deg', 'windUp: 45 deg\n          arm: 20 mm'),
      /springs\.0\.arm: a torsion spring has no such figure/,
      /remedy: leave it away/,
    ],
    [
      'a tension spring without preload',
      FOREST.replace(/ +preload: 8 N.*\n/, ''),
      /preload of a tension spring is missing/,
      /remedy: add preload/,
    ],
    [
      'a rate given twice',
      FOREST.replace('wire: 1 mm', 'rate: 1 N/mm\n          wire: 1 mm'),
      /the rate is given twice/,
      /give rate as measured, or wire/,
    ],
    [
      'a coil narrower than its wire',
      FOREST.replace('coil: 10 mm', 'coil: 1.5 mm'),
      /the coil is too narrow/,
      /limit: +at least 2 mm/,
    ],
    [
      'a driver that is not there',
      FOREST.replace('plates: 2 # cylinders 3', 'drivenBy: middle\n      plates: 2 # cylinders 3'),
      /there is no such shaft above/,
      /limit: +front pair/,
    ],
    [
      'two shafts of one name',
      FOREST.replace('name: rear pair', 'name: front pair'),
      /two shafts have this name/,
      /give each its own/,
    ],
    [
      'a cable near its dead centre',
      FOREST.replace('lever: 32 mm', 'squareAt: 120 deg\n    lever: 32 mm'),
      /near its dead centre/,
      /limit: +7 deg to 75 deg/,
    ],
  ])('refuses %s with line, limit and remedy', async (_, text, says, helps) => {
    const { code, stdout, stderr } = await answer('pedal', fileOf(text));
    expect(code).toBe(2);
    expect(stdout).toBe('');
    expect(stderr).toMatch(/engine\.yaml:\d+:\d+ /);
    expect(stderr).toMatch(says);
    expect(stderr).toMatch(helps);
  });

  it('asks for the section where there is none, and ends with 2', async () => {
    const { code, stdout, stderr } = await answer('pedal', 'scenarios/hill-climb.yaml');
    expect(code).toBe(2);
    expect(stdout).toBe('');
    expect(stderr).toMatch(/no section pedal; add one/);
  });
});
