/** Burn that follows residual gas: slow at idle, as stated at full load. */
import { expect, test } from 'vitest';
import { burnStretch, MOST_RESIDUAL, STATED_AT } from '../../sim/cylinder/burnDuration.ts';
import { Cylinder } from '../../sim/cylinder/cylinder.ts';
import { runPoint } from '../../sim/engine/point.ts';
import type { EngineSpecification } from '../../sim/specification.ts';
import { withAngle } from '../../sim/study/load/cell.ts';
import { airAndProducts } from '../gases.ts';
import { demo } from '../scenario.ts';

const { engine } = demo('hill-climb');
const gas = airAndProducts();

const withResponse = (burnResponse: number): EngineSpecification => ({
  ...engine,
  combustion: { ...engine.combustion, burnResponse },
});
/** Torque with the burn of the laws over that of the stated burn, less one. */
function moved(angle: number, speed: number): number {
  const torque = (response: number) =>
    runPoint(withAngle(withResponse(response), angle), speed).indicatedTorque;
  return torque(1) / torque(0) - 1;
}

test('burn lasts as stated at the stated charge, longer with residual gas, and no longer than was measured', () => {
  expect(burnStretch(STATED_AT)).toBe(1);
  const at = (residual: number) => burnStretch({ ...STATED_AT, residual });
  // ((1 - 2.06 * 0.05^0.77) / (1 - 2.06 * 0.2^0.77))^(2/3), by hand.
  expect(at(0.2)).toBeCloseTo(1.5716, 4);
  expect(at(0.6)).toBe(at(MOST_RESIDUAL));
  expect(burnStretch({ ...STATED_AT, pistonSpeed: 30 })).toBeCloseTo(2 ** (1 / 3), 9);
});

test('Metghalchi & Keck (1982) slow a burn two thirds as much as Rhodes & Keck (1985)', () => {
  const keck = (x: number) => (1 - 2.1 * x) ** (-2 / 3);
  const ours = burnStretch({ ...STATED_AT, residual: 0.2 });
  const share = Math.log(keck(0.2) / keck(STATED_AT.residual)) / Math.log(ours);
  expect(share).toBeGreaterThan(0.6);
  expect(share).toBeLessThan(0.7);
});

test('slower burn takes torque at idle and part load, and moves full load little', () => {
  for (const speed of [3000, 5400, 8600]) expect(Math.abs(moved(90, speed))).toBeLessThan(0.015);
  expect(moved(8.8, 1000)).toBeLessThan(-0.05);
  expect(moved(12, 3000)).toBeLessThan(-0.04);
});

test('no charge burns before its valve has shut, however slow', () => {
  const shut = { from: 600, to: 122 };
  const burn = { middle: 9, duration: 120, response: 1.5 };
  const cylinder = new Cylinder({ name: 'slow', crank: engine.cylinder, burn, shut }, 600);
  cylinder.setSpeed(3000);
  cylinder.fill(gas, { pressure: 5e4, temperature: 400, burned: 0.5 });
  cylinder.close(gas, 600);
  expect(cylinder.burnStart).toBeCloseTo(600 - 720, 6);
});
