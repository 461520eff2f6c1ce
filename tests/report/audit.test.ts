/** The worst audit of points, films among it where there are injectors. */
import { expect, test } from 'vitest';
import { auditOf } from '../../sim/report/audit.ts';
import type { SprayCycle } from '../../sim/spray/sprayTally.ts';
import { toyPoint } from '../toy.ts';

const wet = (speed: number, filmImbalance: number, filmAdjusted = 0) => ({
  ...toyPoint(speed, 1),
  spray: { filmImbalance, filmAdjusted } as SprayCycle,
});

test('the worst film of all points, beside failed and dry ones', () => {
  const failed = { speed: 3000, failure: 'no' };
  expect(auditOf([wet(1000, 0.01, 0.2), failed, wet(2000, 0.03), toyPoint(4000, 1)])).toMatchObject(
    {
      film_imbalance_max: 0.03,
      film_adjusted_max: 0.2,
    },
  );
});

test('no word of films where there are no injectors', () => {
  expect(auditOf([toyPoint(1000, 1)])).not.toHaveProperty('film_imbalance_max');
});
