/** The audit of a settled engine point, and that it finds a leak. No source: conservation. */
import { expect, it } from 'vitest';
import { audit, resetLedgers, stored } from '../../sim/engine/audit.ts';
import { runCycle, startRun } from '../../sim/engine/cycle.ts';
import { engineModel } from '../../sim/engine/model.ts';
import { runPoint } from '../../sim/engine/point.ts';
import { type Demo, demo } from '../scenario.ts';

it.each([
  ['hill-climb', 6200],
  ['sprint-single', 9000],
  ['endurance-six', 5500],
  ['boosted-four', 5200],
] as [Demo, number][])('%s at %d rpm balances mass to 1e-10 and energy to 1e-6', (name, speed) => {
  const result = runPoint(demo(name).engine, speed);
  expect(result.settled).toBe(true);
  expect(result.audit.massError).toBeLessThan(1e-10);
  expect(result.audit.energyError).toBeLessThan(1e-6);
});

it('finds a leak of a millionth of what the intake valve passes', () => {
  const model = engineModel(demo('hill-climb').engine, 6200);
  const run = startRun(model);
  const { intakeValve } = model.lines[0]!;
  const cleanCycle = () => {
    resetLedgers(model);
    const before = stored(model);
    runCycle(run);
    return audit(model, before);
  };
  expect(cleanCycle().massError).toBeLessThan(1e-10);
  // The duct now loses a little more than the cylinder is told that it gets.
  const write = intakeValve.write.bind(intakeValve);
  intakeValve.write = (rho, v, p, burned, fuel, energy) => {
    write(rho, v, p, burned, fuel, energy);
    intakeValve.duct.flux.mass[intakeValve.duct.mesh.cells]! *= 1 + 1e-6;
    intakeValve.duct.flux.energy[intakeValve.duct.mesh.cells]! *= 1 + 1e-4;
  };
  const leaking = cleanCycle();
  expect(leaking.massError).toBeGreaterThan(1e-8);
  expect(leaking.energyError).toBeGreaterThan(1e-7);
});
