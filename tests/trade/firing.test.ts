/**
 * What the trade knows of firing and pipes. Common practice, no source: where cylinders fire unevenly
 * into one collector they fill unlike, since a blow-down next door meets one cylinder's overlap and misses
 * another's; with a pipe each they fill alike whatever the order.
 */
import { describe, expect, it } from 'vitest';
import { type PointResult, runSpeeds } from '../../sim/engine/point.ts';
import type { EngineSpecification } from '../../sim/specification.ts';
import { crossPlaneEight, evenEight, twin } from '../unevenEngines.ts';

const SPEEDS = [4000, 5400, 7000];

function points(engine: EngineSpecification): PointResult[] {
  return runSpeeds(engine, SPEEDS).map((point) => {
    if (point instanceof Error) throw point;
    return point;
  });
}

/** Most less least filling of the cylinders over the mean [%]. */
function spread({ cylinders, volumetricEfficiency }: PointResult): number {
  const fills = cylinders?.map((one) => one.volumetricEfficiency) ?? [0];
  return (100 * (Math.max(...fills) - Math.min(...fills))) / volumetricEfficiency;
}

function apart({ exhaust, ...engine }: EngineSpecification): EngineSpecification {
  const { tail: _, groups: __, ...open } = exhaust;
  return { ...engine, exhaust: { ...open, joined: 1 } };
}

describe('a cross-plane eight', () => {
  const cross = points(crossPlaneEight());

  it('fills its cylinders unlike where a bank shares a collector', () => {
    for (const point of cross) expect(spread(point)).toBeGreaterThan(2);
    expect(Math.max(...cross.map(spread))).toBeGreaterThan(10);
  });

  it('fills them alike where those that fire 180 deg apart share one, or none do', () => {
    for (const engine of [evenEight(), apart(crossPlaneEight())])
      for (const point of points(engine)) expect(point.cylinders).toBeUndefined();
  });

  it('starves a cylinder that another blows into 90 deg later, most of all', () => {
    // Of bank 1-3-5-7, which fires 1, 3, 5, 7 at 0, 270, 450 and 540 deg, 7 follows 90 deg behind 5.
    for (const { cylinders } of cross.slice(0, 2)) {
      const least = cylinders!.toSorted((a, b) => a.volumetricEfficiency - b.volumetricEfficiency);
      expect(least[0]!.numbers).toContain(5);
    }
  });
});

it('a twin with a pipe each does not care how it fires', () => {
  const [even, uneven] = [360, 270].map((angle) => points(apart(twin(angle))));
  expect(uneven).toEqual(even);
});
