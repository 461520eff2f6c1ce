/** Air on other days: from the settled state of this day as from rest. */
import { expect, test } from 'vitest';
import { onDay } from '../../sim/engine/otherDays.ts';
import { runSpeeds } from '../../sim/engine/point.ts';
import { fullAir, withAngle } from '../../sim/study/load/cell.ts';
import { isFailure, runJob } from '../../sim/sweep/runner.ts';
import { demo } from '../scenario.ts';

const engine = withAngle(demo('hill-climb').engine, 25);
const SPEED = 4800;
const DAYS = [
  { pressure: 1, warmer: 0 },
  { pressure: 0.9, warmer: 0 },
  { pressure: 1, warmer: 20 },
];

test('as if computed from rest on that day', () => {
  const air = (day: (typeof DAYS)[number]) => {
    const there = onDay(engine, day);
    const [point] = runSpeeds(there, [SPEED]);
    if (point instanceof Error) throw point;
    return point!.volumetricEfficiency * fullAir(there);
  };
  const here = runJob({ engine, speed: SPEED, days: DAYS });
  if (isFailure(here)) throw new Error(here.failure);
  const [, thin, warm] = here.onDays!;
  const now = air(DAYS[0]!);
  expect(thin! / (air(DAYS[1]!) / now)).toBeCloseTo(1, 2);
  expect(warm! / (air(DAYS[2]!) / now)).toBeCloseTo(1, 2);
});

// Air is in proportion to pressure, but for friction and flame: nothing else knows how thick it is.
test('what this day still lacks of its end counts for nothing', () => {
  const open = withAngle(demo('hill-climb').engine, 90);
  const slow = runJob({ engine: open, speed: 1650, days: [DAYS[1]!], hastened: true });
  if (isFailure(slow)) throw new Error(slow.failure);
  const [thin] = slow.onDays!;
  expect(Math.abs(Math.log(thin!) / Math.log(0.9) - 1)).toBeLessThan(0.04);
});

test('a point is the same whether other days are asked for or not', () => {
  const { onDays, ...point } = runJob({ engine, speed: SPEED, days: DAYS }) as { onDays?: unknown };
  expect(point).toEqual(runJob({ engine, speed: SPEED }));
  expect(onDays).toHaveLength(3);
});
