import { describe, expect, it } from 'vitest';
import {
  dischargeFromLoss,
  entryLossProjecting,
  entryLossRounded,
  entryLossRoundedSpread,
} from '../../sim/boundary/entryLoss.ts';

describe('rounded flush entry', () => {
  // Fit printed with the Roberson & Crowe table, stated as accurate to 10 %.
  const printed = (x: number) =>
    235.03 * x ** 4 - 194.09 * x ** 3 + 56.739 * x ** 2 - 7.8163 * x + 0.5;

  it.each([0.005, 0.015, 0.035, 0.05, 0.07, 0.09, 0.1, 0.11])(
    'agrees with the handbook fit at r/D = %f',
    (ratio) => {
      expect(Math.abs(entryLossRounded(ratio) / printed(ratio) - 1)).toBeLessThan(0.1);
    },
  );

  it.each([
    [0, 0.5],
    [0.02, 0.37],
    [0.06, 0.2],
    [0.12, 0.09],
    [0.2, 0.03],
  ])('gives the Idelchik diagram 3-3 row r/D = %f', (ratio, loss) => {
    expect(entryLossRounded(ratio)).toBeCloseTo(loss, 10);
  });

  it('falls with the radius and ends below 0.06', () => {
    const ratios = Array.from({ length: 81 }, (_, i) => i * 0.0025);
    const losses = ratios.map(entryLossRounded);
    for (let i = 1; i < losses.length; i++) expect(losses[i]!).toBeLessThan(losses[i - 1]!);
    expect(entryLossRounded(0.161)).toBeLessThan(0.06);
    expect(entryLossRounded(0.5)).toBe(0.03);
  });

  it('lies within the spread of the handbooks, two- to fourfold at r/D of 0.1', () => {
    const { low, high } = entryLossRoundedSpread(0.1);
    expect(low).toBeCloseTo(0.082, 10); // Miller 1990
    expect(high).toBeCloseTo(0.203, 10); // Rennels & Hudson 2012
    expect(entryLossRounded(0.1)).toBeGreaterThan(low);
    expect(entryLossRounded(0.1)).toBeLessThan(high);
  });
});

describe('projecting entry', () => {
  it("is Borda's exact K = 1 for a thin wall: contraction 0.5 by momentum", () => {
    const contraction = 0.5;
    expect(entryLossProjecting(0)).toBeCloseTo((1 / contraction - 1) ** 2, 10);
  });

  it.each([
    [0.008, 0.88],
    [0.016, 0.77],
    [0.024, 0.68],
    [0.03, 0.61],
    [0.05, 0.5],
    [0.2, 0.5],
  ])('gives the Idelchik diagram 3-1 row wall/D = %f', (ratio, loss) => {
    expect(entryLossProjecting(ratio)).toBeCloseTo(loss, 10);
  });

  it('interpolates a 45 mm stub of 1.5 mm wall to 0.587', () => {
    expect(entryLossProjecting(1.5 / 45)).toBeCloseTo(0.587, 3);
  });
});

// Short pipe fed from rest, Bernoulli with loss.
it.each([
  [1, Math.SQRT1_2],
  [0.78, 0.7495],
  [0.5, 0.8165],
  [0.04, 0.9806],
])('a loss of %f gives the discharge coefficient %f', (loss, coefficient) => {
  expect(dischargeFromLoss(loss)).toBeCloseTo(coefficient, 4);
});
