/** How quickly air follows the plates: common practice, no source, unless named. */
import { beforeAll, describe, expect, it } from 'vitest';
import { type MovedPlates, movePlates, pedalled, withPlates } from '../../sim/engine/plateMove.ts';
import type { EngineSpecification } from '../../sim/specification.ts';
import { onPlenum } from '../../sim/study/plenum/fitted.ts';
import { coarse } from '../../sim/study/signal/tapped.ts';
import { demo } from '../scenario.ts';

const { engine: filed, plenum } = demo('hill-climb');
const { row: _row, ...alike } = plenum;
const bodies = { ...filed, numerics: coarse(filed.numerics) };
const behind = onPlenum(bodies, alike);
const SPEED = 4000;

/** Plates from one opening above their stop to another, snapped [deg]. */
function snapped(
  engine: EngineSpecification,
  from: number,
  to: number,
  cycles: number,
): MovedPlates {
  const { closedAngle } = pedalled(engine);
  const start = withPlates(engine, closedAngle + from);
  return movePlates({ engine: start, speed: SPEED, to: closedAngle + to, seconds: 0, cycles });
}

/** First charge with nine tenths of the change [s]. */
function there({ charges, fillings: { before, after } }: MovedPlates): number {
  return charges.find(({ filling }) => filling - before >= 0.9 * (after - before))!.time;
}

let own: MovedPlates;
let other: MovedPlates;
beforeAll(() => {
  own = snapped(bodies, 7, 9, 4);
  other = snapped(behind, 7, 9, 14);
}, 60_000);

describe('plates nearly shut, opened a little', () => {
  it('individual ports are full within two turns', () => {
    expect(there(own)).toBeLessThan((2 * 60) / SPEED);
  });

  it('a plenum slows the response: it takes at least four times as long', () => {
    expect(there(other)).toBeGreaterThan(4 * there(own));
  });
});

it('plates stand still until they move', () => {
  const [first] = own.charges;
  const still = own.signal.filter(({ time }) => time <= 0);
  expect(still.at(-1)!.time).toBeCloseTo(0, 9);
  expect(still[0]!.time).toBeCloseTo(-0.03 + 1 / 600 / 4, 3);
  expect(first!.time).toBeCloseTo(0.0075, 6);
});

it('snapped plates come to the state settled with them', () => {
  const { charges, fillings } = own;
  for (const { filling } of charges.slice(-4)) {
    expect(Math.abs(filling / fillings.after - 1)).toBeLessThan(0.02);
  }
});
