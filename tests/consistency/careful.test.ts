/** A point that fails as asked is computed once and twice more with smaller steps and the strongest limiter, and says so. */
import { expect, it } from 'vitest';
import type { Driver } from '../../sim/engine/driver.ts';
import { runSpeeds, settleSpeeds } from '../../sim/engine/point.ts';
import { NonPhysicalStateError } from '../../sim/errors.ts';
import { pointCautions } from '../../sim/study/cautions.ts';
import { remarkOf } from '../../sim/study/points.ts';
import { isOutcome } from '../../sim/sweep/outcome.ts';
import { isFailure, runSpeedsJob } from '../../sim/sweep/runner.ts';
import { demo, meshed } from '../scenario.ts';

const engine = meshed(demo('hill-climb').engine, 2);
const SPEEDS = [5000, 6000];

/** Steps longer than sound allows: the surest way to fail. */
const hasty = (courant: number) => ({ ...engine, numerics: { ...engine.numerics, courant } });

it('comes to an answer near that of a calm one, with a remark and a caution', () => {
  const calm = runSpeeds(engine, SPEEDS);
  const points = runSpeedsJob({ engine: hasty(1.9), speeds: SPEEDS });
  points.forEach((point, i) => {
    const other = calm[i]!;
    if (isFailure(point) || other instanceof Error) throw new Error('failed');
    expect(other.careful).toBeUndefined();
    expect(remarkOf(other)).toBe('');
    expect(point.careful).toBe(true);
    expect(isOutcome(JSON.parse(JSON.stringify(point)))).toBe(true);
    expect(isOutcome({ ...point, careful: false })).toBe(false);
    expect(remarkOf(point)).toBe('small steps');
    // minmod on cells of twice the size.
    expect(Math.abs(point.volumetricEfficiency / other.volumetricEfficiency - 1)).toBeLessThan(
      0.03,
    );
    expect(point.audit.massError).toBeLessThan(1e-10);
  });
  const [caution] = pointCautions([{ name: '90 mm', outcomes: points }]);
  expect(caution).toMatch(/^2 points of 2 failed as asked and were computed with smaller steps/);
});

it('goes on to a tenth of the steps where half of them fail', () => {
  // Half of 3.6 is as hasty as 1.8, which fails above.
  const [point] = runSpeeds(hasty(3.6), [5000]);
  const [calm] = runSpeeds(engine, [5000]);
  if (!point || !calm || point instanceof Error || calm instanceof Error) throw new Error('failed');
  expect(point.careful).toBe(true);
  expect(Math.abs(point.volumetricEfficiency / calm.volumetricEfficiency - 1)).toBeLessThan(0.03);
});

it('blurs as much as it can at last', () => {
  const asked: string[] = [];
  const failure = new NonPhysicalStateError({
    duct: 'tail',
    cell: 1,
    cells: 2,
    density: 1,
    pressure: -1,
  });
  const fails: Driver = ({ spec }, starts) => {
    const { courant, limiter, flux } = spec.numerics;
    const one = `${(courant / engine.numerics.courant).toFixed(2)} ${limiter} ${flux}`;
    if (!asked.includes(one)) asked.push(one);
    return starts.map(() => failure);
  };
  expect(settleSpeeds(engine, [5000], undefined, fails)).toEqual([failure]);
  expect(asked).toEqual(['1.00 theta-1.7 hllc', '0.50 minmod hllc', '0.10 minmod rusanov']);
});

it('stays a failure where that fails too', () => {
  for (const point of runSpeedsJob({ engine: hasty(20), speeds: SPEEDS })) {
    expect(isFailure(point)).toBe(true);
  }
});
