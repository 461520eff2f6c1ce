/** How quickly air follows the plates: common practice, no source, unless named. */
import { beforeAll, describe, expect, it } from 'vitest';
import { sweptVolume } from '../../sim/cylinder/crank.ts';
import { turnsToFill } from '../../sim/decision/idleAir.ts';
import { deliveredAfterStep } from '../../sim/decision/tipIn.ts';
import { type MovedPlates, movePlates } from '../../sim/engine/plateMove.ts';
import { type AtRest, pedalled, withPlates } from '../../sim/engine/platesAtRest.ts';
import type { Scenario } from '../../sim/scenario/resolve.ts';
import type { EngineSpecification } from '../../sim/specification.ts';
import { behindPlate } from '../../sim/study/plenum/compute.ts';
import { onPlenum } from '../../sim/study/plenum/fitted.ts';
import { usualResponse } from '../../sim/study/response/ask.ts';
import { type ResponseWay, responseStudyOf } from '../../sim/study/response/compute.ts';
import { meteringOf, SIGNALS, throughFilm } from '../../sim/study/response/fuelled.ts';
import { lambdasOf } from '../../sim/study/response/leanTables.ts';
import { movedBodies } from '../../sim/study/response/movedBodies.ts';
import { coarse } from '../../sim/study/signal/tapped.ts';
import { runJob } from '../../sim/sweep/runner.ts';
import { TASKS } from '../../sim/sweep/tasks.ts';
import { demo } from '../scenario.ts';

const scenario = demo('hill-climb');
const { engine: filed, plenum } = scenario;
const { row: _row, ...alike } = plenum;
const bodies = { ...filed, numerics: coarse(filed.numerics) };
const behind = onPlenum(bodies, alike);
const SPEED = 4000;

/** Plates from one opening above their stop to another, snapped [deg]. */
function snapped(
  engine: EngineSpecification,
  from: number,
  to: number,
  cycles: number,
): MovedPlates {
  const { closedAngle } = pedalled(engine);
  const start = withPlates(engine, closedAngle + from);
  const move = { engine: start, speed: SPEED, to: closedAngle + to, between: [] };
  return movePlates({ ...move, seconds: 0, cycles });
}

/** First charge with nine tenths of the change [s]. */
function there({ charges, rest }: MovedPlates): number {
  const [before, after] = rest.map(({ filling }) => filling) as [number, number];
  return charges.find(({ filling }) => filling - before >= 0.9 * (after - before))!.time;
}

/** When a share of the change is there, straight between charges [s]. */
function untilShare({ charges, rest }: MovedPlates, share: number): number {
  const [before, after] = rest.map(({ filling }) => filling) as [number, number];
  const of = (i: number) => (charges[i]!.filling - before) / (after - before);
  const k = charges.findIndex((_, i) => of(i) >= share);
  const [last, next] = [charges[k - 1]!.time, charges[k]!.time];
  return last + ((next - last) * (share - of(k - 1))) / (of(k) - of(k - 1));
}

let own: MovedPlates;
let other: MovedPlates;
beforeAll(() => {
  own = snapped(bodies, 7, 9, 4);
  other = snapped(behind, 7, 9, 14);
}, 60_000);

describe('plates nearly shut, opened a little', () => {
  it('individual ports are full within two turns', () => {
    expect(there(own)).toBeLessThan((2 * 60) / SPEED);
  });

  it('a plenum slows the response: it takes at least four times as long', () => {
    expect(there(other)).toBeGreaterThan(4 * there(own));
  });

  it('the plenum fills as the closed formula says of all room behind its plate, runners and ports with it', () => {
    const [before, after] = other.rest as [AtRest, AtRest];
    // How the air drawn goes with the pressure, in place of a filling.
    const slope = (after.filling - before.filling) / (after.pressure - before.pressure);
    const swept = filed.cylinder.count * sweptVolume(filed.cylinder);
    const turns = (room: number) => turnsToFill(room, swept, slope * filed.ambient.pressure);
    const found = (untilShare(other, 1 - 1 / Math.E) * SPEED) / 60;
    expect(Math.abs(found / turns(behindPlate(behind, alike)) - 1)).toBeLessThan(0.1);
    // The plenum alone is little more than half of it.
    expect(found).toBeGreaterThan(1.5 * turns(alike.volume));
  });
});

it('plates stand still until they move', () => {
  const [first] = own.charges;
  const still = own.signal.filter(({ time }) => time <= 0);
  expect(still.at(-1)!.time).toBeCloseTo(0, 9);
  expect(still[0]!.time).toBeCloseTo(-0.03 + 1 / 600 / 4, 3);
  expect(first!.time).toBeCloseTo(0.0075, 6);
});

