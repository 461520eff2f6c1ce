/**
 * Torque against mixture at full load: greatest at lambda 0.85 to 0.92, as dynos show it. Common practice;
 * Heywood (1988), sec. 15.3, from memory.
 */
import { expect, it } from 'vitest';
import { runPoint } from '../../sim/engine/point.ts';
import { demo } from '../scenario.ts';

const { engine } = demo('hill-climb');
const MIXTURES = [0.8, 0.85, 0.88, 0.92, 0.96, 1, 1.1];

it.each([4600, 6600])('%d rpm: torque is greatest rich', (speed) => {
  const torque = MIXTURES.map((lambda) => {
    const combustion = { ...engine.combustion, lambda };
    return runPoint({ ...engine, combustion }, speed).indicatedTorque;
  });
  const best = MIXTURES[torque.indexOf(Math.max(...torque))]!;
  expect(best).toBeGreaterThanOrEqual(0.85);
  expect(best).toBeLessThanOrEqual(0.92);
  // Burning an excess of air costs more than burning an excess of fuel.
  expect(torque.at(-1)!).toBeLessThan(torque[0]!);
});
