/** Ends sought ahead of the cycles: the same as cycles come to by themselves, sooner and nearer. */
import { describe, expect, test } from 'vitest';
import { solo } from '../../sim/engine/driver.ts';
import { leastChange } from '../../sim/engine/hasten.ts';
import { inLanes } from '../../sim/engine/lanes.ts';
import { type PointResult, type PointWishes, runSpeeds } from '../../sim/engine/point.ts';
import { readScenario } from '../../sim/scenario/read.ts';
import { withAngle } from '../../sim/study/load/cell.ts';
import { THIN_AND_WARM } from '../../sim/study/load/density.ts';
import { more } from '../page/quick.ts';
import { demo } from '../scenario.ts';

test('the mixture of what a straight map has changed is what it leaves as it is', () => {
  const map = (x: readonly number[]) => [
    0.9 * x[0]! - 0.3 * x[1]! + 1,
    0.3 * x[0]! + 0.9 * x[1]!,
    -0.5 * x[2]! + 3,
  ];
  let x = [0, 0, 0];
  const past = Array.from({ length: 4 }, () => {
    const end = map(x);
    const change = end.map((value, i) => value - x[i]!);
    x = end;
    return { end, change };
  });
  const shares = leastChange(past.map(({ change }) => change));
  expect(shares.reduce((sum, share) => sum + share)).toBeCloseTo(1, 12);
  const mixed = [0, 1, 2].map((i) =>
    past.reduce((sum, { end }, k) => sum + shares[k]! * end[i]!, 0),
  );
  // Rounding is damped by a millionth of each change's square.
  map(mixed).forEach((value, i) => {
    expect(value).toBeCloseTo(mixed[i]!, 3);
  });
});

/** Where hot gas swings to and fro for dozens of cycles. */
const SPEEDS = [1400, 1650, 1850];
const { engine } = demo('hill-climb');

function points(settle: number, maximumCycles: number, wishes: PointWishes, drive = inLanes) {
  const mesh = { intakeCell: 0.025, exhaustCell: 0.06 };
  const numerics = { ...engine.numerics, ...mesh, settle, maximumCycles };
  const found = runSpeeds(withAngle({ ...engine, numerics }, 19.9), SPEEDS, drive, wishes);
  return found.map((one) => {
    if (one instanceof Error) throw one;
    return one;
  });
}

describe('a point that comes to rest slowly', () => {
  const end = points(2e-5, 250, {});
  const off = (found: readonly PointResult[]) =>
    Math.max(
      ...found.map((one, i) =>
        Math.abs(one.volumetricEfficiency / end[i]!.volumetricEfficiency - 1),
      ),
    );

  test('is within 0.3 % of where cycles end, which alone are off by 1 % and more', () => {
    expect(end.every(({ settled }) => settled)).toBe(true);
    expect(off(points(1e-3, 100, { hastened: true }))).toBeLessThan(0.003);
    expect(off(points(1e-3, 100, {}))).toBeGreaterThan(0.01);
  });

  test('is the same in lanes as alone, to the last bit', () => {
    const wishes = { hastened: true, days: THIN_AND_WARM };
    expect(points(1e-3, 100, wishes)).toEqual(points(1e-3, 100, wishes, solo));
  });

  // Air goes in proportion to the pressure it comes from, up to rubbing and heat.
  test('is the same alone in its lanes as beside another speed', () => {
    const { engine: quick } = readScenario(more, 'more.yaml');
    for (const angle of [7.45, 8.25]) {
      const set = withAngle(quick, angle);
      const [exact] = runSpeeds(set, [11000], solo, { hastened: true });
      for (const speeds of [[11000], [6000, 11000], [9350, 11000]])
        expect(runSpeeds(set, speeds, inLanes, { hastened: true }).at(-1)).toEqual(exact);
    }
  });

  test('in thinner air holds as much less', () => {
    for (const { onDays } of points(1e-3, 100, { hastened: true, days: THIN_AND_WARM }))
      expect(Math.abs(Math.log(onDays![0]!) / Math.log(0.9) - 1)).toBeLessThan(0.04);
  });
});
