/** Points whose figures mean nothing but are unlike each other, so that none can stand for another. */
import { createHash } from 'node:crypto';
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import type { PointResult } from '../../sim/engine/point.ts';
import type { Trace } from '../../sim/engine/trace.ts';
import type { PointJob } from '../../sim/sweep/runner.ts';
import type { TraceJob } from '../../sim/sweep/tasks.ts';
import { computerOf } from './computer.ts';

/** Figures by chance, the same for the same job. */
export const chanceWorkers = computerOf(
  async (job) => chancePoint(job),
  async (job) => chanceTrace(job),
);

type Between = (low: number, high: number) => number;

function chanceOf(job: PointJob): Between {
  const hash = createHash('sha256').update(JSON.stringify(job)).digest();
  const random = xoroshiro128plus(hash.readInt32LE(0));
  for (let i = 0; i < 8; i++) uniformInt(random, 0, 9);
  return (low, high) => low + (high - low) * uniformFloat64(random);
}

function chancePoint(job: PointJob): PointResult {
  const between = chanceOf(job);
  return {
    speed: job.speed,
    volumetricEfficiency: between(0.6, 1.4),
    pressureAtClosing: between(110e3, 220e3),
    chargeTemperature: between(330, 460),
    residualFraction: between(0.011, 0.09),
    backflow: between(0.1, 0.19),
    mouthOutflow: between(0.2, 0.29),
    portPressure: between(40e3, 99e3),
    indicatedTorque: between(150, 320),
    settled: true,
    cycles: Math.floor(between(4, 60)),
    meshError: between(0.0031, 0.0099),
    audit: { massError: between(1e-15, 2e-15), energyError: between(3e-15, 4e-15) },
    ...(job.engine.injectors && { spray: chanceSpray(between) }),
  };
}

function chanceSpray(between: Between): NonNullable<PointResult['spray']> {
  const needed = between(20e-6, 40e-6);
  return {
    injected: between(41e-6, 60e-6),
    delivered: needed,
    needed,
    evaporatedShare: between(0.5, 0.7),
    evaporatedUpstream: between(0.3, 0.49),
    outerShare: between(0.71, 0.99),
    pulse: [between(2.1e-3, 4.9e-3), between(5.1e-3, 8.9e-3)],
    residenceTime: between(10e-3, 20e-3),
    mixture: { early: between(0.8, 0.89), late: between(1.11, 1.19) },
    filmMass: between(61e-6, 90e-6),
    filmShare: between(0.21, 0.29),
    filmTime: between(0.1, 0.4),
    filmImbalance: between(1e-4, 2e-4),
    stockGrowth: between(1e-4, 2e-4),
    filmAdjusted: 0,
    standOff: between(0.031, 0.059),
    returned: between(0.011, 0.029),
    missed: between(0.001, 0.002),
    lost: between(0.003, 0.0099),
    along: {
      distance: [0.3, 0.2, 0.1],
      share: [between(0, 0.1), between(0, 0.1), between(0, 0.1)],
    },
  };
}

function chanceTrace(job: TraceJob): Trace {
  const between = chanceOf(job);
  const rows = Array.from({ length: 12 }, (_, i) => 60 * i + between(0, 50));
  const column = (low: number, high: number) => rows.map(() => between(low, high));
  return {
    point: chancePoint(job),
    crankAngle: rows,
    cylinderPressure: column(1e5, 5e6),
    cylinderTemperature: column(500, 2500),
    intakeLift: column(0.001, 0.004),
    exhaustLift: column(0.005, 0.009),
    intakeEvents: { open: 330, close: 600 },
    exhaustEvents: { open: 120, close: 380 },
    stations: job.stations.map(({ name }) => ({
      name,
      pressure: column(5e4, 2e5),
      velocity: column(-80, 150),
      massFlow: column(-0.05, 0.3),
      temperature: column(290, 400),
    })),
    wave: { distance: [0, 0.1], pressure: [[1e5, 1e5]], velocity: [[0, 1]] },
    ...(job.engine.intake.chamber && { chamberPressure: column(5e4, 1e5) }),
  };
}
