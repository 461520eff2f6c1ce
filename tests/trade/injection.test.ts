/**
 * What the trade says of injectors: trends, common practice, no source.
 *
 * The engine is the invented six. Against no spray the outer injector cools the charge at every speed;
 * whether filling gains on the injector near the valve differs from speed to speed, since colder gas
 * shifts the tuned speeds too: it does at the 6500 rpm tested here, not from 7250 to 8000. The
 * gain on the mean of high speeds takes minutes: tests/prove/upstreamGain.ts (docs/injection.md).
 */
import { beforeAll, describe, expect, test } from 'vitest';
import { leanTime } from '../../sim/decision/tipIn.ts';
import { type PointResult, runPoint } from '../../sim/engine/point.ts';
import type { EngineSpecification } from '../../sim/specification.ts';
import { slow } from '../slow.ts';
import { engine, sprayed } from '../spray/engine.ts';

function throttled(spec: EngineSpecification, angle: number): EngineSpecification {
  const throttle = { ...spec.intake.throttle, angle };
  return { ...spec, intake: { ...spec.intake, throttle } };
}

describe('full load, high speed', () => {
  const at = 6500;
  let none: PointResult;
  let near: PointResult;
  let above: PointResult;
  beforeAll(() => {
    none = runPoint(engine, at);
    near = runPoint(sprayed(0), at);
    above = runPoint(sprayed(1), at);
  });

  test('fuel sprayed upstream evaporates more before the valve', () => {
    expect(above.spray!.evaporatedUpstream).toBeGreaterThan(1.2 * near.spray!.evaporatedUpstream);
    expect(above.spray!.evaporatedShare).toBeGreaterThan(near.spray!.evaporatedShare);
  });

  test('it cools the charge', () => {
    expect(above.chargeTemperature).toBeLessThan(near.chargeTemperature - 2);
    expect(near.chargeTemperature).toBeLessThan(none.chargeTemperature);
  });

  test('here it slightly raises volumetric efficiency: some, and less than 5 % of it', () => {
    const gain = above.volumetricEfficiency / near.volumetricEfficiency - 1;
    expect(gain).toBeGreaterThan(0);
    expect(gain).toBeLessThan(0.05);
  });

  test('cooling alone raises it, room for vapour alone lowers it', () => {
    const alone = (heat: 'valve' | 'off', vapour: 'valve' | 'off') =>
      runPoint(sprayed(1, { coupling: { heat, vapour } }), at).volumetricEfficiency;
    expect(alone('valve', 'off')).toBeGreaterThan(none.volumetricEfficiency);
    expect(alone('off', 'valve')).toBeLessThan(none.volumetricEfficiency);
  });

  test('it mixes better: fuel early and late in the induction are nearer to the mean', () => {
    const unevenness = ({ spray }: PointResult) =>
      Math.abs(spray!.mixture.early - spray!.mixture.late);
    expect(unevenness(above)).toBeLessThan(unevenness(near));
  });

  test('reversed flow at the mouth blows some of it out', () => {
    expect(above.spray!.standOff).toBeGreaterThan(0);
    expect(near.spray!.standOff).toBeLessThan(0.01 * Math.max(above.spray!.standOff, 0.01) + 1e-3);
  });
});

describe('part load, low speed', () => {
  slow('it wets more and answers worse', () => {
    const film = (share: number) => {
      const { spray } = runPoint(throttled(sprayed(share), 22), 2500);
      return { share: spray!.filmShare, time: spray!.filmTime, mass: spray!.filmMass };
    };
    const [near, above] = [film(0), film(1)];
    expect(above.mass).toBeGreaterThan(3 * near.mass);
    expect(leanTime(above, 0.05)).toBeGreaterThan(2 * leanTime(near, 0.05));
  });
});

slow('larger drops wet more', () => {
  const film = (factor: number) => {
    const spec = sprayed(1);
    const list = spec.injectors!.list.map((injector) => ({
      ...injector,
      sauterDiameter: factor * injector.sauterDiameter,
    }));
    const { spray } = runPoint({ ...spec, injectors: { ...spec.injectors!, list } }, 7000);
    return spray!.filmShare;
  };
  expect(film(1.5)).toBeGreaterThan(film(0.5));
});
