/** Books of an engine with injectors: mass, energy and fuel close over every cycle. */
import { describe, expect, test } from 'vitest';
import { audit, resetLedgers, stored } from '../../sim/engine/audit.ts';
import { runCycle, startRun } from '../../sim/engine/cycle.ts';
import { type EngineModel, engineModel } from '../../sim/engine/model.ts';
import { sprayed } from './engine.ts';

/** Fuel in ducts, cylinders, drops, films and cloud [kg]. */
function fuelHeld(model: EngineModel): number {
  const ducts = model.network.ducts.reduce((sum, duct) => sum + duct.contents().fuel, 0);
  return model.lines.reduce(
    (sum, { cylinder, spray }) => sum + cylinder.contents.fuel + (spray?.held().mass ?? 0),
    ducts,
  );
}

/** Fuel that came and did not go since the last reset [kg]. */
function fuelReceived(model: EngineModel): number {
  let fuel = -model.feed.taken.fuel - model.outside.taken.fuel;
  for (const { cylinder, spray } of model.lines) {
    const l = spray!.ledger;
    fuel += cylinder.ledger.fuelMass + l.injectedMass + l.blownMass + l.adjustedMass;
    fuel -= l.lostMass + l.withheldMass;
  }
  for (const echo of model.collectors.flatMap(({ echoes }) => echoes)) fuel += echo.given.fuel;
  return fuel;
}

describe.each([
  ['near', 0],
  ['above', 1],
  ['both', 0.5],
] as const)('fuel %s', (_name, share) => {
  test('closes mass, energy and fuel to 1e-8 in every cycle', () => {
    const model = engineModel(sprayed(share, { parcels: 30 }), 6000);
    const run = startRun(model);
    for (let cycle = 0; cycle < 4; cycle++) {
      resetLedgers(model);
      const before = stored(model);
      const fuelBefore = fuelHeld(model);
      const [line] = runCycle(run);
      const { massError, energyError } = audit(model, before);
      expect(massError).toBeLessThan(1e-8);
      expect(energyError).toBeLessThan(1e-8);
      // What burned: the fuel of the charge as the last closing left it.
      const burned = cycle === 0 ? startFuel(line!.trapped) : burnedFuel;
      const miss = fuelHeld(model) - fuelBefore - fuelReceived(model) + burned;
      expect(Math.abs(miss) / burned).toBeLessThan(cycle === 0 ? 1 : 1e-8);
      const { cylinder, spray } = model.lines[0]!;
      const liquid = spray!.parcels.held().inCylinder + sum(spray!.charge.wall.mass);
      burnedFuel = cylinder.contents.fuel + liquid;
    }
  });
  let burnedFuel = 0;
});

const startFuel = ({ air }: { air: number }) => air / 14;
const sum = (values: Float64Array) => values.reduce((total, value) => total + value, 0);

test('with one effect alone the books still close, what is withheld being noted', () => {
  for (const coupling of [
    { heat: 'valve', vapour: 'off' },
    { heat: 'off', vapour: 'valve' },
  ] as const) {
    const model = engineModel(sprayed(1, { parcels: 30, coupling }), 7000);
    const run = startRun(model);
    for (let cycle = 0; cycle < 3; cycle++) {
      resetLedgers(model);
      const before = stored(model);
      runCycle(run);
      const { massError, energyError } = audit(model, before);
      expect(massError).toBeLessThan(1e-8);
      expect(energyError).toBeLessThan(1e-8);
    }
  }
});
