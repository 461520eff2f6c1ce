/** Lift curves do what their timing, fullness or table says. No source: definitions. */
import { describe, expect, it } from 'vitest';
import { wrapAngle } from '../../sim/crankAngle.ts';
import { type LiftCurve, liftCurve, USUAL_FULLNESS } from '../../sim/cylinder/valveLift.ts';
import { cos } from '../../sim/elementary/angles.ts';
import { power } from '../../sim/elementary/powers.ts';

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

describe('fullness of the lift', () => {
  const event = {
    kind: 'timing',
    open: 332,
    close: 600,
    checkLift: 1e-3,
    maximum: 0.0108,
  } as const;
  const meanLift = ({ open, close, lift }: LiftCurve) => {
    const steps = 20_000;
    const places = Array.from(
      { length: steps },
      (_, i) => open + ((i + 0.5) / steps) * (close - open),
    );
    return places.reduce((sum, angle) => sum + lift(angle), 0) / steps;
  };

  it.each([0.42, 0.5, 0.53, 0.556, 0.6, 2 / Math.PI, 0.68])(
    '%s is the mean over full lift',
    (of) => {
      const curve = liftCurve({ ...event, fullness: of });
      expect(meanLift(curve) / event.maximum / of).toBeCloseTo(1, 6);
      expect(curve.lift(332)).toBeCloseTo(1e-3, 12);
      expect(curve.lift(600)).toBeCloseTo(1e-3, 12);
      expect(curve.lift(466)).toBeCloseTo(0.0108, 12);
    },
  );

  it('of half a sine is 2 / pi, of a whole cosine wave a half', () => {
    const [half, whole] = [2 / Math.PI, 0.5].map((fullness) => liftCurve({ ...event, fullness }));
    const share = (curve: LiftCurve) => curve.lift(399) / event.maximum;
    const turn = (curve: LiftCurve) => ((399 - 466) / (curve.close - curve.open)) * Math.PI;
    expect(share(half!)).toBeCloseTo(Math.cos(turn(half!)), 6);
    expect(share(whole!)).toBeCloseTo(Math.cos(turn(whole!)) ** 2, 6);
  });

  it('of none stated is that of cos^1.5; stated, the same to the last bit', () => {
    const [none, stated] = [liftCurve(event), liftCurve({ ...event, fullness: USUAL_FULLNESS })];
    const by = power(cos((Math.PI * (400 - 466)) / (none.close - none.open)), 1.5);
    expect(none.lift(400)).toBeCloseTo(event.maximum * by, 15);
    expect(stated.lift(400)).toBe(none.lift(400));
    expect(USUAL_FULLNESS).toBeCloseTo(0.5564, 4);
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
