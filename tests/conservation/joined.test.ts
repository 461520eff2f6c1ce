/**
 * Runners that a bar joins, all cylinders solved: nothing is lost, what one runner gives the others and the bar
 * get, cylinders alike give nothing, and lanes come to the same bits. No source: conservation and symmetry.
 */
import { expect, it } from 'vitest';
import type { BarSpecification } from '../../sim/bars.ts';
import { solo } from '../../sim/engine/driver.ts';
import { joinedCycle } from '../../sim/engine/joinedCycle.ts';
import { runSpeeds } from '../../sim/engine/point.ts';
import type { EngineSpecification } from '../../sim/specification.ts';
import { joinedBarOf } from '../../sim/study/signal/joined.ts';
import { coarse } from '../../sim/study/signal/tapped.ts';
import { roadFour } from '../scenario.ts';

const { engine, pressureBar } = roadFour();
const SPEED = 900;
const at = { frequency: SPEED / 30, pressure: 58e3 };
const joined = joinedBarOf(pressureBar, 4, at);

/** Idle, the first plate so much further open [deg], runners joined by these bars. */
function idle(error: number, bars?: readonly BarSpecification[]): EngineSpecification {
  const angle = pressureBar.angles[0]!;
  const throttle = { ...engine.intake.throttle, angle };
  const throttleAngles = [angle + error, angle, angle, angle];
  const intake = { ...engine.intake, throttle, throttleAngles, ...(bars && { bars }) };
  return { ...engine, intake, numerics: coarse(engine.numerics) };
}

const sum = (values: readonly number[]) => values.reduce((total, one) => total + one, 0);

it('what leaves one runner by its hose comes to the others and to the bar, to round-off', () => {
  const { point, cylinders, bars } = joinedCycle(idle(0.2, [joined]), SPEED);
  const { hoses, gained } = bars[0]!;
  const net = hoses.map((hose) => hose.net);
  expect(point.settled).toBe(true);
  expect(net[0]!).toBeGreaterThan(0.01 * cylinders[0]!.air);
  for (const other of net.slice(1)) expect(other).toBeLessThan(-0.002 * cylinders[0]!.air);
  expect(Math.abs(sum(net) - gained)).toBeLessThan(1e-12 * sum(hoses.map(({ out }) => out)));
  expect(Math.abs(gained)).toBeLessThan(0.01 * net[0]!);
});

it('cylinders alike pass a lot of gas there and back and keep none of it', () => {
  const { cylinders, bars } = joinedCycle(idle(0, [joined]), SPEED);
  for (const { net, out } of bars[0]!.hoses) {
    expect(out).toBeGreaterThan(0.05 * cylinders[0]!.air);
    expect(Math.abs(net)).toBeLessThan(1e-3 * out);
  }
});

it.each([
  ['with hoses to all', [joined]],
  [
    'with a valve, and a bar as small as a joint',
    [
      { ...joined, valve: { bore: 0.006, area: 5e-6, times: 13, open: 0.4 } },
      { ...joined, hoses: joined.hoses.slice(2), volume: 1e-6 },
    ],
  ],
])('%s mass and energy balance, and lanes come to the same', (_, bars) => {
  for (const speed of [900, 2400]) {
    const [point] = runSpeeds(idle(0.2, bars), [speed]);
    expect(point).toEqual(runSpeeds(idle(0.2, bars), [speed], solo)[0]);
    if (!point || point instanceof Error) throw point;
    expect(point.settled).toBe(true);
    expect(point.audit.massError).toBeLessThan(1e-10);
    expect(point.audit.energyError).toBeLessThan(1e-6);
  }
});

it('one plate further open fills its own cylinder alike, solved with the others or for itself', () => {
  const together = joinedCycle(idle(0.2), SPEED);
  const own = runSpeeds(idle(0.2), [SPEED])[0]!;
  if (own instanceof Error) throw own;
  const filled = own.cylinders!.map(({ volumetricEfficiency: filling }) => filling);
  const airs = together.cylinders.map(({ air }) => air);
  expect(filled[0]! / filled[1]!).toBeGreaterThan(1.05);
  expect(airs[0]! / airs[1]! / (filled[0]! / filled[1]!)).toBeCloseTo(1, 2);
});
