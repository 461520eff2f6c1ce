/** balance: the command from files to exit codes. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { cheapText } from '../golden/cheap.ts';
import { answer, fileOf, freshFolder } from './commandLine.ts';

const ENGINE = 'scenarios/hill-climb.yaml';
const READINGS = 'scenarios/hill-climb-bodies.csv';
const HEAD = 'speed_rpm,plate_deg,cylinder,vacuum_kPa';
const at = (rows: readonly string[], head = HEAD) =>
  fileOf(`${[head, ...rows].join('\n')}\n`, 'bodies.csv');
const idle = (values: readonly unknown[]) => values.map((x, i) => `1000,9,${i + 1},${x}`);

test('names screws, ways and turns in the order of work', async () => {
  const out = freshFolder();
  const { code, stdout, stderr } = await answer(
    ...['balance', ENGINE, '--readings', READINGS, '--json', '--out', out],
  );
  expect([code, stderr]).toEqual([0, '']);
  const document = JSON.parse(stdout);
  expect(document.schema).toEqual({ name: 'trumpetry-balance', version: 1 });
  const { turns } = document;
  expect(turns).toHaveLength(8);
  expect(turns.map(({ screw }: { screw: string }) => screw).join(' ')).toMatch(
    /^(stop ){4}(bleed ?){4}$/,
  );
  // Body 1 stays; plate 3 was put in open too far, so its stop goes out; bleed 4 passes too much, so in.
  const [first] = turns;
  expect(first).toMatchObject({ cylinder: 1, way: 'leave', turns: 0 });
  const of = (screw: string, cylinder: number) =>
    turns.find((one: typeof first) => one.screw === screw && one.cylinder === cylinder);
  expect(of('stop', 3)).toMatchObject({ way: 'out' });
  expect(of('stop', 2)).toMatchObject({ way: 'in' });
  expect(of('bleed', 4)).toMatchObject({ way: 'in' });
  const csv = readFileSync(join(out, 'balance.csv'), 'utf8').trimEnd().split('\r\n');
  expect(csv).toHaveLength(9);
  const report = readFileSync(join(out, 'balance.html'), 'utf8');
  expect(report).toContain('Air of every body over plate angle');
  expect(report).not.toMatch(/NaN|undefined/);
});

test('without readings: plates, shaft, bleed and trumpet of one body, with the exhaust', async () => {
  const engine = fileOf(
    cheapText('hill-climb', { numerics: { intakeCell: '25 mm', exhaustCell: '60 mm' } }),
    'engine.yaml',
  );
  const out = freshFolder();
  const { code, stdout } = await answer('balance', engine, '--json', '--out', out);
  expect(code).toBe(0);
  const { rows, faults } = JSON.parse(stdout);
  expect([rows.length, faults.length]).toEqual([12, 9]);
  // Up to lambda 1 a leaner cylinder is a hotter one; an open plate that is off changes nothing.
  expect(rows[1].air_change).toBeGreaterThan(0.05);
  // A fifth of a degree at each load: much of the air at idle, a little at part load, nothing wide open.
  const [idle, part, open] = [2, 6, 10].map((i) => Math.abs(rows[i].air_change));
  expect([rows[2], rows[6], rows[10]].map((row) => row.plate_error_deg)).toEqual([0.2, 0.2, 0.2]);
  expect(idle!).toBeGreaterThan(0.15);
  expect(part!).toBeLessThan(0.03);
  expect(open!).toBeLessThan(0.005);
  expect(rows[1].exhaust_hotter_K).toBeGreaterThan(10);
  expect(Math.abs(rows[11].exhaust_hotter_K)).toBeLessThan(3);
  const of = (fault: string) =>
    faults.filter((row: { fault: string }) => row.fault.startsWith(fault));
  for (const idleFault of ['worn shaft', 'bleed screw'])
    expect(of(idleFault)[0].air_change).toBeGreaterThan(20 * Math.abs(of(idleFault)[2].air_change));
  expect(Math.abs(of('trumpet')[2].air_change)).toBeGreaterThan(
    5 * Math.abs(of('trumpet')[0].air_change),
  );
  const csv = readFileSync(join(out, 'balance-faults.csv'), 'utf8').trimEnd().split('\r\n');
  expect(csv).toHaveLength(10);
}, 120_000);

test('a unit of vacuum or flow does not matter, and less vacuum is more air', async () => {
  const read = async (rows: readonly string[], head: string) => {
    const { stdout } = await answer('balance', ENGINE, '--readings', at(rows, head), '--json');
    return JSON.parse(stdout).readings.map((one: { air_above_mean: number }) => one.air_above_mean);
  };
  const vacuum = [50, 52, 48, 50];
  const kPa = await read(idle(vacuum), HEAD);
  const mmHg = await read(idle(vacuum.map((x) => x * 7.500617)), HEAD.replace('kPa', 'mmHg'));
  expect(kPa[2]).toBeGreaterThan(0);
  kPa.forEach((air: number, i: number) => {
    expect(mmHg[i]).toBeCloseTo(air, 5);
  });
  const flow = await read(idle([1.5, 1.4, 1.6, 1.5]), 'speed_rpm,plate_deg,body,flow_kg_per_h');
  expect(flow[2]).toBeGreaterThan(0.03);
});

describe('wrong input ends with 2: line, limit, remedy', () => {
  const four = idle([50, 50, 50, 50]);
  test.each<[string[], string[]]>([
    [['--readings', 'nowhere.csv'], ['nowhere.csv: there is no such file']],
    [
      ['--readings', at(four.slice(0, 3))],
      [':2:1 cylinder: at 1000 rpm and 9 deg 3 of 4', '4'],
    ],
    [
      ['--readings', at(idle([1, 0, 1, 1]), HEAD.replace('vacuum_kPa', 'flow_g_per_s'))],
      [':3:1 flow_g_per_s: 0 is out of range', 'limit: 0.01 g/s'],
    ],
    [
      ['--readings', at(four, HEAD.replace('vacuum_kPa', 'vacuum'))],
      [
        ':1:1 no column of vacuum with its unit',
        'write its unit into the head, for example "vacuum_',
      ],
    ],
    [
      ['--readings', at(['1000,8,1,50', ...four])],
      [':2:1 plate_deg: the plate is shut', '8 deg'],
    ],
    [['--readings', at(['1000,400,1,50', ...four])], [':2:1 plate_deg: 400 is out of range']],
    [
      ['--readings', at(['1000,400,1,50', ...four.slice(1)])],
      [
        ':2:1 plate_deg: 400 is out of range',
        'limit: 0 deg to 90 deg',
        '1 problem in the readings',
      ],
    ],
    [
      ['--readings', at(idle([0.5, 0.5, 0.5, 0.5]), HEAD.replace('vacuum_kPa', 'flow'))],
      [':1:1 no column of flow with its unit', 'write its unit into the head, for example "flow_'],
    ],
    [
      ['--spacing', '1000mm', '--lever', '22mm'],
      ['--spacing 1000mm: 1000mm is out of range; limit: 5 mm to 300 mm; keep within the limit.\n'],
    ],
    [['--spacing', '95', '--lever', '22mm'], ['95 has no unit']],
    [['--spacing', '95mm'], ['--spacing and --lever belong together']],
    [
      ['--readings', at(four, `# master: 5\n${HEAD}`)],
      [':1:1 master: there is no body 5', '1 to 4'],
    ],
    [
      ['--readings', at(four, `# lever: 22\n${HEAD}`)],
      [':1:1 lever:', 'limit', 'remedy'],
    ],
    [['--readings', at(four, `# gauge: 90 %\n${HEAD}`)], [':1:1 gauge: 90 % is out of range']],
    [['--readings', at([])], ['there are no readings']],
  ])('%j', async (options, messages) => {
    const { code, stdout, stderr } = await answer('balance', ENGINE, ...options);
    expect(code).toBe(2);
    expect(stdout).toBe('');
    for (const message of messages) expect(stderr).toContain(message);
  });
});
