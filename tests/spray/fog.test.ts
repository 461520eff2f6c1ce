/** Fog in front of a mouth: where it settles slowly, and what is done where it does not. */
import { expect, test } from 'vitest';
import type { Driver } from '../../sim/engine/driver.ts';
import { inLanes } from '../../sim/engine/lanes.ts';
import { engineModel } from '../../sim/engine/plan.ts';
import { settleSpeeds } from '../../sim/engine/point.ts';
import { withLength } from '../../sim/sweep/sweep.ts';
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

test('half the fuel stands off as fog for tens of cycles, and yet that comes to rest', () => {
  const spec = withLength(sprayed(1, { parcels: 40 }), 0.21);
  const { numerics } = spec;
  const coarse = { ...numerics, intakeCell: 0.064, exhaustCell: 0.12 };
  const model = engineModel({ ...spec, numerics: coarse }, undefined);
  const start = { speed: 7500, column: model.network.layout.column.slice(), fuelled: false };
  const [end] = inLanes(model, [start], { limit: numerics.settle, most: 40, held: true });
  if (!end || end instanceof Error) throw end;
  const { lost, stockGrowth, filmAdjusted, needed } = end.sprays[0]!.cycle!;
  expect(end.state.settled).toBe(true);
  expect(filmAdjusted).toBe(0);
  expect(stockGrowth).toBeLessThan(0.02);
  expect(lost).toBeGreaterThan(0.25);
  expect(end.sprays[0]!.parcels.held().mass).toBeGreaterThan(3 * needed);
});
