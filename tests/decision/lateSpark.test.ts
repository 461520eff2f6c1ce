/** The best spark is found wherever it lies about the stated one. Torques are invented. */
import { expect, it } from 'vitest';
import type { Context } from '../../sim/study/idle/need.ts';
import type { JoinedWay, Runs } from '../../sim/study/idle/runs.ts';
import { lateSpark } from '../../sim/study/idle/spark.ts';

const STATED = 9;
const context = {
  engine: { combustion: { burn50: STATED } },
  spec: { retard: 15 },
} as unknown as Context;
const set = { state: 'warm', setting: { angle: 8 } } as unknown as JoinedWay;

type Change = (engine: Context['engine']) => Context['engine'];
const angleOf = (change: Change) => change(context.engine).combustion.burn50;

/** Torque over the angle of 50 % burned, and what is expected and tried of it. */
function runsOf(torque: (at: number) => number) {
  const tried: number[] = [];
  let expected = 0;
  const runs = {
    expect: (more: number) => {
      expected += more;
    },
    torqueAlike: async (_: unknown, __: unknown, change: Change) => {
      tried.push(angleOf(change));
      return torque(angleOf(change));
    },
    run: async (_: unknown, __: unknown, change: Change) => ({
      torque: torque(angleOf(change)),
      exhaust: 900 + angleOf(change),
    }),
  };
  return { runs: runs as unknown as Runs, tried, expected: () => expected };
}

it.each([-13, 5, 14, 33])('at %d deg, and late from there', async (top) => {
  const { runs, tried, expected } = runsOf((at) => 10 - 0.004 * (at - top) ** 2);
  const [found] = await lateSpark(set, runs, context);
  expect(found!.middle).toBeCloseTo(top, 9);
  expect(found!.torque).toBeCloseTo(0.004 * 15 ** 2, 9);
  expect(found!.late - found!.best).toBeCloseTo(15, 9);
  expect(expected()).toBe(tried.length + 2);
});

it('comes to an end where torque has no top, or none is known', async () => {
  const rising = runsOf((at) => at);
  expect((await lateSpark(set, rising.runs, context))[0]!.middle).toBe(STATED + 42);
  expect(rising.tried).toHaveLength(8);
  const failing = runsOf(() => Number.NaN);
  await lateSpark(set, failing.runs, context);
  expect(failing.tried.length).toBeLessThanOrEqual(8);
});
