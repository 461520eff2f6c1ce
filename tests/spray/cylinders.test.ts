/** The books of each cylinder's spray close, whenever in the cycle it closes its valves. */
import { expect, test } from 'vitest';
import { inLanes } from '../../sim/engine/lanes.ts';
import { engineModel } from '../../sim/engine/plan.ts';
import { withShare } from '../../sim/study/inject/compute.ts';
import { withLength } from '../../sim/sweep/sweep.ts';
import { readDemo } from '../toy.ts';
import { injectors } from './engine.ts';

test('uneven twin, all fuel above: what a cycle injects is delivered, lost or still there, in either cylinder', () => {
  const twin = withLength(readDemo('uneven-twin').engine, 0.26);
  const coarse = { ...twin.numerics, intakeCell: 0.05, exhaustCell: 0.1 };
  const spec = { ...withShare(twin, { ...injectors, parcels: 10 }, 1), numerics: coarse };
  const model = engineModel(spec, undefined);
  const start = { speed: 8000, column: model.network.layout.column.slice(), fuelled: false };
  const [end] = inLanes(model, [start], { limit: 1e-3, most: 8, held: true });
  if (!end || end instanceof Error) throw end;
  expect(end.sprays).toHaveLength(2);
  for (const { cycle } of end.sprays) {
    const { injected, delivered, lost, stockGrowth, filmImbalance } = cycle!;
    expect(lost).toBeGreaterThan(0.2);
    const open = Math.abs(1 - lost - delivered / injected);
    expect(open).toBeLessThan(stockGrowth + filmImbalance + 0.02);
  }
});
