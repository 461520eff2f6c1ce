/**
 * The balance of mass and energy over a cycle: what went in, came out and is stored. The scheme is
 * conservative, so anything but round-off is a fault.
 */
import { receivedBySpray } from '../spray/sprayLedger.ts';
import type { Run } from './cycle.ts';

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
export function stored({ model, sprays }: Run): Balance {
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
  for (const { cylinder } of model.lines) {
    const held = cylinder.crevices(model.working.gas);
    mass += held.mass;
    energy += held.energy;
  }
  for (const spray of sprays) {
    const held = spray.held();
    mass += held.mass;
    energy += held.energy;
  }
  return { mass, energy };
}

/** What has come in less what has gone out since the last reset of the ledgers. */
export function received({ model, sprays }: Run): Balance {
  const { feed, outside, collectors, lines, network } = model;
  let mass = -feed.taken.mass - outside.taken.mass;
  let energy = -feed.taken.energy - outside.taken.energy;
  for (const echo of collectors.flatMap((joint) => joint.echoes)) {
    mass += echo.given.mass;
    energy += echo.given.energy;
  }
  for (const duct of network.ducts) energy += duct.heatTaken;
  for (const spray of sprays) {
    const fromSpray = receivedBySpray(spray.ledger);
    mass += fromSpray.mass;
    energy += fromSpray.energy;
  }
  for (const { cylinder } of lines) {
    const { work, wallHeat, burnHeat, fuelMass, fuelEnergy, blownMass, blownEnergy } =
      cylinder.ledger;
    mass += fuelMass - blownMass;
    energy += fuelEnergy + burnHeat - work - wallHeat - blownEnergy;
  }
  return { mass, energy };
}

/** Sets every ledger to zero. */
export function resetLedgers({ model, sprays }: Run): void {
  const { feed, outside, collectors, lines, network } = model;
  const echoes = collectors.flatMap((joint) => joint.echoes);
  const cylinders = lines.map(({ cylinder }) => cylinder);
  for (const part of [feed, outside, ...echoes, ...cylinders, ...network.ducts, ...sprays])
    part.resetLedger();
  for (const line of lines) {
    line.intakeValve.resetSums();
    line.mouth.resetSums();
    line.behindPlate.resetSums();
  }
  for (const { hoses, passage } of model.bars)
    for (const end of passage ? [...hoses, passage] : hoses) end.resetSums();
}

/** The audit of the time since the last reset, `before` being what was stored then. */
export function audit(run: Run, before: Balance): Audit {
  const after = stored(run);
  const came = received(run);
  const passed = throughput(run);
  return {
    massError: Math.abs(after.mass - before.mass - came.mass) / passed.mass,
    energyError: Math.abs(after.energy - before.energy - came.energy) / passed.energy,
  };
}

/** Fresh mass taken and heat released; where nothing burns, the enthalpy of the mass taken. */
function throughput({ model }: Run): Balance {
  const { feed, lines, working } = model;
  const mass = Math.abs(feed.taken.mass);
  const heat = lines.reduce((sum, line) => sum + line.cylinder.ledger.burnHeat, 0);
  const warm = mass * working.gas.heatCapacityPressure(feed.temperature, 0, 0) * feed.temperature;
  return { mass, energy: Math.max(heat, warm) };
}
