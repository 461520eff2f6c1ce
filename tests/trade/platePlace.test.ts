/**
 * Where the plate stands in the pipe, the whole length kept: nothing wide open, and part open the more volume lies
 * behind the plate, the more a cylinder draws at the same angle. Common practice, no source; sizes as docs/load.md tells them.
 */
import { expect, test } from 'vitest';
import { runSpeeds } from '../../sim/engine/point.ts';
import { withAngle } from '../../sim/study/load/cell.ts';
import { demo } from '../scenario.ts';

const { engine } = demo('hill-climb');
const FAR = 0.007;
const NEAR = 0.048;

/** Filling with the shaft so far from the outer face of the body [m]. */
function fillings(shaftPosition: number, angle: number, speeds: readonly number[]) {
  const throttle = { ...engine.intake.throttle, shaftPosition };
  const at = withAngle({ ...engine, intake: { ...engine.intake, throttle } }, angle);
  return runSpeeds(at, speeds).map((point) => {
    if (point instanceof Error) throw point;
    expect(point.settled).toBe(true);
    return point.volumetricEfficiency;
  });
}

/** What the plate next to the port draws over that farthest from it, less one [-]. */
function nearOverFar(angle: number, speeds: readonly number[]): number[] {
  const far = fillings(FAR, angle, speeds);
  return fillings(NEAR, angle, speeds).map((filling, i) => filling / far[i]! - 1);
}

test('wide open it is less than mesh and settling leave', { timeout: 60_000 }, () => {
  for (const change of nearOverFar(90, [4000, 6000, 8000]))
    expect(Math.abs(change)).toBeLessThan(1e-3);
});

test('part open a plate nearer to the port passes less, the faster the engine the less', {
  timeout: 60_000,
}, () => {
  const [slow, fast] = nearOverFar(20, [4800, 7000]) as [number, number];
  expect(slow).toBeLessThan(-0.05);
  expect(fast).toBeLessThan(-0.1);
  expect(fast).toBeLessThan(slow);
});
