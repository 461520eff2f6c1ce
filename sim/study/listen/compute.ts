/** What is heard of the intake at full load: the mouths' flow as sound, at every speed, near and far. */
import type { LengthUnit } from '../../decision/lengthUnit.ts';
import { workingGas } from '../../engine/workingGas.ts';
import type { AirboxSpecification } from '../../fittings.ts';
import { heard, type Listener, type Row } from '../../sound/monopoles.ts';
import { cycleFrequency, type Orders, ordersOf } from '../../sound/orders.ts';
import { fullScaleOf, runUpSound, type Sound, steadySound } from '../../sound/samples.ts';
import type { EngineSpecification } from '../../specification.ts';
import { isFailure, type PointOutcome } from '../../sweep/runner.ts';
import { type SweepObserver, withLength } from '../../sweep/sweep.ts';
import type { Computer } from '../../sweep/tasks.ts';
import { type Source, sourceOf } from './source.ts';

export interface ListenQuestion {
  engine: EngineSpecification;
  /** Trumpet lengths [m], one or two. */
  lengths: readonly number[];
  /** Speeds [rpm], rising, with the one held among them. */
  speeds: readonly number[];
  /** Speed that is held [rpm]. */
  speed: number;
  row: Row;
  /** What they stand in, whose inlet is heard then; absent: the open. */
  box?: AirboxSpecification;
  /** Unit that people read lengths in. */
  lengthUnit: LengthUnit;
}

/** One speed; without orders where it failed. */
export interface HeardPoint {
  outcome: PointOutcome;
  /** At the near and at the far place. */
  near?: Orders;
  far?: Orders;
}

export interface HeardLength {
  length: number;
  points: HeardPoint[];
  /** At the near place; absent where too little was computed. */
  held?: Sound;
  runUp?: Sound;
}

/** `row` is what sounds: the mouths, or the one inlet of their box. */
export interface ListenStudy extends Pick<ListenQuestion, 'speed' | 'row' | 'box' | 'lengthUnit'> {
  lengths: HeardLength[];
  /** Above this pipes carry more than plane waves, and nothing is in the sound [Hz]. */
  cutOff: number;
  /** Above this a mouth no longer sends alike in all directions [Hz]. */
  beams: number;
  /** Pressure that fills the scale of every sound [Pa]. */
  fullScale: number;
}

/** Level, in front of the middle of the row: half a metre, at the height of the mouths [m]. */
export const NEAR = 0.5;
/** The line and the height of the microphone of pass-by noise: ISO 362-1, from memory [m]. */
export const FAR: Listener = { distance: 7.5, height: 1.2 };

/** How long one speed is held, and how long a run up takes [s]. */
const SECONDS = { held: 3, runUp: 8 } as const;

/** Wave number times radius at which the first cross mode runs in a round pipe: first zero of J1'. */
const CROSS_MODE = 1.8411837813;

export async function soundOf(
  question: ListenQuestion,
  computer: Computer,
  observer: SweepObserver = {},
): Promise<ListenStudy> {
  const { engine, lengths, speeds, speed, box, lengthUnit } = question;
  const source = sourceOf(engine, question.row, box);
  const { row } = source;
  const { soundSpeed, cutOff, beams } = limitsOf(engine, source);
  observer.onTotal?.(lengths.length * speeds.length);
  const all = lengths.map(async (length, index): Promise<HeardLength> => {
    const fitted = source.fed(withLength(engine, length));
    const points = await Promise.all(
      speeds.map(async (n) => {
        const point = await heardPoint(fitted, n, source, { soundSpeed, cutOff }, computer);
        observer.onPoint?.(index, n, point.outcome);
        return point;
      }),
    );
    return { length, points, ...soundsOf(points, speed) };
  });
  const heardLengths = await Promise.all(all);
  const sounds = heardLengths.flatMap(({ held, runUp }) => [held, runUp]);
  const fullScale = fullScaleOf(sounds.filter((sound) => sound !== undefined));
  const own = { speed, row, ...(box && { box }), lengthUnit };
  return { ...own, lengths: heardLengths, cutOff, beams, fullScale };
}

function limitsOf(engine: EngineSpecification, { bore, rim }: Source) {
  const soundSpeed = workingGas(engine).gas.soundSpeed(engine.ambient.temperature, 0, 0);
  const of = (number: number, radius: number) => (number * soundSpeed) / (2 * Math.PI * radius);
  return {
    soundSpeed,
    cutOff: of(CROSS_MODE, bore / 2),
    beams: of(1, rim / 2),
  };
}

async function heardPoint(
  engine: EngineSpecification,
  speed: number,
  { station, row }: Source,
  { soundSpeed, cutOff }: { soundSpeed: number; cutOff: number },
  computer: Computer,
): Promise<HeardPoint> {
  const trace = await computer.task('trace', { engine, speed, stations: [station] });
  if ('failure' in trace) return { outcome: trace };
  const fundamental = cycleFrequency(speed);
  const out = trace.stations[0]!.massFlow.map((flow) => -flow);
  const flow = ordersOf(trace.crankAngle, out, fundamental, cutOff / fundamental);
  return {
    outcome: trace.point,
    near: heard(flow, row, { distance: NEAR, height: row.height }, soundSpeed),
    far: heard(flow, row, FAR, soundSpeed),
  };
}

function soundsOf(points: readonly HeardPoint[], speed: number) {
  const known = points.flatMap(({ near }) => near ?? []);
  const held = points.find(({ outcome }) => outcome.speed === speed)?.near;
  return {
    ...(held && { held: steadySound(held, SECONDS.held) }),
    ...(known.length > 1 && { runUp: runUpSound(known, SECONDS.runUp) }),
  };
}

/** Whether every speed has settled. */
export function listenSound({ lengths }: ListenStudy): boolean {
  return lengths.every(({ points }) =>
    points.every(({ outcome }) => !isFailure(outcome) && outcome.settled),
  );
}