it('snapped plates come to the state settled with them', () => {
  const { charges, rest } = own;
  for (const { filling } of charges.slice(-4)) {
    expect(Math.abs(filling / rest[1]!.filling - 1)).toBeLessThan(0.02);
  }
});

it('a body that moves leaves mouth and head where they are', () => {
  const walled = { ...bodies, intake: { ...bodies.intake, facingWall: 0.2 } };
  const { intake } = movedBodies(
    { ...walled, intake: { ...walled.intake, trumpetLengths: [0.1] } },
    -0.05,
  );
  const { trumpet, runner } = bodies.intake;
  expect(intake.trumpet.length + intake.runner.length).toBeCloseTo(
    trumpet.length + runner.length,
    12,
  );
  expect(intake.facingWall! - intake.trumpet.length).toBeCloseTo(0.2 - trumpet.length, 12);
  expect(intake.trumpetLengths![0]).toBeCloseTo(0.05, 12);
});

describe('fuel while plates open', () => {
  const film = { share: 0.4, time: 0.3 };
  const cycle = 0.03;

  it('a film keeps back what the closed form of a step says', () => {
    const got = throughFilm(Array(12).fill(2), 1, film, cycle);
    got.forEach((fuel, k) => {
      expect(fuel).toBeCloseTo(1 + deliveredAfterStep(film, k * cycle), 12);
    });
    expect(throughFilm([1, 1, 1], 1, film, cycle)).toEqual(
      [1, 1, 1].map((x) => expect.closeTo(x, 12)),
    );
    expect(throughFilm([3, 2], 1, { share: 0.4, time: 0 }, cycle)).toEqual([3, 2]);
  });

  it('runs less lean by angle than by a lagging pressure, and leaner the longer the lag', () => {
    const { closedAngle } = pedalled(bodies);
    const [from, to] = [closedAngle + 8, closedAngle + 30];
    const engine = withPlates(bodies, from);
    const opening = { engine, speed: SPEED, to, seconds: 0.02 };
    const moved = movePlates({ ...opening, between: [from + 5, from + 11], cycles: 6 });
    const leanest = (lag: number) => {
      const question = { ...usualResponse(scenario, SPEED), seconds: 0.02, lag };
      const metering = meteringOf(moved, engine, to, question);
      return SIGNALS.map((signal) =>
        Math.max(...moved.charges.map(({ filling, time }) => filling / metering[signal](time))),
      );
    };
    const [[quick, angle], [slow, same]] = [leanest(0.002), leanest(0.04)];
    expect(slow).toBeGreaterThan(1.15 * quick!);
    expect(slow).toBeGreaterThan(1.15 * angle!);
    expect(same).toBe(angle);
  });

  it('plenum, place of the plate and wet walls show in the mixture', async () => {
    const { injectors } = demo('endurance-six');
    const { ways, film: wet } = await followed({ ...scenario, injectors: injectors! });
    const [own, far, other] = (['bodies', 'far', 'plenum'] as const).map(
      (name) => ways.find((one) => one.name === name)!,
    );
    const richest = (way: ResponseWay | undefined) => Math.min(...lambdasOf(way!, 'angle'));
    expect(richest(other), 'a plenum by angle: the plate leads its air').toBeLessThan(0.85);
    expect(richest(other)).toBeLessThan(richest(own));
    expect(far!.toValve).toBeGreaterThan(own!.toValve! + 0.05);
    const second = (way: ResponseWay | undefined) => way!.charges[1]!.share;
    expect(second(far), 'further from the valve there is more to fill').toBeLessThan(second(own));
    expect(wet!.share).toBeGreaterThan(0.05);
    for (const way of ways) {
      const [dry, film] = (['lean', 'wet'] as const).map((walls) =>
        lambdasOf(way, 'angle', walls),
      ) as [number[], number[]];
      film.forEach((lambda, i) => {
        expect(lambda).toBeGreaterThanOrEqual(dry[i]! - 1e-9);
      });
      expect(Math.max(...film.slice(-8))).toBeGreaterThan(Math.max(...dry.slice(-8)) + 1e-4);
    }
  }, 120_000);
});

/** The study at 4000 rpm, plates nearly shut and snapped a little further open. */
function followed(asked: Scenario) {
  const computer = {
    task: async (_: string, job: never) => TASKS.plates(job),
    run: async (job: never) => runJob(job),
  } as never;
  const question = { ...usualResponse(asked, SPEED), from: 7, to: 9, seconds: 0 };
  return responseStudyOf(question, computer);
}
