/**
 * How quickly the charge follows the plates at one speed: individual bodies as they stand, near the valve and far
 * from it, in a box, one throttle and a plenum. The charge that a cylinder closes on makes its torque at its
 * next firing.
 */
import type { FilmModel } from '../../decision/tipIn.ts';
import type { MovedPlates } from '../../engine/plateMove.ts';
import { pedalled, withPlates } from '../../engine/platesAtRest.ts';
import type { EngineSpecification } from '../../specification.ts';
import { isFailure, type PointFailure, type PointOutcome } from '../../sweep/runner.ts';
import type { SweepObserver } from '../../sweep/sweep.ts';
import type { Computer } from '../../sweep/tasks.ts';
import { inBox } from '../airbox/fitted.ts';
import { onPlenum } from '../plenum/fitted.ts';
import { coarse } from '../signal/tapped.ts';
import type { ResponseQuestion } from './ask.ts';
import { meteringOf, SIGNALS, type Signal, throughFilm } from './fuelled.ts';
import { movedBodies, plateToValve, roomOf } from './movedBodies.ts';

export type WayName = 'bodies' | 'near' | 'far' | 'box' | 'plenum';

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
  /** Lambda over that wanted, fuelled by each signal, walls dry; and wet where the file has injectors [-]. */
  lean: Record<Signal, number>;
  wet?: Record<Signal, number>;
}

export interface ResponseWay {
  name: WayName;
  /** From the plate that moves to the valve [m]; undefined before a plenum. */
  toValve?: number;
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
  /** Of the injectors of the file, at the speed and opening before, and the point that it was found at. */
  film?: FilmModel;
  wetPoint?: PointOutcome;
}

/** Share of the new torque at which it counts as there. */
export const THERE = 0.9;
/** Cycles that are followed. */
export const CYCLES = 10;
/** Of the way from the opening before to the one after: where plates are settled too. */
const BETWEEN = [1 / 16, 1 / 8, 1 / 4, 1 / 2];

export async function responseStudyOf(
  question: ResponseQuestion,
  computer: Computer,
  observer: SweepObserver = {},
): Promise<ResponseStudy> {
  const engines = waysOf(question);
  const { injectors, speed } = question;
  observer.onTotal?.(engines.length + (injectors ? 1 : 0));
  const told = (outcome: PointOutcome) => observer.onPoint?.(0, speed, outcome);
  const [found, wetPoint] = await Promise.all([
    Promise.all(engines.map((way) => move(way, question, computer, told))),
    injectors && wetRun(question, computer, told),
  ]);
  const film = wetPoint && filmOf(wetPoint);
  return {
    question,
    ways: found.flatMap((one) => ('moved' in one ? [followed(one, question, film)] : [])),
    failed: found.flatMap((one) => ('failure' in one ? [one] : [])),
    ...(film && { film }),
    ...(wetPoint && { wetPoint }),
  };
}

interface Way {
  name: WayName;
  engine: EngineSpecification;
}

/** One volume each, or one a bank: nearly shut, cylinders along a chamber never quite repeat. */
function waysOf({ engine, plenum, airbox, ways }: ResponseQuestion): Way[] {
  const rough: EngineSpecification = { ...engine, numerics: coarse(engine.numerics) };
  const { row: _plenumRow, ...onePlenum } = plenum;
  const { row: _boxRow, ...oneBox } = airbox;
  const room = roomOf(rough);
  const moved = (name: WayName, by: number): Way[] =>
    by === 0 ? [] : [{ name, engine: movedBodies(rough, by) }];
  const all: Way[] = [
    { name: 'bodies', engine: rough },
    ...moved('near', room.near),
    ...moved('far', -room.far),
    { name: 'box', engine: inBox(rough, oneBox) },
    { name: 'plenum', engine: onPlenum(rough, onePlenum) },
  ];
  return ways ? all.filter(({ name }) => ways.includes(name)) : all;
}

interface MovedWay extends Way {
  moved: MovedPlates;
  /** Plates at the end [deg]. */
  to: number;
}

