/** compare: the command from files to exit codes. */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { answer, coarseText, fileOf, freshFolder } from './commandLine.ts';

/** Five speeds at which the coarse mesh settles. */
const scenario = () =>
  fileOf(
    coarseText().replace(
      'from: 6000 rpm\n  to: 8000 rpm\n  step: 1000 rpm',
      'from: 5600 rpm\n  to: 8000 rpm\n  step: 400 rpm',
    ),
  );
const RUN = `# pressure: 985 mbar
# temperature: 20 degC
# humidity: 55 %
speed_rpm,torque_Nm
5500,170
6000,205
6500,196
7000,196
7500,186
8000,172
`;

test('compares, writes and prints one document', { timeout: 120_000 }, async () => {
  const out = freshFolder();
  const run = fileOf(RUN, 'run.csv');
  const { code, stdout, stderr } = await answer(
    ...['compare', scenario(), '--measured', run, '--json', '--out', out],
  );
  expect(stderr).toBe('');
  const document = JSON.parse(stdout);
  expect(document.schema).toEqual({ name: 'trumpetry-compare', version: 1 });
  expect(document).toMatchObject({ figure: 'brake-torque', length_mm: 90, air_factor: 1 });
  const { speeds_rpm, measured, predicted } = document;
  expect([...speeds_rpm, ...document.speeds_left_out_rpm].sort()).toEqual([
    ...[5600, 6000, 6400, 6800, 7200, 7600, 8000],
  ]);
  expect(measured).toHaveLength(speeds_rpm.length);
  expect(predicted.every((x: number) => x > 100 && x < 260)).toBe(true);
  expect(document.correlation).toBeGreaterThan(-1);
  expect(document).not.toHaveProperty('calibration');
  expect(code).toBe(document.speeds_left_out_rpm.length > 0 ? 1 : 0);
  const [head, ...rows] = readFileSync(join(out, 'compare.csv'), 'utf8').trimEnd().split('\r\n');
  expect(head).toBe('speed_rpm,measured_torque_Nm,predicted_torque_Nm');
  expect(rows).toHaveLength(speeds_rpm.length);
  const report = readFileSync(join(out, 'compare.html'), 'utf8');
  expect(report).toContain('Brake torque over engine speed');
  expect(report).not.toMatch(/NaN|undefined/);
});

test('a fit that is refused says why, ends with 1 and writes no scenario', {
  timeout: 240_000,
}, async () => {
  const written = join(freshFolder(), 'new.yaml');
  const { code, stdout } = await answer(
    ...['compare', scenario(), '--measured', fileOf(RUN, 'run.csv'), '--json', '--write', written],
    ...['--fit', 'end-correction,air-temperature,port-wall-temperature'],
  );
  expect(code).toBe(1);
  expect(JSON.parse(stdout).calibration).toEqual({
    refused: expect.stringMatching(/speeds|too little|apart/),
  });
  expect(existsSync(written)).toBe(false);
});

describe('wrong input ends with 2 and names the place', () => {
  const broken = fileOf(RUN.replace('6500,196', '6500,abc'), 'run.csv');
  const fine = fileOf(RUN, 'run.csv');
  const engine = scenario();
  test.each([
    [['--measured', broken], `${broken}:7:1 torque_Nm: "abc" is no number`],
    [['--measured', broken], '1 problem in the measured run; nothing was computed.'],
    [['--measured', 'nowhere.csv'], 'nowhere.csv: there is no such file'],
    [[], '--measured is missing'],
    [['--measured', fine, '--fit', 'luck'], '"luck" is no unknown; use end-correction,'],
    [['--measured', fine, '--fit', 'end-correction,end-correction'], 'is named twice'],
    [['--measured', fine, '--write', 'x.yaml'], '--write needs --fit'],
    [['--measured', fine, '--fit', 'end-correction', '--write', engine], 'name another file'],
    [['--measured', fine, '--noise', '3'], 'write 0.05 % to 20 %'],
  ])('%j', async (options, message) => {
    const { code, stdout, stderr } = await answer('compare', engine, ...options);
    expect(code).toBe(2);
    expect(stdout).toBe('');
    expect(stderr).toContain(message);
  });
});
