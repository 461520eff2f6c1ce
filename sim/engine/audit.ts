/**
 * The balance of mass and energy over a cycle: what went in, came out and is stored. The scheme is
 * conservative, so anything but round-off is a fault.
 */
import { receivedBySpray } from '../spray/sprayLedger.ts';
import type { EngineModel } from './model.ts';

export interface Balance {
  /** Mass [kg]. */
  mass: number;
  /** Energy [J]. */
  energy: number;
}

export interface Audit {
  /** Mass lost over the last cycle, as a share of the mass that passed [-]. */
  massError: number;
  /** Energy lost over the last cycle, as a share of the energy that passed [-]. */
  energyError: number;
}

/** What the whole network holds. */
export function stored(model: EngineModel): Balance {
  let mass = 0;
  let energy = 0;
  for (const duct of model.network.ducts) {
    const held = duct.contents();
    mass += held.mass;
    energy += held.energy;
  }
  for (const volume of model.network.volumes) {
    mass += volume.contents.mass;
    energy += volume.contents.energy;
  }
  for (const { spray } of model.lines) {
    const held = spray?.held();
    mass += held?.mass ?? 0;
    energy += held?.energy ?? 0;
  }
  return { mass, energy };
}

/** What has come in less what has gone out since the last reset of the ledgers. */
export function received(model: EngineModel): Balance {
  const { feed, outside, collectors, lines, network } = model;
  let mass = -feed.taken.mass - outside.taken.mass;
  let energy = -feed.taken.energy - outside.taken.energy;
  for (const echo of collectors.flatMap((joint) => joint.echoes)) {
    mass += echo.given.mass;
    energy += echo.given.energy;
  }
  for (const duct of network.ducts) energy += duct.heatTaken;
  for (const { cylinder, spray } of lines) {
    const fromSpray = spray && receivedBySpray(spray.ledger);
    mass += fromSpray?.mass ?? 0;
    energy += fromSpray?.energy ?? 0;
    const { work, wallHeat, burnHeat, fuelMass, fuelEnergy } = cylinder.ledger;
    mass += fuelMass;
    energy += fuelEnergy + burnHeat - work - wallHeat;
  }
  return { mass, energy };
}

/** Sets every ledger to zero. */
export function resetLedgers(model: EngineModel): void {
  const ledgers = [
    model.feed.taken,
    model.outside.taken,
    ...model.collectors.flatMap((joint) => joint.echoes.map((echo) => echo.given)),
    ...model.lines.map((line) => line.cylinder.ledger),
  ];
  for (const ledger of ledgers) {
    for (const key of Object.keys(ledger)) (ledger as unknown as Record<string, number>)[key] = 0;
  }
  for (const duct of model.network.ducts) duct.heatTaken = 0;
  for (const { spray } of model.lines) spray?.resetLedger();
}

/** The audit of the time since the last reset, `before` being what was stored then. */
export function audit(model: EngineModel, before: Balance): Audit {
  const after = stored(model);
  const came = received(model);
  const passed = throughput(model);
  return {
    massError: Math.abs(after.mass - before.mass - came.mass) / passed.mass,
    energyError: Math.abs(after.energy - before.energy - came.energy) / passed.energy,
  };
}

/** Fresh mass taken and heat released; where nothing burns, the enthalpy of the mass taken. */
function throughput(model: EngineModel): Balance {
  const { feed, lines, working } = model;
  const mass = Math.abs(feed.taken.mass);
  const heat = lines.reduce((sum, line) => sum + line.cylinder.ledger.burnHeat, 0);
  const warm = mass * working.gas.heatCapacityPressure(feed.temperature, 0, 0) * feed.temperature;
  return { mass, energy: Math.max(heat, warm) };
}
