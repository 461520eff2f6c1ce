/** What one plate that is off does: laws that are known put in place of the solver. */
import { expect, test } from 'vitest';
import { expansionAngle } from '../../sim/linkage/expansion.ts';
import { throttleArea } from '../../sim/loss/throttlePlate.ts';
import { spreadStudy } from '../../sim/study/balance/spread.ts';
import { readDemo, toyRunner } from '../toy.ts';

const { engine, speeds, target } = readDemo('hill-climb');
const { throttle } = engine.intake;
const lambdaOf = engine.combustion.lambda;

test('air that follows the area of the plate comes back between the points solved', async () => {
  const runner = toyRunner(({ engine: e }) => {
    return throttleArea(e.intake.throttle, e.intake.throttle.angle) ** 0.7;
  });
  const { rows } = await spreadStudy({ engine, speeds, target }, runner);
  expect(rows).toHaveLength(12);
  for (const { load, error, air } of rows) {
    const by = load.angle === 90 ? -error : error;
    const growth = throttleArea(throttle, load.angle + by) / throttleArea(throttle, load.angle);
    expect(air).toBeCloseTo(growth ** 0.7 - 1, 9);
  }
});

test('one with more air runs lean, the others rich, all together as before', async () => {
  const runner = toyRunner(({ engine: e }) => e.intake.throttle.angle / 100);
  const { rows } = await spreadStudy({ engine, speeds, target }, runner);
  for (const { air, lambda, others } of rows) {
    expect((lambda! + 3 * others!) / 4).toBeCloseTo(lambdaOf, 12);
    expect(lambda! / others!).toBeCloseTo(1 + air!, 12);
  }
});

test('a point that did not settle gives no figure', async () => {
  const runner = toyRunner(() => 0.5);
  const restless = {
    run: async (job: Parameters<typeof runner.run>[0]) => {
      const outcome = await runner.run(job);
      return job.speed === 1000 ? { ...outcome, settled: false } : outcome;
    },
  };
  const { rows } = await spreadStudy({ engine, speeds, target }, restless);
  expect(rows.filter(({ air }) => air === undefined)).toHaveLength(4);
});

test('aluminium over steel: 11.3 micrometres a metre and kelvin', () => {
  expect(expansionAngle(1, 1, 1)).toBeCloseTo(11.3e-6, 12);
  expect(expansionAngle(0.285, 0.022, 70)).toBeCloseTo((11.3e-6 * 0.285 * 70) / 0.022, 12);
});
