/** What is known of flow meters on individual bodies: common practice, no source, unless named. */
import { beforeAll, describe, expect, it } from 'vitest';
import { mean } from '../../sim/acoustics/barReading.ts';
import { tracePoint } from '../../sim/engine/trace.ts';
import type { AirboxSpecification, MeterSpecification } from '../../sim/fittings.ts';
import { inBox } from '../../sim/study/airbox/fitted.ts';
import {
  type MeteredPoint,
  meterOutcomes,
  meterSound,
  meterStudyOf,
} from '../../sim/study/meter/compute.ts';
import { historyOf } from '../../sim/study/signal/history.ts';
import { TASKS } from '../../sim/sweep/tasks.ts';
import { demo, meshed } from '../scenario.ts';

const { engine, airbox, meter } = demo('hill-climb');
const computer = { task: async (_: string, job: never) => TASKS.trace(job) } as never;
const stop = engine.intake.throttle.closedAngle;
const look = async (
  speeds: number[],
  above: number[],
  box: Partial<AirboxSpecification> = {},
  said: Partial<MeterSpecification> = {},
) => {
  const angles = above.map((one) => Math.min(stop + one, 90));
  const asked = { ...meter, speeds, angles, ...said };
  return meterStudyOf({ engine, airbox: { ...airbox, ...box }, meter: asked }, computer);
};

let rows: MeteredPoint[];
const at = (speed: number, above: number) =>
  rows.find((one) => one.speed === speed && Math.abs(one.above - above) < 1e-9)!;
const SPEEDS = [1000, 2230, 8600];
beforeAll(async () => {
  const study = await look(SPEEDS, [6, 12, 82]);
  expect(meterSound(study)).toBe(true);
  expect(meterOutcomes(study)).toHaveLength(9);
  rows = study.points;
}, 60_000);

it('what passes the meter is what the mouths of all cylinders take in', () => {
  const { row: _row, ...alike } = airbox;
  const boxed = inBox(meshed(engine, 4, 1e-3), alike);
  const stations = [
    { name: 'mouth', duct: 'trumpet', share: 0 },
    { name: 'meter', duct: 'inlet', share: 0.5 },
  ] as const;
  for (const speed of [2230, 5000]) {
    const { stations: found, crankAngle } = tracePoint(boxed, speed, stations);
    const [mouth, inlet] = found.map(({ massFlow }) => mean(historyOf(crankAngle, massFlow)));
    expect(Math.abs(inlet! / (4 * mouth!) - 1), `${speed} rpm`).toBeLessThan(5e-3);
  }
});

it('at low speed, wide open, much of it passes straight into the exhaust; at high speed little', () => {
  expect(at(1000, 82).seen!.through).toBeGreaterThan(0.1);
  expect(Math.abs(at(8600, 82).seen!.through)).toBeLessThan(0.02);
});

describe('a flow meter in the snorkel', () => {
  it('sees the most pulsation where box and snorkel ring with the firing, wide open', () => {
    const unsteady = SPEEDS.map((speed) => at(speed, 82).seen!.pulsation.unsteadiness);
    expect(Math.max(...unsteady)).toBe(unsteady[1]);
    expect(unsteady[2]).toBeLessThan(0.1);
  });

  it('reads high where the flow turns back, a hot one low where it only swings', () => {
    const { pulsation, readings } = at(2230, 82).seen!;
    expect(pulsation.least).toBeLessThan(0);
    for (const reading of Object.values(readings)) expect(reading).toBeGreaterThan(1.5);
    const swings = at(2230, 6).seen!;
    expect(swings.pulsation.least).toBeGreaterThan(0);
    expect(swings.readings.hot).toBeLessThan(0.95);
    expect(swings.readings.straight).toBeCloseTo(1, 6);
    expect(swings.readings.difference).toBeGreaterThan(1.1);
  });

  it('is right to a thousandth high above that speed', () => {
    expect(Math.abs(at(8600, 12).errors!.pulse)).toBeLessThan(1e-3);
    expect(at(8600, 12).errors!.flow).toBeCloseTo(meter.flowError, 4);
  });

  it('is steadier behind a bigger box', async () => {
    const [small, big] = await Promise.all(
      [4e-3, 32e-3].map(async (volume) => {
        const { points } = await look([3500], [82], { volume });
        return points[0]!.seen!.pulsation.unsteadiness;
      }),
    );
    expect(small).toBeGreaterThan(3 * big!);
  });

  it('out of its range it is not trusted, however steady the flow', async () => {
    const range = async (said: Partial<MeterSpecification>) => {
      const { points } = await look([8600], [6, 12], {}, said);
      return points.map(({ errors }) => [errors!.range, errors!.trust]);
    };
    const [[, narrow], [, wide]] = [await range({ most: 0.03 }), await range({ turnDown: 2 })];
    expect(narrow![0]).toBe('above');
    expect(wide![0]).toBe('below');
    for (const [, trust] of [narrow!, wide!]) expect(trust).not.toBe('flow');
  });
});

describe('pressure and plate', () => {
  it('all runners joined are far steadier than one', () => {
    for (const { seen } of rows)
      expect(seen!.pressure.ripple).toBeLessThan(seen!.pressure.alone / 8);
  });

  it('a plate tells the air the better the wider it stands', () => {
    for (const speed of SPEEDS) {
      const [narrow, wide] = [6, 12].map((above) => at(speed, above).errors!.angle!);
      expect(narrow).toBeGreaterThan(wide!);
    }
  });

  it('where a tuned intake fills less wide open, neither plate nor pressure tells', async () => {
    const { points } = await look([2230], [30, 82]);
    const { errors } = points[1]!;
    expect(errors!.angle).toBeUndefined();
    expect(errors!.pressure).toBeUndefined();
    expect(errors!.trust).toBeUndefined();
  });
});
