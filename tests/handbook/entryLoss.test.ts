/** Shape of the entry loss; published rows are in tests/prove/entryLoss.ts. */
import { describe, expect, it } from 'vitest';
import { entryLossRounded, entryLossRoundedSpread } from '../../sim/loss/entryLoss.ts';

describe('rounded flush entry', () => {
  it('falls with the radius and ends below 0.06', () => {
    const ratios = Array.from({ length: 81 }, (_, i) => i * 0.0025);
    const losses = ratios.map(entryLossRounded);
    for (let i = 1; i < losses.length; i++) expect(losses[i]!).toBeLessThan(losses[i - 1]!);
    expect(entryLossRounded(0.161)).toBeLessThan(0.06);
    expect(entryLossRounded(0.5)).toBe(0.03);
  });

  it('lies within the spread of the handbooks, two- to fourfold at r/D of 0.1', () => {
    const { low, high } = entryLossRoundedSpread(0.1);
    expect(entryLossRounded(0.1)).toBeGreaterThan(low);
    expect(entryLossRounded(0.1)).toBeLessThan(high);
  });
});
