/** The decision on made-up runs: one switch-over speed, and the model's own uncertainty kept. */
import { describe, expect, test } from 'vitest';
import { placementChoice } from '../../sim/decision/placementChoice.ts';
import { mostShare, pulseFigures } from '../../sim/decision/pulseWidth.ts';
import type { PointResult } from '../../sim/engine/point.ts';
import { injectors } from './engine.ts';

const speeds = [3000, 4000, 5000, 6000];
const outer = injectors.list[1]!;
const point = (volumetricEfficiency: number) =>
  ({ volumetricEfficiency, spray: { needed: 1e-5 } }) as unknown as PointResult;

function choose(gains: number[], uncertainty = 0.003) {
  return placementChoice({
    speeds,
    near: speeds.map(() => point(1)),
    above: gains.map((gain) => point(1 + gain)),
    both: speeds.map(() => point(1)),
    stagedShare: speeds.map(() => 0),
    uncertainty: { value: uncertainty },
    outer,
  });
}

describe('choice', () => {
  test('switches where the gains begin to add up', () => {
    const choice = choose([-0.01, -0.002, 0.01, 0.02]);
    expect(choice.switchOver).toBe(5000);
    expect(choice.share).toEqual([0, 0, 1, 1]);
    expect(choice.reason).toBe('pays-from');
    expect(choice.meanGain).toBeCloseTo(0.015, 12);
  });

  test('names a speed in the range at which it loses', () => {
    expect(choose([-0.01, 0.02, -0.006, 0.02]).losesAt).toEqual([5000]);
  });

  test('a ripple that averages to little decides nothing', () => {
    const choice = choose([0.03, -0.02, 0.03, -0.02], 0.002);
    expect(choice.reason).toBe('below-uncertainty');
    expect(choice.meanUncertainty).toBeGreaterThan(choice.meanGain);
  });

  test('pays everywhere', () => {
    expect(choose([0.01, 0.01, 0.01, 0.01]).reason).toBe('pays-everywhere');
  });

  test('says so where the gain is below the uncertainty, and keeps the fuel near the valve', () => {
    const choice = choose([0.001, 0.002, 0.001, 0.002]);
    expect(choice.reason).toBe('below-uncertainty');
    expect(choice.share).toEqual([0, 0, 0, 0]);
    expect(choice.switchOver).toBeUndefined();
  });

  test('never pays', () => {
    expect(choose([-0.01, -0.01, -0.02, -0.01]).reason).toBe('never-pays');
  });

  test('a failed run is left out, not taken for nought', () => {
    const choice = placementChoice({
      speeds,
      near: speeds.map(() => point(1)),
      above: [point(1), { speed: 4000, failure: 'x' }, point(1.02), point(1.02)],
      both: speeds.map(() => point(1)),
      stagedShare: speeds.map(() => 0),
      uncertainty: { value: 0.003 },
      outer,
    });
    expect(choice.switchOver).toBe(5000);
  });
});

describe('pulse width', () => {
  const injector = { ...outer, flow: 5e-3, deadTime: 1e-3, smallestPulse: 2e-3 };

  test('full load and idle by hand', () => {
    // 40 mg at 5 g/s take 8 ms, 9 ms with the dead time; a cycle at 8000 rpm is 15 ms.
    const figures = pulseFigures(injector, 40e-6, 8000, 4e-6);
    expect(figures.fullPulse).toBeCloseTo(9e-3, 12);
    expect(figures.fullDuty).toBeCloseTo(0.6, 12);
    expect(figures.idlePulse).toBeCloseTo(1.8e-3, 12);
    expect([figures.servesFull, figures.servesIdle]).toEqual([true, false]);
  });

  test('one large enough for the limit cannot idle, one that idles cannot reach it', () => {
    const large = pulseFigures({ ...injector, flow: 12e-3 }, 60e-6, 9000, 6e-6);
    const small = pulseFigures({ ...injector, flow: 3e-3 }, 60e-6, 9000, 6e-6);
    expect([large.servesFull, large.servesIdle]).toEqual([true, false]);
    expect([small.servesFull, small.servesIdle]).toEqual([false, true]);
  });

  test('the share is held to what fits into the cycle', () => {
    // 85 % of 15 ms less 1 ms leave 11.75 ms: 58.75 mg of 100 mg.
    expect(mostShare(injector, 100e-6, 8000)).toBeCloseTo(0.5875, 12);
    expect(mostShare(injector, 10e-6, 8000)).toBe(1);
  });
});
