/**
 * Filling over plate angle and speed. Speeds are chosen where the air swings, as seen ahead on coarse cells (scout.ts),
 * angles where it bends (decision/loadGrid.ts); places where lines should be worst are computed besides, and say how far
 * they really are off. What the day's air does stands in density.ts.
 */
import { sweptVolume } from '../../cylinder/crank.ts';
import { type Step, stepErrors, valuesBetween } from '../../decision/loadGrid.ts';
import { power } from '../../elementary/powers.ts';
import { flowFunction } from '../../loss/nozzle.ts';
import { growthAt, plateGrowth, throttleArea } from '../../loss/throttlePlate.ts';
import type { EngineSpecification } from '../../specification.ts';
import type { PointOutcome, PointRunner } from '../../sweep/runner.ts';
import type { SweepObserver } from '../../sweep/sweep.ts';
import { DRY_AIR_GAS_CONSTANT } from '../../units.ts';
import { type LoadQuestion, SIZES } from './ask.ts';
import { airOf, type Grid, withAngle } from './cell.ts';
import { type LineCheck, lineChecks } from './checks.ts';
import { type DensityCorrection, densityCorrection, THIN_AND_WARM } from './density.ts';
import { coarse, type Scouted, scout, scoutedSpeeds, scoutedSteps } from './scout.ts';

/** What straight lines may err by, of the air. */
export const LIMIT = 0.01;

export interface LoadStudy extends Grid {
  question: LoadQuestion;
  /** Speeds that lines within the limit want at least, of those seen ahead. */
  speedsWanted: number;
  checks: LineCheck[];
  density: DensityCorrection;
}

/** Computes one engine at a plate angle and speed. */
export type LoadPoint = (angle: number, speed: number) => Promise<PointOutcome>;

export async function fillingMap(
  question: LoadQuestion,
  runner: PointRunner,
  observer: SweepObserver,
): Promise<LoadStudy> {
  const { engine } = question.scenario;
  const onDays = new Set(firstAngles(question));
  const point = asked(engine, runner, observer, onDays);
  const ahead = asked(coarse(engine), runner, observer);
  const scouted = await scout(question, [...onDays], roundSpeed, ahead);
  const grid = await chosenGrid(question, scouted, point);
  const checks = await lineChecks(grid, point);
  const density = densityCorrection(engine, grid);
  const speedsWanted = scoutedSpeeds(scouted, { limit: LIMIT, most: SIZES.most }).length;
  return { question, ...grid, speedsWanted, checks, density };
}

/** Points of an engine, none twice; those at some angles on other days besides. */
function asked(
  engine: EngineSpecification,
  runner: PointRunner,
  observer: SweepObserver,
  onDays: ReadonlySet<number> = new Set(),
): LoadPoint {
  const known = new Map<string, Promise<PointOutcome>>();
  const engines = new Map<number, EngineSpecification>();
  return (angle, speed) => {
    const key = `${angle} ${speed}`;
    const one = engines.get(angle) ?? withAngle(engine, angle);
    engines.set(angle, one);
    const days = onDays.has(angle) ? { days: THIN_AND_WARM } : {};
    const found =
      known.get(key) ??
      runner.run({ engine: one, speed, hastened: true, ...days }).then((outcome) => {
        observer.onPoint?.(0, speed, outcome);
        return outcome;
      });
    if (!known.has(key)) observer.onTotal?.(1);
    known.set(key, found);
    return found;
  };
}

/** Angles and speeds are chosen to these [deg], [rpm]. */
const roundAngle = (angle: number) => Math.round(20 * angle) / 20;
const roundSpeed = (speed: number) => 50 * Math.round(speed / 50);
const FIRST_ANGLES = 7;
const ROUNDS = 12;
const WIDE_OPEN = 90;

async function chosenGrid(
  question: LoadQuestion,
  scouted: Scouted,
  point: LoadPoint,
): Promise<Grid> {
  const { mostAngles, mostSpeeds } = question;
  let angles = firstAngles(question);
  let speeds = scoutedSpeeds(scouted, { limit: LIMIT, most: mostSpeeds });
  for (let round = 0; ; round++) {
    const grid = await computed(angles, speeds, scouted, point);
    const more = (xs: number[], steps: Step[], most: number, rounded: (x: number) => number) =>
      valuesBetween(xs, steps, { limit: LIMIT, room: roomIn(most - xs.length), rounded });
    const newAngles = more(angles, grid.angleSteps, mostAngles, roundAngle);
    const newSpeeds = more(speeds, grid.speedSteps, mostSpeeds, roundSpeed);
    if (round === ROUNDS || newAngles.length + newSpeeds.length === 0) return grid;
    angles = sorted([...angles, ...newAngles]);
    speeds = sorted([...speeds, ...newSpeeds]);
  }
}

/** Half of what is left at a time: what the new values show says where the rest is wanted. */
const roomIn = (left: number) => (left > FEW ? Math.ceil(left / 2) : Math.max(left, 0));
const FEW = 4;

const sorted = (xs: readonly number[]) => [...new Set(xs)].sort((a, b) => a - b);

async function computed(
  angles: number[],
  speeds: number[],
  scouted: Scouted,
  point: LoadPoint,
): Promise<Grid> {
  const outcomes = await Promise.all(
    angles.map((angle) => Promise.all(speeds.map((speed) => point(angle, speed)))),
  );
  const air = outcomes.map((row) => row.map(airOf));
  return {
    ...{ angles, speeds, outcomes },
    angleSteps: stepErrors(angles, air),
    speedSteps: scoutedSteps(scouted, { angles, speeds, air }),
  };
}

/** Openings in one ratio from a plate at idle to wide open. */
function firstAngles({ scenario: { engine } }: LoadQuestion): number[] {
  const { closedAngle } = engine.intake.throttle;
  const lowest = idleAngle(engine);
  const least = Math.max(lowest - closedAngle, 0.1);
  const most = WIDE_OPEN - closedAngle;
  const inner = Array.from({ length: FIRST_ANGLES - 2 }, (_, i) =>
    roundAngle(closedAngle + least * power(most / least, (i + 1) / (FIRST_ANGLES - 1))),
  );
  return sorted([lowest, ...inner, WIDE_OPEN]);
}

/** Air of an idling engine per swept volume [kg/s m^3]: 0.8 to 1.1 g/s a litre, U.S. DOE Fact #861, 2015. */
export const IDLE_AIR_FLOW = { low: 0.8, high: 1.1 };

/** The plate [deg] that lets half of an idling engine's least air through while it chokes; at its stop at least. */
export function idleAngle(engine: EngineSpecification): number {
  const { throttle, feed } = engine.intake;
  const wanted = 0.5 * IDLE_AIR_FLOW.low * sweptVolume(engine.cylinder);
  const perArea =
    (feed.pressure * flowFunction(0, 1.4)) / Math.sqrt(DRY_AIR_GAS_CONSTANT * feed.temperature);
  const choked = (angle: number) =>
    perArea * throttleArea(throttle, angle) * growthAt(plateGrowth(throttle, angle), 0);
  let angle = Math.ceil(20 * throttle.closedAngle) / 20;
  while (angle < WIDE_OPEN && choked(angle) < wanted) angle = roundAngle(angle + 0.05);
  return angle;
}
