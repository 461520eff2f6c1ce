/** What is known of the sound of a box over trumpets: common practice, no source. */
import { expect, it } from 'vitest';
import { level } from '../../sim/sound/level.ts';
import { soundOf } from '../../sim/study/listen/compute.ts';
import { runJob } from '../../sim/sweep/runner.ts';
import { TASKS } from '../../sim/sweep/tasks.ts';
import { demo, meshed } from '../scenario.ts';

const { engine: filed, mouths: row, airbox, lengthUnit } = demo('hill-climb');
const engine = meshed(filed, 2.5, 1e-3);
const computer = {
  task: async (_: string, job: never) => TASKS.trace(job),
  run: async (job: never) => runJob(job),
} as never;

/** Unweighted, half a metre away, of the mouths in the open or of the inlet of a box [dB]. */
async function heardAt(speed: number, volume?: number): Promise<number> {
  const box = volume !== undefined && { box: { ...airbox, volume } };
  const length = engine.intake.trumpet.length;
  const asked = { engine, lengths: [length], speeds: [speed], speed, row, ...box, lengthUnit };
  const { lengths } = await soundOf(asked, computer);
  return level(lengths[0]!.points[0]!.near!);
}

it('a box quiets the intake, the more the bigger it is', async () => {
  const [open, usual, big] = [
    await heardAt(7000),
    await heardAt(7000, airbox.volume),
    await heardAt(7000, 4 * airbox.volume),
  ];
  expect(usual).toBeLessThan(open - 3);
  // A box far above its note passes on in inverse proportion to its volume: 12 dB of four times.
  expect(usual - big).toBeGreaterThan(6);
  expect(usual - big).toBeLessThan(18);
}, 60_000);
