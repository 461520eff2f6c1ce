/** Flow meters between their limits, and slopes by which a reading tells air. */
import { describe, expect, it } from 'vitest';
import { dayError, slopeBetween } from '../../sim/decision/airSense.ts';
import { ringingSpeed } from '../../sim/decision/boxRinging.ts';
import { lagged, pulsationOf, readingOverMean } from '../../sim/decision/flowMeter.ts';
import { helmholtzFrequency } from '../acoustics/resonance.ts';

const PERIOD = 0.02;
const flow = (a: number) =>
  Array.from({ length: 720 }, (_, i) => 3 + 3 * a * Math.sin((2 * Math.PI * i) / 720));

describe('a lag', () => {
  it('leaves of a sine what a first-order lag leaves', () => {
    const lag = 0.004;
    const left = lagged(flow(1), lag, PERIOD);
    const swing = (Math.max(...left) - Math.min(...left)) / 6;
    const omega = (2 * Math.PI) / PERIOD;
    expect(swing).toBeCloseTo(1 / Math.sqrt(1 + (omega * lag) ** 2), 2);
  });

  it('repeats from cycle to cycle and keeps the mean', () => {
    const left = lagged(flow(2), 0.05, PERIOD);
    const mean = left.reduce((sum, value) => sum + value, 0) / left.length;
    expect(mean).toBeCloseTo(3, 9);
    expect(lagged([...flow(2), ...flow(2)], 0.05, 2 * PERIOD)[5]).toBeCloseTo(left[5]!, 9);
  });

  it('lies between a quick meter and a slow one', () => {
    const by = (lag: number) => readingOverMean(flow(1), { exponent: 0.5, lag }, PERIOD);
    expect(by(0)).toBeCloseTo(1, 12);
    expect(by(1e-7)).toBeCloseTo(by(0), 3);
    expect(by(10)).toBeCloseTo(by(Number.POSITIVE_INFINITY), 5);
    const rising = [0.0003, 0.001, 0.003, 0.01, 0.03].map(by);
    expect(rising).toEqual(rising.toSorted((a, b) => b - a));
  });
});

it('a steady flow is read as it is by every law', () => {
  for (const exponent of [0.25, 0.5, 1, 2]) {
    expect(readingOverMean([2, 2, 2], { exponent, lag: 0.01 }, PERIOD)).toBeCloseTo(1, 12);
  }
  expect(pulsationOf([2, 2])).toEqual({ mean: 2, most: 2, least: 2, unsteadiness: 0, back: 0 });
});

it('the square-root error is that of the fluctuation, whatever its shape', () => {
  const pulses = [5, 0.5, 0.1, 2, 2, 1];
  const { unsteadiness } = pulsationOf(pulses);
  const read = readingOverMean(pulses, { exponent: 2, lag: Number.POSITIVE_INFINITY }, PERIOD);
  expect(read).toBeCloseTo(Math.sqrt(1 + unsteadiness ** 2), 12);
});

it('counts what flows back', () => {
  expect(pulsationOf([3, 3, -1, -1])).toMatchObject({ mean: 1, least: -1, back: 0.5 });
});

describe('air by a reading', () => {
  it('tells by a slope, and nothing where it does not rise with the air', () => {
    const at = (reading: number, air: number) => ({ reading, air });
    expect(slopeBetween(at(50e3, 1), at(60e3, Math.E))).toBeCloseTo(1e-4, 12);
    expect(slopeBetween(at(50e3, 1), at(49e3, 2))).toBeUndefined();
    expect(slopeBetween(at(50e3, 1), at(50e3, 2))).toBeUndefined();
    expect(slopeBetween(at(30, 2), at(90, 1.9))).toBeUndefined();
  });

  it('the day leads a table of angles astray, corrected past an open plate only', () => {
    expect(dayError(1500, false, true)).toBeCloseTo(1 / (1 - 0.151) - 1, 3);
    expect(dayError(1500, true, true)).toBe(0);
    expect(dayError(1500, true, false)).toBeCloseTo(Math.sqrt(278.4 / 288.15) - 1, 6);
    expect(dayError(0, false, false)).toBeCloseTo(0, 12);
  });
});

it('box and snorkel ring with the firing where their note is', () => {
  const box = { volume: 8e-3, snorkelLength: 0.3, snorkelDiameter: 0.08 };
  const speed = ringingSpeed(box, 4, 288.15);
  const note = helmholtzFrequency(Math.PI * 0.04 ** 2, 0.3 + 0.6127 * 0.04, 8e-3, 340.3);
  expect((speed * 4) / 120).toBeCloseTo(note, 1);
});
