/** Places that a table keeps: the least worst error of its lines, beside every choice tried. */
import { expect, test } from 'vitest';
import { lineError, lineKnots } from '../../sim/decision/lineKnots.ts';

const XS = [0, 1, 2, 3.5, 4, 5, 6, 7, 9, 10];
const ROWS = [
  XS.map((x) => 2 + Math.sin(1.3 * x)),
  XS.map((x) => 3 + Math.cos(0.7 * x * x)),
  XS.map((x) => 1 + 1 / (1 + x)),
];
const worstOf = (kept: readonly number[]) =>
  Math.max(...kept.slice(1).map((k, i) => lineError(XS, ROWS, kept[i]!, k).error));

/** Every way to keep so many places, the ends among them. */
function choices(most: number): number[][] {
  const inner = XS.length - 2;
  const subsets = Array.from({ length: 2 ** inner }, (_, bits) =>
    Array.from({ length: inner }, (_, i) => i + 1).filter((i) => (bits >> (i - 1)) % 2 === 1),
  );
  return subsets
    .filter((subset) => subset.length <= most - 2)
    .map((subset) => [0, ...subset, XS.length - 1]);
}

test.each([2, 3, 4, 5, 6, 8, 10])('no other %i places do better', (most) => {
  const kept = lineKnots(XS, ROWS, { limit: 0, most });
  expect(kept.length).toBeLessThanOrEqual(most);
  expect([kept[0], kept.at(-1)]).toEqual([0, XS.length - 1]);
  const least = Math.min(...choices(most).map(worstOf));
  expect(worstOf(kept)).toBeCloseTo(least, 12);
});

test('no more than the limit wants', () => {
  for (const limit of [0.02, 0.1, 0.3]) {
    const kept = lineKnots(XS, ROWS, { limit, most: XS.length });
    expect(worstOf(kept)).toBeLessThanOrEqual(limit);
    const fewer = choices(kept.length - 1).map(worstOf);
    for (const error of fewer) expect(error).toBeGreaterThan(limit);
  }
  expect(lineKnots(XS, [XS], { limit: 1e-9, most: 9 })).toEqual([0, 9]);
});

test('where a line errs most, and that a curve without a figure counts for nothing', () => {
  const holed = XS.map((_, i) => (i === 5 ? Number.NaN : 1));
  const bent = XS.map((x) => (x === 6 ? 2 : 1));
  expect(lineError(XS, [holed, bent], 0, 9)).toEqual({ error: 0.5, at: 6, row: 1 });
});
