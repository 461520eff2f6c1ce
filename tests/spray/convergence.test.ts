/** More parcels, or smaller cells, change nothing that matters: within the scatter stated. */
import { describe, expect, test } from 'vitest';
import { runPoint } from '../../sim/engine/point.ts';
import { slow } from '../slow.ts';
import { sprayed } from './engine.ts';

/** Scatter that docs/injection.md states [-]. */
const SCATTER = 0.004;

describe('at 7000 rpm, all fuel from above', () => {
  const base = runPoint(sprayed(1), 7000);

  test('twice the parcels', () => {
    const finer = runPoint(sprayed(1, { parcels: 160 }), 7000);
    expect(Math.abs(finer.volumetricEfficiency - base.volumetricEfficiency)).toBeLessThan(SCATTER);
    expect(Math.abs(finer.spray!.evaporatedUpstream - base.spray!.evaporatedUpstream)).toBeLessThan(
      0.04,
    );
  });

  slow('half the cell', () => {
    const spec = sprayed(1);
    const finer = runPoint({ ...spec, numerics: { ...spec.numerics, intakeCell: 0.005 } }, 7000);
    expect(Math.abs(finer.volumetricEfficiency - base.volumetricEfficiency)).toBeLessThan(SCATTER);
    expect(Math.abs(finer.spray!.evaporatedUpstream - base.spray!.evaporatedUpstream)).toBeLessThan(
      0.04,
    );
  });
});

test('the same run gives the same figures to the last bit', () => {
  const run = () => runPoint(sprayed(0.5, { parcels: 20 }), 7500);
  expect(run()).toEqual(run());
});
