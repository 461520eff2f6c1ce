/** Lift curves do what their timing or table says. No source: definitions. */
import { describe, expect, it } from 'vitest';
import { wrapAngle } from '../../sim/crankAngle.ts';
import { liftCurve } from '../../sim/cylinder/valveLift.ts';

describe('lift from timing', () => {
  // Opens 28 deg before top centre between strokes, shuts 60 deg after bottom centre, at 1 mm.
  const curve = liftCurve({
    kind: 'timing',
    open: 332,
    close: 600,
    checkLift: 1e-3,
    maximum: 0.0108,
  });

  it('is at the check lift at both stated angles and at its maximum half-way', () => {
    expect(curve.lift(332)).toBeCloseTo(1e-3, 12);
    expect(curve.lift(600)).toBeCloseTo(1e-3, 12);
    expect(curve.lift(466)).toBeCloseTo(0.0108, 12);
  });

  it('is shut outside its event, which is longer than the stated one', () => {
    expect(curve.open).toBeLessThan(332);
    expect(curve.close).toBeGreaterThan(600);
    expect(curve.lift(curve.open - 0.01)).toBe(0);
    expect(curve.lift(curve.close + 0.01)).toBe(0);
    expect(curve.lift(curve.open + 0.01)).toBeGreaterThan(0);
  });

  it('rises to its top without a turn and falls again', () => {
    const lifts = Array.from({ length: 1341 }, (_, i) => curve.lift(332 + i / 5));
    lifts.forEach((lift, i) => {
      if (i > 0) expect(Math.sign(lift - lifts[i - 1]!)).toBe(i <= 670 ? 1 : -1);
    });
  });
});

describe('lift from a table', () => {
  const curve = liftCurve({
    kind: 'table',
    angle: [640, 700, 760, 820],
    lift: [0, 4e-3, 8e-3, 0],
  });

  it('runs straight between its rows, over the end of the cycle too', () => {
    expect(curve.lift(670)).toBeCloseTo(2e-3, 12);
    expect(curve.lift(wrapAngle(730))).toBeCloseTo(6e-3, 12);
    expect(curve.lift(wrapAngle(790))).toBeCloseTo(4e-3, 12);
    expect(curve.lift(300)).toBe(0);
  });
});
