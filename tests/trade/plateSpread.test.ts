/** What one plate that is off does: laws that are known put in place of the solver. */
import { expect, test } from 'vitest';
import { expansionAngle } from '../../sim/linkage/expansion.ts';
import { throttleArea } from '../../sim/loss/throttlePlate.ts';
import { spreadStudy } from '../../sim/study/balance/spread.ts';
import type { PointRunner } from '../../sim/sweep/runner.ts';
import type { Computer, TraceJob } from '../../sim/sweep/tasks.ts';
import { readDemo, toyRunner } from '../toy.ts';

const { engine, speeds, target } = readDemo('hill-climb');
const { throttle } = engine.intake;

/** A computer whose exhaust leaves at a thousand lambda [K] while it flows out, cold while it flows back. */
function withExhaust(runner: PointRunner): Computer {
  const task = async (_: string, { engine: e, speed }: TraceJob) => ({
    point: await runner.run({ engine: e, speed }),
    stations: [
      {
        massFlow: [0.1, 0.3, -0.2],
        temperature: [0.9, 1.1, 0.1].map((x) => x * 1000 * e.combustion.lambda),
      },
    ],
  });
  return { ...runner, task: task as unknown as Computer['task'] };
}
const toyComputer = (...formula: Parameters<typeof toyRunner>) =>
  withExhaust(toyRunner(...formula));
const lambdaOf = engine.combustion.lambda;

test('air that follows the area of the plate comes back between the points solved', async () => {
  const runner = toyComputer(({ engine: e }) => {
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
  const runner = toyComputer(({ engine: e }) => e.intake.throttle.angle / 100);
  const { rows } = await spreadStudy({ engine, speeds, target }, runner);
  for (const { air, lambda, others } of rows) {
    expect((lambda! + 3 * others!) / 4).toBeCloseTo(lambdaOf, 12);
    expect(lambda! / others!).toBeCloseTo(1 + air!, 12);
  }
});

test('a point that did not settle gives no figure', async () => {
  const runner = toyComputer(() => 0.5);
  const restless = {
    run: async (job: Parameters<typeof runner.run>[0]) => {
      const outcome = await runner.run(job);
      return job.speed === 1000 ? { ...outcome, settled: false } : outcome;
    },
  };
  const { rows } = await spreadStudy(
    { engine, speeds, target },
    withExhaust(restless as PointRunner),
  );
  expect(rows.filter(({ air }) => air === undefined)).toHaveLength(4);
});

test('exhaust is weighted by what flows out, each cylinder at its own mixture', async () => {
  const runner = toyComputer(({ engine: e }) => e.intake.throttle.angle / 100);
  const { rows } = await spreadStudy({ engine, speeds, target }, runner);
  // 0.1 at 0.9 and 0.3 at 1.1 make 1.05; the parabola knows a straight line where lambda is one.
  // Lambda goes in thousandths, of which each side may lack a half: 1.05 K.
  for (const { hotter, lambda, others, error } of rows.filter(({ error }) => error >= 0.2))
    expect(Math.abs(hotter! - 1050 * (lambda! - others!)), `${error}`).toBeLessThan(1.06);
});

test('a shaft, a bleed and a trumpet are each put wrong in one body', async () => {
  const runner = toyComputer(({ engine: e, length }) => {
    return throttleArea(e.intake.throttle, e.intake.throttle.angle) * 1e3 + length;
  });
  const { faults } = await spreadStudy({ engine, speeds, target }, runner);
  expect(faults).toHaveLength(9);
  const { trumpet } = engine.intake;
  const angle = faults[0]!.load.angle;
  const area = throttleArea(throttle, angle) * 1e3 + trumpet.length;
  const more = faults.slice(0, 3).map(({ air }) => air! * area);
  // Half of two rings of half the play round an 8 mm shaft; a sixth of a 2.5 mm drilling; 20 mm.
  expect(more[0]).toBeCloseTo(1e3 * 0.82 * 0.5 * Math.PI * 0.008 * 1e-4, 9);
  expect(more[1]).toBeCloseTo((1e3 * 0.82 * (Math.PI / 4) * 0.0025 ** 2) / 6, 9);
  expect(more[2]).toBeCloseTo(0.02, 9);
});

test('what has no shaft has none that wears', async () => {
  const body = { ...throttle, kind: 'slide', shaftDiameter: 0 } as const;
  const sliding = { ...engine, intake: { ...engine.intake, throttle: body } };
  const { faults } = await spreadStudy(
    { engine: sliding, speeds, target },
    toyComputer(() => 0.5),
  );
  expect(faults.map(({ fault }) => fault.name).join()).not.toContain('shaft');
  expect(faults).toHaveLength(6);
});

test('aluminium over steel: 11.3 micrometres a metre and kelvin', () => {
  expect(expansionAngle(1, 1, 1)).toBeCloseTo(11.3e-6, 12);
  expect(expansionAngle(0.285, 0.022, 70)).toBeCloseTo((11.3e-6 * 0.285 * 70) / 0.022, 12);
});
