/** A pulse is cut by what it was ordered to give, whatever is ordered while it lasts. */
import { expect, test } from 'vitest';
import { liquidFuel } from '../../sim/spray/liquidFuel.ts';
import type { Parcels } from '../../sim/spray/parcels.ts';
import { Pulse } from '../../sim/spray/pulse.ts';
import { sprayLedger } from '../../sim/spray/sprayLedger.ts';
import { injectors } from './engine.ts';

const RPM = 6000;
const PARCELS = 10;
/** Of a cycle a thousand [s]. */
const STEP = 120 / RPM / 1000;

/** Parcels and fuel of one pulse [kg] that is open for half a cycle, with `next` [kg] ordered in the middle of it. */
function pulseWith(next: number) {
  const injector = { ...injectors.list[1]!, timing: { edge: 'start', angle: 0 } as const };
  const options = { fuel: liquidFuel('petrol'), speed: 20, temperature: 300 };
  const pulse = new Pulse(injector, { ...options, parcels: PARCELS, s: 0, rpm: RPM });
  const ordered = injector.flow * 500 * STEP;
  const parcels = { list: [] } as unknown as Parcels;
  pulse.command(ordered);
  for (let k = 0; k < 1600; k++) {
    if (k === 1250) pulse.command(next);
    pulse.release(STEP, 0.72 * (k % 1000), parcels, sprayLedger());
  }
  return { ordered, given: pulse.given, count: parcels.list.length };
}

const { ordered, ...unchanged } = pulseWith(1e-5);

test('a pulse gives what was ordered, in the parcels asked for and one of what is left', () => {
  expect(unchanged.given).toBeCloseTo(ordered, 12);
  expect(unchanged.count).toBeGreaterThanOrEqual(PARCELS);
  expect(unchanged.count).toBeLessThanOrEqual(PARCELS + 1);
});

test.each([1e-9, 1e-4, 0])(
  '%d kg ordered in the middle of a pulse changes nothing of it',
  (next) => {
    expect(pulseWith(next)).toEqual({ ordered, ...unchanged });
  },
);
