/** Bodies beside a plenum are weighed at full load, however far a file has the plates open. */
import { expect, test } from 'vitest';
import { plenumStudyOf } from '../../sim/study/plenum/compute.ts';
import { chanceWorkers } from '../golden/chance.ts';
import { readDemo } from '../toy.ts';

test('a plate filed part open changes nothing', async () => {
  const { engine, plenum, speeds, target, lengthUnit } = readDemo('hill-climb');
  const throttle = { ...engine.intake.throttle, angle: 30 };
  const part = { ...engine, intake: { ...engine.intake, throttle } };
  const [open, filed] = await Promise.all(
    [engine, part].map((one) =>
      plenumStudyOf({ engine: one, plenum, speeds, target, lengthUnit }, chanceWorkers),
    ),
  );
  expect(filed!.weighed).toEqual(open!.weighed);
  expect(filed!.bodies.outcomes).toEqual(open!.bodies.outcomes);
});
