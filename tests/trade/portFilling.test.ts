/** Air past a plate into the small volume behind it, beside the solver and beside closed forms. */
import { describe, expect, test } from 'vitest';
import { portFilling } from '../../sim/decision/portFilling.ts';
import { runPoint } from '../../sim/engine/point.ts';
import { plateGrowth, throttleArea } from '../../sim/loss/throttlePlate.ts';
import { DRY_AIR_GAS_CONSTANT } from '../../sim/units.ts';
import { readDemo } from '../toy.ts';

const { engine } = readDemo('hill-climb');
const { pressure, temperature } = engine.intake.feed;
const HEAT = DRY_AIR_GAS_CONSTANT * temperature;

/** Growth of air a degree, from a fifth of one. */
const growth = (air: (angle: number) => number, angle: number) =>
  Math.log(air(angle + 0.2) / air(angle)) / 0.2;

describe('closed forms', () => {
  test('a plate all but shut passes choked flow all the time: NACA 1135, psi 0.684731', () => {
    const { throttle } = engine.intake;
    const angle = throttle.closedAngle + 0.005;
    const growth = plateGrowth(throttle, angle);
    const choked = (throttleArea(throttle, angle) * pressure * 0.684731) / Math.sqrt(HEAT);
    // The jet contracts less the lower the pressure behind: between that of nothing and the critical.
    const critical = growth[Math.round(growth.length * 0.528 ** (0.4 / 1.4))]!;
    const grown = portFilling(engine, 900, angle).flow / choked;
    expect(grown).toBeGreaterThan(critical);
    expect(grown).toBeLessThan(growth[0]!);
  });
  test('wide open the cylinder is full of the air outside', () => {
    const { charge } = portFilling(engine, 900, 90);
    const { bore, stroke } = engine.cylinder;
    expect((charge * HEAT) / (pressure * (Math.PI / 4) * bore * bore * stroke)).toBeCloseTo(1, 2);
  });
});

test('trade: a fifth of a degree is much of the air at idle and nothing wide open', () => {
  const air = (speed: number) => (angle: number) => portFilling(engine, speed, angle).flow;
  expect(0.2 * growth(air(900), 8.5)).toBeGreaterThan(0.25);
  expect(0.2 * growth(air(3000), 85)).toBeLessThan(1e-3);
});

test.each([
  [3000, 20],
  [3000, 30],
])(
  '%d rpm, plate %d deg: growth of air within a quarter of the solver',
  { timeout: 60_000 },
  (speed, angle) => {
    const solved = (at: number) => {
      const throttle = { ...engine.intake.throttle, angle: at };
      const point = runPoint({ ...engine, intake: { ...engine.intake, throttle } }, speed);
      expect(point.settled).toBe(true);
      return point.volumetricEfficiency;
    };
    const ours = growth((at) => portFilling(engine, speed, at).flow, angle);
    expect(Math.abs(ours / growth(solved, angle) - 1)).toBeLessThan(0.25);
  },
);
