/** Slides and barrels: areas against strips summed one by one, the ends of their travel, two windows in a row. */
import { describe, expect, it } from 'vitest';
import { barrelOpenArea, barrelTravel } from '../../sim/loss/barrel.ts';
import { slideOpenArea } from '../../sim/loss/slide.ts';
import { growthAt, plateGrowth, plateLoss, throttleArea } from '../../sim/loss/throttlePlate.ts';
import { THROTTLE_KINDS, throttleOf } from '../../sim/loss/throttles.ts';

const common = { bore: 0.045, shaftDiameter: 0, closedAngle: 6, rimGap: 0, openLoss: 0.1 };
const slide = { ...common, kind: 'slide' } as const;
const barrel = { ...common, kind: 'barrel', barrelDiameter: 0.07 } as const;
const r = common.bore / 2;
const bore = Math.PI * r * r;

/** Widths summed along the chord, by the midpoint rule. */
function strips(width: (z: number) => number): number {
  const count = 200_000;
  let sum = 0;
  for (let i = 0; i < count; i++) sum += width(-r + (2 * r * (i + 0.5)) / count);
  return (sum * 2 * r) / count;
}
const chord = (z: number) => Math.sqrt(Math.max(r * r - z * z, 0));

describe.each([8, 20, 48, 75, 90])('lever at %i deg', (angle) => {
  const share = (angle - 6) / 84;

  it('a slide leaves what bore and hole have in common', () => {
    const apart = 2 * r * (1 - share);
    const area = strips((z) => Math.max(2 * chord(z) - apart, 0));
    expect(slideOpenArea(slide, angle) / area).toBeCloseTo(1, 5);
  });

  it('a barrel leaves a window where its hole meets the bore', () => {
    const R = barrel.barrelDiameter / 2;
    const turned = barrelTravel(barrel) * (1 - share);
    const area = strips((z) => 2 * R * Math.sin(Math.max(Math.asin(chord(z) / R) - turned / 2, 0)));
    expect(barrelOpenArea(barrel, angle) / area).toBeCloseTo(1, 5);
  });

  it('two windows in a row lose twice what one does', () => {
    const s = barrelOpenArea(barrel, angle) / bore;
    const one = (1 / (s / (1 + 0.639 * Math.sqrt(1 - s))) - 1) ** 2;
    expect(plateLoss(barrel, angle)).toBeCloseTo(2 * one + 0.1, 6);
  });
});

describe.each([slide, barrel])('$kind', (one) => {
  it('is shut at its stop at any pressure, and wide open loses what is stated', () => {
    for (const ratio of [1, 0.9, 0.3])
      expect(throttleArea(one, 6) * growthAt(plateGrowth(one, 6), ratio)).toBeLessThan(1e-12);
    expect(plateLoss(one, 90)).toBeCloseTo(0.1, 9);
  });

  it('opens all the way, faster flow through it contracted less', () => {
    const areas = Array.from({ length: 84 }, (_, i) => throttleArea(one, 6.5 + i));
    for (let i = 1; i < areas.length; i++) expect(areas[i]!).toBeGreaterThan(areas[i - 1]!);
    expect(growthAt(plateGrowth(one, 20), 0.3)).toBeGreaterThan(1.1);
  });

  it('leaks through its gap when shut', () => {
    const leaky = { ...one, rimGap: 2e-5 };
    expect(throttleOf(leaky).openArea(leaky, 6)).toBeCloseTo(Math.PI * 0.045 * 2e-5, 12);
  });
});

it('each kind is known by its name', () => {
  expect(THROTTLE_KINDS).toEqual(['butterfly', 'slide', 'barrel']);
  expect(throttleOf({}).openings + throttleOf({ kind: 'barrel' }).openings).toBe(3);
});
