/**
 * Cylinders that do alike are solved once, the others in full: both ways to the same settled cycle. No
 * source: symmetry. As in echo.test.ts the two differ by what the mesh still changes, and both settle to less than is
 * asked of the difference.
 */
import { describe, expect, it } from 'vitest';
import { kindsOf } from '../../sim/engine/manifolds.ts';
import { type PointResult, runPoint, runSpeeds } from '../../sim/engine/point.ts';
import { firings } from '../../sim/firings.ts';
import type { EngineSpecification } from '../../sim/specification.ts';
import { coarseEngine, crossPlaneEight, evenEight, fired, twin } from '../unevenEngines.ts';

const SETTLE = 2e-4;

/** Volumetric efficiency of each cylinder by its number. */
function byNumber({ cylinders = [] }: PointResult): Map<number, number> {
  return new Map(
    cylinders.flatMap(({ numbers, volumetricEfficiency }) =>
      numbers.map((number) => [number, volumetricEfficiency] as const),
    ),
  );
}

const solvedOf = (engine: EngineSpecification) =>
  kindsOf(engine).flatMap(({ like }) => [...like.values()]);

describe('who is solved', () => {
  it('one cylinder of an even engine, which stands for all', () => {
    expect(solvedOf(coarseEngine(4))).toEqual([[1, 2, 3, 4]]);
    expect(solvedOf(evenEight())).toEqual([[1, 8, 4, 3, 6, 5, 7, 2]]);
  });

  it('one bank of a cross-plane eight: the other is the same half a cycle and a pair later', () => {
    expect(solvedOf(crossPlaneEight())).toEqual([
      [1, 6],
      [3, 2],
      [5, 8],
      [7, 4],
    ]);
  });

  it('one cylinder of any engine with a pipe each', () => {
    const { exhaust, ...engine } = twin(270);
    const { tail: _, ...open } = exhaust;
    expect(solvedOf({ ...engine, exhaust: { ...open, joined: 1 } })).toEqual([[1, 2]]);
  });

  it('both of an uneven twin, one of a 360 degree twin', () => {
    expect(solvedOf(twin(270))).toEqual([[1], [2]]);
    expect(solvedOf(twin(360))).toEqual([[1, 2]]);
  });

  it('all of a four whose secondaries join neighbours, one where they join opposites', () => {
    const engine = coarseEngine(4);
    const secondary = { ...engine.exhaust.primary, joined: 2 };
    const joining = (groups: number[][]) => ({
      ...engine,
      exhaust: { ...engine.exhaust, secondary: { ...secondary, groups } },
    });
    expect(
      solvedOf(
        joining([
          [1, 3],
          [2, 4],
        ]),
      ),
    ).toEqual([[1, 3, 2, 4]]);
    expect(
      solvedOf(
        joining([
          [1, 2],
          [3, 4],
        ]),
      ),
    ).toHaveLength(4);
  });

  it('both lengths where trumpets differ', () => {
    const engine = coarseEngine(4);
    const mixed = (trumpetLengths: number[]) =>
      solvedOf({ ...engine, intake: { ...engine.intake, trumpetLengths } });
    expect(mixed([0.1, 0.1, 0.1, 0.1])).toHaveLength(1);
    expect(mixed([0.1, 0.2, 0.1, 0.2])).toHaveLength(4);
  });

  it('no cylinder is forgotten and none counts twice', () => {
    for (const engine of [crossPlaneEight(), evenEight(), twin(315), coarseEngine(4)]) {
      const all = solvedOf(engine).flat();
      expect(all.toSorted((a, b) => a - b)).toEqual(
        firings(engine)
          .map(({ number }) => number)
          .toSorted((a, b) => a - b),
      );
    }
  });
});

it('even firing given in full gives every bit of what is taken without', () => {
  const plain = coarseEngine(4, 1e-3);
  const given = {
    ...plain,
    firing: fired([1, 3, 4, 2], [180, 180, 180, 180]),
    exhaust: { ...plain.exhaust, groups: [[1, 2, 3, 4]] },
  };
  expect(runSpeeds(given, [5000, 7000])).toEqual(runSpeeds(plain, [5000, 7000]));
});

it('a cross-plane eight: one bank with the other like it against all eight', () => {
  const { numerics, ...rest } = crossPlaneEight(SETTLE / 4);
  const engine = { ...rest, numerics: { ...numerics, intakeCell: 0.01, exhaustCell: 0.025 } };
  const [some, all] = (['unlike', 'all'] as const).map((solved) =>
    runPoint(engine, 5400, { solved }),
  );
  expect(some!.cylinders).toHaveLength(4);
  expect(all!.cylinders).toHaveLength(8);
  const [a, b] = [byNumber(some!), byNumber(all!)];
  for (let number = 1; number <= 8; number++)
    expect(Math.abs(a.get(number)! / b.get(number)! - 1), `${number}`).toBeLessThan(2 * SETTLE);
});

it('a four-two-one: one cylinder with echoes at both joints against all four', () => {
  const engine = coarseEngine(4, SETTLE / 4);
  const pipe = {
    ...engine.exhaust.primary,
    length: 0.4,
    outerDiameter: 0.048,
    innerDiameter: 0.048,
  };
  const exhaust = { ...engine.exhaust, secondary: { ...pipe, joined: 2 } };
  const [one, all] = (['unlike', 'all'] as const).map((solved) =>
    runPoint({ ...engine, exhaust }, 5400, { solved }),
  );
  expect(one!.settled && all!.settled).toBe(true);
  expect(one!.cylinders).toBeUndefined();
  const error = one!.volumetricEfficiency / all!.volumetricEfficiency - 1;
  expect(Math.abs(error)).toBeLessThan(2 * SETTLE);
});

it('a cylinder that stands for three counts three times', () => {
  const engine = coarseEngine(5);
  const firing = fired([1, 2, 3, 4, 5], [100, 140, 60, 180, 240]);
  // 1, 3 and 5 fire evenly; 2 and 4 do not.
  const groups = [
    [1, 3, 5],
    [2, 4],
  ];
  const point = runPoint({ ...engine, firing, exhaust: { ...engine.exhaust, groups } }, 5000);
  const { cylinders = [] } = point;
  expect(cylinders.map(({ numbers }) => numbers)).toEqual([[1, 3, 5], [2], [4]]);
  const [three, second, fourth] = cylinders.map((one) => one.volumetricEfficiency);
  const mean = (3 * three! + second! + fourth!) / 5;
  expect(point.volumetricEfficiency).toBeCloseTo(mean, 12);
});

it('figures of the engine are means over its cylinders', () => {
  const point = runPoint(twin(270), 5000);
  const [first, second] = point.cylinders!;
  const mean = (a: number, b: number) => (a + b) / 2;
  expect(point.volumetricEfficiency).toBeCloseTo(
    mean(first!.volumetricEfficiency, second!.volumetricEfficiency),
    12,
  );
  expect(point.indicatedTorque).toBeCloseTo(
    mean(first!.indicatedTorque, second!.indicatedTorque),
    9,
  );
});
