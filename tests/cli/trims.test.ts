/** trims: the command from files to exit codes. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { answer, fileOf, freshFolder } from './commandLine.ts';

const ENGINE = 'scenarios/hill-climb.yaml';
const READINGS = 'scenarios/hill-climb-lambda.csv';
const HEAD = 'speed_rpm,plate_deg,cylinder,lambda';
const GASES = 'speed_rpm,plate_deg,cylinder,CO_percent,CO2_percent,O2_percent,HC_ppm';
const at = (rows: readonly string[], head = HEAD) =>
  fileOf(`${[head, ...rows].join('\n')}\n`, 'readings.csv');
const idle = (lambdas: readonly unknown[]) => lambdas.map((x, i) => `1000,9,${i + 1},${x}`);

test('names the lean cylinder, its plate, the injector, and one trim a cylinder', async () => {
  const out = freshFolder();
  const { code, stdout, stderr } = await answer(
    ...['trims', ENGINE, '--readings', READINGS, '--json', '--out', out],
  );
  expect([code, stderr]).toEqual([0, '']);
  const document = JSON.parse(stdout);
  expect(document.schema).toEqual({ name: 'trumpetry-trims', version: 1 });
  expect(document.loads[0]).toMatchObject({ speed_rpm: 1000, plate_deg: 9, leanest_cylinder: 3 });
  const [, second, third] = document.cylinders;
  expect(third.plate_error_deg).toBeGreaterThan(2 * third.plate_error_deviation_deg);
  expect(second.fuel_trim_at_every_load).toBeGreaterThan(0.02);
  expect(document.readings).toHaveLength(20);
  const csv = readFileSync(join(out, 'trims.csv'), 'utf8').trimEnd().split('\r\n');
  expect(csv).toHaveLength(21);
  const report = readFileSync(join(out, 'trims.html'), 'utf8');
  expect(report).toContain('Mixture of every cylinder over plate angle');
  expect(report).not.toMatch(/NaN|undefined/);
});

test('a common probe hides one lean cylinder; a trim is lambda over the mixture wanted', async () => {
  const readings = at(idle([1.297, 0.901, 0.901, 0.901]));
  const ask = ['trims', ENGINE, '--readings', readings, '--json'];
  const { loads } = JSON.parse((await answer(...ask)).stdout);
  expect(loads[0].joint_lambda).toBeCloseTo(1, 2);
  expect(loads[0].leanest_lambda).toBeGreaterThan(1.25);
  const wanted = JSON.parse((await answer(...ask, '--lambda', '0.95')).stdout);
  for (const { lambda, fuel_trim } of wanted.readings) {
    expect(fuel_trim).toBeCloseTo(lambda / 0.95 - 1, 8);
  }
});

test('gases of a bench are read as lambda', async () => {
  const rows = [1, 2, 3, 4].map(
    (i) => `3000,30,${i},${i === 2 ? '0.1,13,2.8,60' : '1.2,13.5,0.3,45'}`,
  );
  const { code, stdout } = await answer(
    ...['trims', ENGINE, '--readings', at(rows, GASES), '--json'],
  );
  expect(code).toBe(0);
  const document = JSON.parse(stdout);
  expect(document.from_gases).toBe(true);
  expect(document.loads[0].leanest_cylinder).toBe(2);
  expect(document.readings[0].lambda_read).toBeCloseTo(0.975, 2);
});

describe('wrong input ends with 2: line, limit, remedy', () => {
  const four = idle([1, 1, 1, 1]);
  test.each<[string[], string[]]>([
    [['--readings', 'nowhere.csv'], ['nowhere.csv: there is no such file']],
    [[], ['--readings is missing']],
    [
      ['--readings', READINGS, '--lambda', '40'],
      ['--lambda 40', 'limit'],
    ],
    [
      ['--readings', at(four.slice(0, 3))],
      ['readings.csv:2:1 cylinder: at 1000 rpm and 9 deg 3 of 4', 'missing: 4', 'cylinders 1 to 4'],
    ],
    [
      ['--readings', at(idle([1, 0, 1, 1]))],
      [':3:1 lambda: 0 is out of range', '0.5 to 2'],
    ],
    [['--readings', at(idle([1, 1, 40, 1]))], [':4:1 lambda: 40 is out of range']],
    [
      ['--readings', at(four, 'speed_rpm,plate,cylinder,lambda')],
      [
        ':1:1 no column of plate angle with its unit',
        'write its unit into the head, for example "plate_deg"',
      ],
    ],
    [['--readings', at(['1000,400,1,1', ...four])], [':2:1 plate_deg: 400 is out of range']],
    [
      ['--readings', at(['1000,400,1,1', ...four.slice(1)])],
      ['limit: 0 deg to 90 deg', '1 problem in the readings'],
    ],
    [
      [
        '--readings',
        at(
          [1, 2, 3, 4].map((i) => `1000,9,${i},1,13,1`),
          'speed_rpm,plate_deg,cylinder,CO,CO2,O2',
        ),
      ],
      [':1:1 no column of CO with its unit', 'for example "CO_percent"'],
    ],
    [
      ['--readings', at(['1000,8,1,1', ...four])],
      [':2:1 plate_deg: the plate is shut', 'more than 8 deg'],
    ],
    [['--readings', at([...four, '1000,9,5,1'])], [':6:1 cylinder: there is no cylinder 5']],
    [['--readings', at([...four, '1000,9,4,1'])], [':6:1 cylinder: cylinder 4 stands twice']],
    [
      [
        '--readings',
        at(
          [1, 2, 3, 4].map((i) => `1000,9,${i},0,2,20,0`),
          GASES,
        ),
      ],
      [':2:1 CO2_percent: these gases make a lambda of 7.7'],
    ],
    [
      ['--readings', at(four, `# probe: 1\n${HEAD}`)],
      [':1:1 probe: 1 is out of range', '20 %'],
    ],
    [['--readings', at([])], ['there are no readings']],
  ])('%j', async (options, messages) => {
    const { code, stdout, stderr } = await answer('trims', ENGINE, ...options);
    expect(code).toBe(2);
    expect(stdout).toBe('');
    for (const message of messages) expect(stderr).toContain(message);
  });
  test('an engine of one cylinder', async () => {
    const single = ['trims', 'scenarios/sprint-single.yaml', '--readings', READINGS];
    expect(await answer(...single)).toMatchObject({ code: 2 });
  });
});
