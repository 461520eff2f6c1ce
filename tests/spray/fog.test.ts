/** Fog that grows in front of a mouth settles on no mesh; once that is known, finer meshes do not wait for it. */
import { expect, test } from 'vitest';
import type { Driver } from '../../sim/engine/driver.ts';
import { inLanes } from '../../sim/engine/lanes.ts';
import { settleSpeeds } from '../../sim/engine/point.ts';
import { sprayed } from './engine.ts';

/** Cycles in which no films settle: they stand for fog here. */
const TOO_FEW = 2;

test('given up on one mesh, a point with injectors has eight cycles on each finer one and says that it has not settled', () => {
  const most: (number | undefined)[] = [];
  const drive: Driver = (model, starts, rule) => {
    most.push(starts[0]!.most);
    return inLanes(model, [{ ...starts[0]!, most: TOO_FEW }], rule);
  };
  const [point] = settleSpeeds(sprayed(1, { parcels: 10 }), [6000], undefined, drive);
  expect(most).toEqual([undefined, 8, 8]);
  expect(point).toMatchObject({ result: { settled: false, cycles: TOO_FEW } });
});
