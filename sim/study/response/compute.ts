/**
 * How quickly the charge follows the plates at one speed: individual bodies in the open and in a box, one
 * throttle and a plenum. The charge that a cylinder closes on makes its torque at its next firing.
 */
import { type MovedPlates, pedalled, withPlates } from '../../engine/plateMove.ts';
import { interpolateLinear } from '../../interpolation.ts';
import type { EngineSpecification } from '../../specification.ts';
import type { PointFailure, PointOutcome } from '../../sweep/runner.ts';
import type { SweepObserver } from '../../sweep/sweep.ts';
import type { Computer } from '../../sweep/tasks.ts';
import { inBox } from '../airbox/fitted.ts';
import { onPlenum } from '../plenum/fitted.ts';
import { coarse } from '../signal/tapped.ts';
import type { ResponseQuestion } from './ask.ts';

export type WayName = 'bodies' | 'box' | 'plenum';

/** One charge on the way. */
export interface Followed {
  /** Place in the firing order, from 1. */
  place: number;
  /** Since plates began to move, to its closing and to its firing [s]. */
  closing: number;
  firing: number;
  filling: number;
  /** Share of the change of filling that it has [-]. */
  share: number;
  /** Lambda over that wanted where the lagging signal fuels [-]. */
  lean: number;
}

export interface ResponseWay {
  name: WayName;
  moved: MovedPlates;
  charges: Followed[];
  /** Until the first firing of each cylinder with nine tenths of the new torque, in firing order [s]; NaN: never. */
  times: number[];
  /** Until the firing from which on every cylinder has them [s]; NaN where that is never so. */
  ready: number;
}

export interface ResponseStudy {
  question: ResponseQuestion;
  ways: ResponseWay[];
  failed: { name: WayName; failure: PointFailure }[];
}

/** Share of the new torque at which it counts as there. */
export const THERE = 0.9;
/** Cycles that are followed. */
const CYCLES = 10;

export async function responseStudyOf(
  question: ResponseQuestion,
  computer: Computer,
  observer: SweepObserver = {},
): Promise<ResponseStudy> {
  const engines = waysOf(question);
  const { speed, seconds, from, to } = question;
  observer.onTotal?.(engines.length);
  const found = await Promise.all(
    engines.map(async ({ name, engine }) => {
      const { closedAngle } = pedalled(engine);
      const start = withPlates(engine, closedAngle + from);
      const end = Math.min(closedAngle + to, 90);
      const job = { engine: start, speed, to: end, seconds, cycles: CYCLES };
      const moved = await computer.task('plates', job);
      observer.onPoint?.(0, speed, 'failure' in moved ? moved : moved.before);
      return { name, moved };
    }),
  );
  return {
    question,
    ways: found.flatMap(({ name, moved }) =>
      'failure' in moved ? [] : [followed(name, moved, question)],
    ),
    failed: found.flatMap(({ name, moved }) =>
      'failure' in moved ? [{ name, failure: moved }] : [],
    ),
  };
}

/** One volume each: nearly shut, cylinders along a chamber never quite repeat. */
function waysOf({ engine, plenum, airbox }: ResponseQuestion) {
  const rough: EngineSpecification = { ...engine, numerics: coarse(engine.numerics) };
  const { row: _plenumRow, ...onePlenum } = plenum;
  const { row: _boxRow, ...oneBox } = airbox;
  return [
    { name: 'bodies' as const, engine: rough },
    { name: 'box' as const, engine: inBox(rough, oneBox) },
    { name: 'plenum' as const, engine: onPlenum(rough, onePlenum) },
  ];
}

function followed(name: WayName, moved: MovedPlates, question: ResponseQuestion): ResponseWay {
  const { before, after } = moved.fillings;
  const fuelled = fuelledFilling(moved, question);
  const charges = moved.charges.map(
    ({ place, time, filling }): Followed => ({
      place: place + 1,
      closing: time,
      firing: time + moved.untilFiring,
      filling,
      share: (filling - before) / (after - before),
      lean: filling / fuelled(time),
    }),
  );
  const cylinders = question.engine.cylinder.count;
  const times = Array.from({ length: cylinders }, (_, i) => {
    const own = charges.filter(({ place }) => place === i + 1);
    return own.find(({ share }) => share >= THERE)?.firing ?? Number.NaN;
  });
  return { name, moved, charges, times, ready: readyAt(charges, cylinders) };
}

/** The first firing of a whole round of cylinders that are all there [s]. */
function readyAt(charges: readonly Followed[], cylinders: number): number {
  const at = charges.findIndex((_, i) => {
    const round = charges.slice(i, i + cylinders);
    return round.length === cylinders && round.every(({ share }) => share >= THERE);
  });
  return charges[at]?.firing ?? Number.NaN;
}

/**
 * Filling that fuel is metered for, of a charge that closes at a time: fuel is given one turn before, by a
 * first-order lag of the signal, its mean over a cycle known at both ends and straight between.
 */
function fuelledFilling({ signal, fillings }: MovedPlates, { lag, speed }: ResponseQuestion) {
  const turn = 60 / speed;
  const times = signal.map(({ time }) => time);
  const still = signal.filter(({ time }) => time <= 0).map(({ pressure }) => pressure);
  const last = signal.slice(-still.length).map(({ pressure }) => pressure);
  const mean = (values: readonly number[]) => values.reduce((sum, p) => sum + p, 0) / values.length;
  const [low, high] = [mean(still), mean(last)];
  let level = low;
  const seen = signal.map(({ pressure, time }, i) => {
    const dt = i > 0 ? time - times[i - 1]! : 0;
    if (time > 0) level += ((pressure - level) * dt) / (lag + dt);
    return level;
  });
  return (closing: number) => {
    const at = closing - turn;
    const pressure = at <= times[0]! ? low : interpolateLinear(times, seen, at);
    const share = Math.min(Math.max((pressure - low) / (high - low), 0), 1);
    return fillings.before + share * (fillings.after - fillings.before);
  };
}

/** Every point that the study rests on. */
export function responseOutcomes({ ways, failed }: ResponseStudy): PointOutcome[] {
  return [
    ...ways.flatMap(({ moved }) => [moved.before, moved.after]),
    ...failed.map(({ failure }) => failure),
  ];
}