async function move(
  { name, engine }: Way,
  { speed, seconds, from, to }: ResponseQuestion,
  computer: Computer,
  told: (outcome: PointOutcome) => void,
): Promise<MovedWay | ResponseStudy['failed'][number]> {
  const { closedAngle } = pedalled(engine);
  const start = closedAngle + from;
  const end = Math.min(closedAngle + to, 90);
  const between = BETWEEN.map((share) => start + share * (end - start));
  const own = withPlates(engine, start);
  const job = { engine: own, speed, to: end, seconds, between, cycles: CYCLES };
  const moved = await computer.task('plates', job);
  told('failure' in moved ? moved : moved.before);
  if ('failure' in moved) return { name, failure: moved };
  return { name, engine: own, moved, to: end };
}

/** The bodies as they stand with the injectors of the file, plates as they start. */
async function wetRun(
  { engine, injectors, speed, from }: ResponseQuestion,
  computer: Computer,
  told: (outcome: PointOutcome) => void,
): Promise<PointOutcome> {
  const open = withPlates(engine, engine.intake.throttle.closedAngle + from);
  const wet = { ...open, numerics: coarse(engine.numerics), injectors: injectors! };
  const outcome = await computer.run({ engine: wet, speed });
  told(outcome);
  return outcome;
}

function filmOf(outcome: PointOutcome): FilmModel | undefined {
  const spray = isFailure(outcome) ? undefined : outcome.spray;
  return spray && { share: spray.filmShare, time: spray.filmTime };
}

function followed(way: MovedWay, question: ResponseQuestion, film?: FilmModel): ResponseWay {
  const { name, engine, moved, to } = way;
  const [before, after] = [moved.rest[0]!.filling, moved.rest.at(-1)!.filling];
  const metering = meteringOf(moved, engine, to, question);
  const lambda = (of: (signal: Signal) => number) =>
    Object.fromEntries(SIGNALS.map((signal) => [signal, of(signal)])) as Record<Signal, number>;
  const dry = moved.charges.map(
    ({ place, time, filling }): Followed => ({
      place: place + 1,
      closing: time,
      firing: time + moved.untilFiring,
      filling,
      share: (filling - before) / (after - before),
      lean: lambda((signal) => filling / metering[signal](time)),
    }),
  );
  const wet = film && wetLambdas(dry, film, before, 120 / question.speed);
  const charges = dry.map((one, i) => ({
    ...one,
    ...(wet && { wet: lambda((signal) => wet[signal][i]!) }),
  }));
  const cylinders = question.engine.cylinder.count;
  const times = Array.from({ length: cylinders }, (_, i) => {
    const own = charges.filter(({ place }) => place === i + 1);
    return own.find(({ share }) => share >= THERE)?.firing ?? Number.NaN;
  });
  const toValve = name === 'plenum' ? {} : { toValve: plateToValve(engine) };
  return { name, ...toValve, moved, charges, times, ready: readyAt(charges, cylinders) };
}

/** Lambda over that wanted of every charge, each cylinder with a film of its own. */
function wetLambdas(
  charges: readonly Followed[],
  film: FilmModel,
  before: number,
  cycle: number,
): Record<Signal, number[]> {
  const of = (signal: Signal) => {
    const lambdas = charges.map(() => Number.NaN);
    for (const place of new Set(charges.map((one) => one.place))) {
      const own = [...charges.keys()].filter((i) => charges[i]!.place === place);
      const metered = own.map((i) => charges[i]!.filling / charges[i]!.lean[signal]);
      const got = throughFilm(metered, before, film, cycle);
      own.forEach((i, k) => {
        lambdas[i] = charges[i]!.filling / got[k]!;
      });
    }
    return lambdas;
  };
  return { pressure: of('pressure'), angle: of('angle') };
}

/** The first firing of a whole round of cylinders that are all there [s]. */
function readyAt(charges: readonly Followed[], cylinders: number): number {
  const at = charges.findIndex((_, i) => {
    const round = charges.slice(i, i + cylinders);
    return round.length === cylinders && round.every(({ share }) => share >= THERE);
  });
  return charges[at]?.firing ?? Number.NaN;
}

/** Every point that the study rests on. */
export function responseOutcomes({ ways, failed, wetPoint }: ResponseStudy): PointOutcome[] {
  return [
    ...ways.flatMap(({ moved }) => [moved.before, moved.after]),
    ...failed.map(({ failure }) => failure),
    ...(wetPoint ? [wetPoint] : []),
  ];
}
