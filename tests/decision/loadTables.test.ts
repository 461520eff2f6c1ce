/** Tables of load from points that a formula gives: injector time, which reading tells, idle. */
import { describe, expect, test } from 'vitest';
import { brakeTorque } from '../../sim/decision/brakeTorque.ts';
import { workingGas } from '../../sim/engine/workingGas.ts';
import type { LoadStudy } from '../../sim/study/load/compute.ts';
import { densityCorrection, THIN_AND_WARM } from '../../sim/study/load/density.ts';
import { idleOf } from '../../sim/study/load/idle.ts';
import { signalAt } from '../../sim/study/load/signals.ts';
import { airTable, fillingTable, pulseTable } from '../../sim/study/load/tables.ts';
import { readDemo, toyPoint } from '../toy.ts';

const scenario = readDemo('endurance-six');
const { engine } = scenario;
const angles = [8, 9, 20, 90];
const speeds = [1000, 4000];
const filling = [0.1, 0.2, 0.6, 0.6006];
const pressures = [40e3, 50e3, 95e3, 95.02e3];

function studyOf(injectors: number): LoadStudy {
  const list = scenario.injectors!.list.slice(0, injectors);
  const asked = { ...scenario, injectors: { ...scenario.injectors!, list } };
  return {
    question: { scenario: asked, from: 1000, to: 4000, mostAngles: 4, mostSpeeds: 2 },
    ...{ angles, speeds, angleSteps: [], speedSteps: [], speedsWanted: 2, checks: [] },
    outcomes: angles.map((_, i) =>
      speeds.map((speed) => ({
        ...toyPoint(speed, filling[i]!),
        portPressure: pressures[i]!,
        indicatedTorque: 400 * filling[i]! - 50,
      })),
    ),
    density: { cells: [], rules: [] },
  };
}

test('the injector is open for its fuel and its dead time', () => {
  const study = studyOf(1);
  const { flow, deadTime } = study.question.scenario.injectors!.list[0]!;
  const { airFuelRatio } = workingGas(engine);
  const air = airTable(study).cells;
  pulseTable(study)!.cells.forEach(([, pulse], i) => {
    const fuel = (air[i]![1] as number) / airFuelRatio;
    expect(pulse as number).toBeCloseTo(fuel / flow + deadTime, 12);
  });
  expect(fillingTable(study).cells.map((row) => row[1])).toEqual(filling);
});

test('with several injectors, who gives how much is not for this table', () => {
  expect(pulseTable(studyOf(2))).toBeUndefined();
});

describe('which reading tells load', () => {
  const study = studyOf(1);
  test('pressure near the stop, where a tenth of a degree is many per cent', () => {
    const signal = signalAt(study, 0, 0)!;
    expect(signal.tells).toBe('pressure');
    expect(signal.pressure).toBeCloseTo(10e3 / (100 * Math.log(2)), 6);
    expect(signal.angle).toBeCloseTo(1 / (100 * Math.log(2)), 9);
  });
  test('the angle where the pressure no longer moves', () => {
    // 20 Pa for 0.1 % of air is 200 Pa for 1 %: seen; a hundredth of it is not.
    expect(signalAt(study, 3, 0)!.tells).toBe('both');
    const blind = studyOf(1);
    for (const row of blind.outcomes)
      for (const one of row) Object.assign(one, { portPressure: 95e3 });
    expect(signalAt(blind, 2, 0)!.tells).toBe('angle');
  });
});

test('idles between the rows whose brake torque changes sign, straight between them', () => {
  const study = studyOf(1);
  const torque = (i: number) =>
    brakeTorque({ speed: 1000, indicatedTorque: 400 * filling[i]! - 50 }, engine).torque;
  const at = angles.findIndex((_, i) => torque(i) >= 0);
  const idle = idleOf(study)!;
  const part = (idle.angle - angles[at - 1]!) / (angles[at]! - angles[at - 1]!);
  expect(torque(at - 1) + part * (torque(at) - torque(at - 1))).toBeCloseTo(0, 9);
  expect(idle.flow).toBeGreaterThan(0);
});

test('exponents of rows between those computed are straight between them, and rules go without', () => {
  const exponents = [1, 0, 0.8, 0];
  const { ambient } = engine;
  const [{ pressure }, { warmer }] = THIN_AND_WARM as [
    (typeof THIN_AND_WARM)[0],
    (typeof THIN_AND_WARM)[0],
  ];
  const hot = (ambient.temperature + warmer) / ambient.temperature;
  const outcomes = exponents.map((a) =>
    speeds.map((speed) => ({
      ...toyPoint(speed, 0.5),
      ...(a > 0 && { onDays: [pressure ** a, hot ** -(a / 2)] }),
    })),
  );
  const { cells, rules } = densityCorrection(engine, { angles, speeds, outcomes });
  expect(cells.map(([cell]) => cell!.between)).toEqual([false, true, false, true]);
  expect(cells[1]![0]!.pressure).toBeCloseTo(1 - 0.2 / 12, 9);
  expect(cells[1]![0]!.temperature).toBeCloseTo(0.5 - 0.1 / 12, 9);
  expect(cells[3]![1]!.pressure).toBeCloseTo(0.8, 9);
  expect(rules.find(({ name }) => name === 'mean exponents')!.pressure).toBeCloseTo(0.9, 9);
});
