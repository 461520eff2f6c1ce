/** Runs off the dyno: units, order, the air of the day, and every mistake with its line. */
import { describe, expect, it } from 'vitest';
import { ScenarioError } from '../../sim/errors.ts';
import { readMeasuredRun } from '../../sim/scenario/measuredRun.ts';

const NAME = 'run.csv';
const SPEEDS = [3000, 4000, 5000, 6000, 7000];
const rows = (value: (speed: number) => number | string, sign = ','): string =>
  SPEEDS.map((speed) => `${speed}${sign}${value(speed)}`).join('\n');

function issuesOf(text: string) {
  try {
    readMeasuredRun(text, NAME);
  } catch (error) {
    expect(error).toBeInstanceOf(ScenarioError);
    return (error as ScenarioError).issues;
  }
  throw new Error('the run was taken');
}

describe('units', () => {
  const cases: [string, () => number, (rpm: number) => number][] = [
    ['speed_rpm,torque_Nm', () => 200, () => 200],
    // 1 lbf ft = 0.45359237 kg x 9.80665 m/s2 x 0.3048 m, exact: 1.3558179483 N m.
    ['Speed [rpm],Torque (lb-ft)', () => 100, () => 135.58179483],
    ['RPM,Nm', () => 200, () => 200],
    ['RPM,Torque Nm', () => 200, () => 200],
    ['Engine Speed (RPM),lb-ft', () => 100, () => 135.58179483],
    ['rpm,TQ (ft.lbs)', () => 100, () => 135.58179483],
    ['Engine RPM,TRQ ft-lb', () => 100, () => 135.58179483],
    ['n [1/min],Nm', () => 200, () => 200],
    ['RPM,Torque\nrpm,lb-ft', () => 100, () => 135.58179483],
    ['RPM,kW', () => 100, (rpm: number) => 1e5 / ((rpm * Math.PI) / 30)],
    ['RPM,HP', () => 100, (rpm: number) => 74569.987158 / ((rpm * Math.PI) / 30)],
    ['RPM,PS', () => 100, (rpm: number) => 73549.875 / ((rpm * Math.PI) / 30)],
    // T = P / omega: 100 kW at 3000 rpm = 100000 / 314.159 = 318.31 N m.
    ['speed_rpm,power_kW', () => 100, (rpm: number) => 1e5 / ((rpm * Math.PI) / 30)],
    // 550 ft lbf/s: 745.69987 W (NIST SP 811, appendix B.8).
    ['speed (rpm),power (hp)', () => 100, (rpm: number) => 74569.987158 / ((rpm * Math.PI) / 30)],
    // 75 kgf m/s: 735.49875 W (NIST SP 811, appendix B.8, metric horsepower).
    ['speed rpm,power PS', () => 100, (rpm: number) => 73549.875 / ((rpm * Math.PI) / 30)],
  ];
  it.each(cases)('%s', (head, written, torque) => {
    const run = readMeasuredRun(`${head}\n${rows(written)}\n`, NAME);
    expect(run.figure).toBe('brake-torque');
    expect(run.speeds).toEqual(SPEEDS);
    for (const [i, speed] of SPEEDS.entries()) expect(run.values[i]).toBeCloseTo(torque(speed), 5);
  });

  it('volumetric efficiency, plain and in per cent', () => {
    const plain = readMeasuredRun(`speed_rpm,volumetric_efficiency\n${rows(() => 0.95)}`, NAME);
    const percent = readMeasuredRun(
      `speed_rpm;volumetric efficiency %\n${rows(() => 95, ';')}`,
      NAME,
    );
    expect(plain).toEqual(percent);
    expect(plain).toMatchObject({
      figure: 'volumetric-efficiency',
      values: SPEEDS.map(() => 0.95),
    });
  });

  it('takes torque where power stands beside it, and leaves other columns aside', () => {
    const text = `time,power_kW,speed_rpm,torque_Nm\n${SPEEDS.map((x) => `1,50,${x},160`).join('\n')}`;
    expect(readMeasuredRun(text, NAME).values).toEqual(SPEEDS.map(() => 160));
  });
});

it('sorts falling runs, and takes tabulators, Windows line ends and a byte order mark', () => {
  const falling = [...SPEEDS].reverse().map((speed) => `${speed}\t${speed / 50}`);
  const run = readMeasuredRun(`\uFEFFspeed_rpm\ttorque_Nm\r\n${falling.join('\r\n')}\r\n`, NAME);
  expect(run.speeds).toEqual(SPEEDS);
  expect(run.values).toEqual(SPEEDS.map((speed) => speed / 50));
});

it('reads the air of the day from remarks', () => {
  const text = `# at the club, rainy
# pressure: 29.5 inHg
# temperature: 68 degF
# humidity: 40 %
# corrected: sae-j1349
speed_rpm,torque_Nm
${rows(() => 100)}`;
  const { ambient, corrected } = readMeasuredRun(text, NAME);
  expect(ambient.pressure).toBeCloseTo(29.5 * 3386.389, 6);
  expect(ambient.temperature).toBeCloseTo(293.15, 9);
  expect(ambient.relativeHumidity).toBe(0.4);
  expect(corrected).toBe('SAE J1349');
});

describe('mistakes', () => {
  it('names every one with its line', () => {
    const text = `# temperature: 24
speed_rpm,torque_Nm
3000,150
4000,

5000,abc
5000,160
6000,99999
7000,"1`;
    expect(issuesOf(text).map(({ line, path }) => [line, path])).toEqual(
      expect.arrayContaining([
        [1, 'temperature'],
        [4, 'torque_Nm'],
        [6, 'torque_Nm'],
        [7, 'speed'],
        [8, 'torque_Nm'],
      ]),
    );
  });

  it.each([
    ['', 'holds no table'],
    ['speed_rpm,torque_Nm\n', 'the run has 0 rows'],
    [`speed,torque_Nm\n${rows(() => 1)}`, 'no column of speed with its unit'],
    [`n,Power kW\n${rows(() => 1)}`, 'no column of speed with its unit; found: n, Power kW'],
    [`RPM,whp\n${rows(() => 1)}`, 'no column of torque, power or volumetric efficiency'],
    [`RPM,Torque\n${rows(() => 1)}`, 'no column of torque, power or volumetric efficiency'],
    [`speed_rpm,torque\n${rows(() => 1)}`, 'no column of torque, power or volumetric efficiency'],
    [`speed_rpm,torque_kW\n${rows(() => 1)}`, 'no column of torque'],
    [`speed_rpm,torque_Nm\n${rows((x) => `${x / 100},5`)}`, '3 cells under 2 heads'],
    [`speed_rpm;torque_Nm\n${rows((x) => `${x / 100},5`, ';')}`, 'is no number'],
    [`# corrected: gut feeling\nspeed_rpm,torque_Nm\n${rows(() => 1)}`, 'is no standard known'],
    [`speed_rpm,volumetric_efficiency\n${rows(() => 95)}`, 'is out of range'],
    [`speed_rpm,speed_rpm,torque_Nm\n${rows(() => '3000,1')}`, 'two columns of speed'],
  ])('%j: %s', (text, message) => {
    const found = issuesOf(text);
    expect(found.map((issue) => issue.message).join('\n')).toContain(message);
    for (const issue of found) expect(issue.remedy).not.toBe('');
  });
});
