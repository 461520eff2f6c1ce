/** When cycles that swing count as settled, and at what: against swings whose mean is known. */
import { expect, test } from 'vitest';
import type { LineCycle } from '../../sim/engine/cycle.ts';
import { swingMean } from '../../sim/engine/swing.ts';

const LIMIT = 1e-3;

const cycleOf = (air: number): LineCycle => ({
  trapped: { air, pressure: 5e4 * air, temperature: 400, burned: 1 - air, fuel: 0 },
  work: 10 * air,
  backflow: 0,
  mouthOutflow: 0,
  portPressure: 4e4,
});
const history = (count: number, airOf: (cycle: number) => number) =>
  Array.from({ length: count }, (_, cycle) => [cycleOf(airOf(cycle))]);
const meanAfter = (count: number, airOf: (cycle: number) => number) =>
  swingMean(history(count, airOf), LIMIT)?.[0];

const sine = (period: number, phase: number) => (cycle: number) =>
  1 + 0.02 * Math.sin((2 * Math.PI * cycle) / period + phase);

test.each([9, 13.4, 28])(
  'a swing of %s cycles settles on its mean, wherever it is in it',
  (period) => {
    for (let phase = 0; phase < 6; phase++) {
      const counts = Array.from({ length: 110 }, (_, i) => i + 1);
      const first = counts.find((count) => meanAfter(count, sine(period, phase)));
      const { trapped, work } = meanAfter(first!, sine(period, phase))!;
      // The mean of eight cycles of nine leaves sin(8 pi/9) / (8 pi/9), an eighth of the swing.
      expect(Math.abs(trapped.air - 1)).toBeLessThan(0.02 / 8);
      expect(work).toBeCloseTo(10 * trapped.air, 12);
    }
  },
);

test('what still drifts has no mean, nor has a crest', () => {
  expect(meanAfter(100, (cycle) => 1 + 0.003 * cycle)).toBeUndefined();
  expect(meanAfter(60, (cycle) => 1 + 0.9 ** cycle)?.trapped.air ?? 1).toBeLessThan(1.01);
  expect(meanAfter(23, () => 1)).toBeUndefined();
  expect(meanAfter(24, () => 1)?.trapped.air).toBeCloseTo(1, 12);
});

test('every line must stay, not the first alone', () => {
  const lines = Array.from({ length: 30 }, (_, cycle) => [cycleOf(1), cycleOf(1 + 0.01 * cycle)]);
  expect(swingMean(lines, LIMIT)).toBeUndefined();
});
