/** The audit of a settled engine point, and that it finds a leak. No source: conservation. */
import { expect, it } from 'vitest';
import { audit, stored } from '../../sim/engine/audit.ts';
import { Run } from '../../sim/engine/cycle.ts';
import { engineModel } from '../../sim/engine/plan.ts';
import { runPoint } from '../../sim/engine/point.ts';
import { type Demo, demo } from '../scenario.ts';
import { crossPlaneEight, twin } from '../unevenEngines.ts';

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

it.each([
  ['a cross-plane eight', crossPlaneEight(), 5400],
  ['a twin that fires 270 and 450 deg apart', twin(270), 4200],
])('%s, cylinders coupled, balances as well', (_, engine, speed) => {
  for (const solved of ['unlike', 'all'] as const) {
    const { audit: of, settled } = runPoint(engine, speed, { solved });
    expect(settled).toBe(true);
    expect(of.massError).toBeLessThan(1e-10);
    expect(of.energyError).toBeLessThan(1e-6);
  }
});

it('finds a leak of a millionth of what the intake valve passes', () => {
  const speed = 6200;
  const model = engineModel(demo('hill-climb').engine);
  const run = new Run(model, speed);
  run.start(false);
  const cycle = () => {
    const before = stored(run);
    run.cycle();
    return audit(run, before);
  };
  const sound = cycle();
  expect(sound.massError).toBeLessThan(1e-10);
  expect(sound.energyError).toBeLessThan(1e-10);
  // The duct now loses a little more than the cylinder is told that it gets. Energy counts from 25 C and has
  // either sign, so its leak goes with the size of the flow.
  const { intakeValve } = model.lines[0]!;
  const { cells, mesh } = intakeValve.duct;
  const last = mesh.cells - 1;
  run.stride = 1;
  run.onStop = () => {
    const perVolume = run.stride / (6 * speed) / mesh.volume[last]!;
    cells.rho.add(last, -(1e-6 * intakeValve.flow.mass * perVolume));
    cells.energy.add(last, -(1e-4 * Math.abs(intakeValve.flow.energy) * perVolume));
  };
  const leaking = cycle();
  expect(leaking.massError).toBeGreaterThan(1e-8);
  expect(leaking.energyError).toBeGreaterThan(1e-7);
});
