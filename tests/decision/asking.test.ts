/** What closed formulas are asked for until an engine draws what it wants. No source: interpolation. */
import { describe, expect, it } from 'vitest';
import { askedFor, NEAR, type Tried } from '../../sim/study/idle/asking.ts';

/** How many settings it takes until an engine that draws so much of what is asked for is near. */
function tries(draws: (asked: number) => number, wanted: number, tried: Tried[] = []): number {
  for (let count = 1; count < 20; count++) {
    const asked = askedFor(wanted, tried);
    tried.push({ asked, air: draws(asked) });
    if (Math.abs(tried.at(-1)!.air / wanted - 1) <= NEAR) return count;
  }
  return Number.POSITIVE_INFINITY;
}

describe('an engine', () => {
  it('that draws as the formulas say is asked once, one that draws a share of it twice', () => {
    expect(tries((asked) => asked, 2)).toBe(1);
    expect(tries((asked) => 0.8 * asked, 2)).toBe(2);
  });

  it('that draws something past what is set, or less and less, is met within four', () => {
    expect(tries((asked) => 0.5 + 0.7 * asked, 2)).toBeLessThanOrEqual(3);
    expect(tries((asked) => 3 * (1 - Math.exp(-asked / 2.5)), 2)).toBeLessThanOrEqual(4);
  });

  it('is met for more air by what is known of less', () => {
    const tried: Tried[] = [];
    const draws = (asked: number) => 0.3 + 0.7 * asked;
    tries(draws, 1.7, tried);
    expect(tries(draws, 2.7, tried)).toBe(1);
  });
});

it('two that lie near each other tell no slope: the pulses of a valve scatter', () => {
  const near = [
    { asked: 1, air: 1 },
    { asked: 2, air: 2 },
    { asked: 2.01, air: 1.98 },
  ];
  expect(askedFor(2.5, near)).toBeCloseTo(2.01 + (1.01 / 0.98) * 0.52, 9);
});

it('never asks for less than nothing', () => {
  expect(
    askedFor(0.1, [
      { asked: 1, air: 1.5 },
      { asked: 0.1, air: 1.2 },
    ]),
  ).toBe(0);
});
