/**
 * What the trade knows of firing and pipes. Common practice, no source: where cylinders fire unevenly
 * into one collector they fill unlike, since a blow-down next door meets one cylinder's overlap and misses
 * another's; with a pipe each they fill alike whatever the order. Pairs of opposites into secondaries help below
 * and cost at the top; a step in the primaries helps there.
 */
import { describe, expect, it } from 'vitest';
import { cylindersDiffer } from '../../sim/engine/manifolds.ts';
import { type PointResult, runSpeeds } from '../../sim/engine/point.ts';
import type { EngineSpecification } from '../../sim/specification.ts';
import { coarseEngine, crossPlaneEight, evenEight, fired, twin } from '../unevenEngines.ts';

const SPEEDS = [4000, 5400, 7000];

function points(engine: EngineSpecification, speeds: readonly number[] = SPEEDS): PointResult[] {
  return runSpeeds(engine, speeds).map((point) => {
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

  /**
   * With 1-8-4-3-6-5-7-2 and odd numbers in one bank, crossing the pipes of 3, 5, 4 and 6 lets each collector
   * see a firing every 180 deg: hotrod.com/articles/180-degree-headers-help-v8s-low-midrange-torque.
   */
  it('is even where the pipes of 3, 5, 4 and 6 cross to the other collector', () => {
    const { exhaust, ...engine } = crossPlaneEight();
    const crossed = (bank: number[], other: number[], cross: number[]) => [
      ...bank.filter((number) => !cross.includes(number)),
      ...other.filter((number) => cross.includes(number)),
    ];
    const [odd, even] = exhaust.groups!.map((bank) => [...bank]) as [number[], number[]];
    const groups = [crossed(odd, even, [3, 5, 4, 6]), crossed(even, odd, [3, 5, 4, 6])];
    expect(cylindersDiffer({ ...engine, exhaust: { ...exhaust, groups } })).toBe(false);
    expect(cylindersDiffer({ ...engine, exhaust })).toBe(true);
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

/** A four whose primaries are cut at their middle, where pairs of cylinders go on together. */
function fourTwoOne(pairs: number[][]): EngineSpecification {
  const { exhaust, ...engine } = coarseEngine(4);
  const { primary } = exhaust;
  const wide = { outerDiameter: 0.049, innerDiameter: 0.049 };
  const half = { ...primary, length: 0.48 };
  const secondary = { ...primary, ...wide, length: 0.34, joined: 2, groups: pairs };
  const firing = fired([1, 3, 4, 2], [180, 180, 180, 180]);
  return { ...engine, firing, exhaust: { ...exhaust, primary: half, secondary } };
}

describe('a four', () => {
  const mean = (all: PointResult[]) =>
    all.reduce((sum, one) => sum + one.volumetricEfficiency, 0) / all.length;
  const [low, high] = [
    [3000, 3400, 4200, 4600],
    [7800, 8200, 8600],
  ];
  const plain = coarseEngine(4);

  it('gains below and loses at the top by four-two-one in place of four-into-one', () => {
    const pairs = fourTwoOne([
      [1, 4],
      [2, 3],
    ]);
    expect(mean(points(pairs, low))).toBeGreaterThan(mean(points(plain, low)));
    expect(mean(points(pairs, high))).toBeLessThan(mean(points(plain, high)));
  });

  it('fills unlike where cylinders that fire 180 deg apart share a secondary', () => {
    const wrong = fourTwoOne([
      [1, 3],
      [2, 4],
    ]);
    expect(Math.max(...points(wrong, low).map(spread))).toBeGreaterThan(10);
  });

  it('gains at the top by a step in its primaries', () => {
    const { exhaust, ...engine } = plain;
    const half = { ...exhaust.primary, length: 0.41 };
    const step = { ...half, outerDiameter: 0.0445, innerDiameter: 0.0445 };
    const stepped = { ...engine, exhaust: { ...exhaust, primary: half, step } };
    expect(mean(points(stepped, high))).toBeGreaterThan(mean(points(plain, high)));
  });
});

it('a twin with a pipe each does not care how it fires', () => {
  const [even, uneven] = [360, 270].map((angle) => points(apart(twin(angle))));
  expect(uneven).toEqual(even);
});
