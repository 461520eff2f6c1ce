/** What is heard of the intake at full load: the mouths' flow as sound, at every speed, near and far. */
import type { LengthUnit } from '../../decision/lengthUnit.ts';
import { STATIONS } from '../../engine/trace.ts';
import { workingGas } from '../../engine/workingGas.ts';
import { heard, type Listener, type Row } from '../../sound/monopoles.ts';
import { cycleFrequency, type Orders, ordersOf } from '../../sound/orders.ts';
import { fullScaleOf, runUpSound, type Sound, steadySound } from '../../sound/samples.ts';
import type { EngineSpecification } from '../../specification.ts';
import { isFailure, type PointOutcome } from '../../sweep/runner.ts';
import { type SweepObserver, withLength } from '../../sweep/sweep.ts';
import type { Computer } from '../../sweep/tasks.ts';

export interface ListenQuestion {
  engine: EngineSpecification;
  /** Trumpet lengths [m], one or two. */
  lengths: readonly number[];
  /** Speeds [rpm], rising, with the one held among them. */
  speeds: readonly number[];
  /** Speed that is held [rpm]. */
  speed: number;
  row: Row;
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

export interface ListenStudy extends Pick<ListenQuestion, 'speed' | 'row' | 'lengthUnit'> {
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
  const { engine, lengths, speeds, speed, row, lengthUnit } = question;
  const { soundSpeed, cutOff, beams } = limitsOf(engine);
  observer.onTotal?.(lengths.length * speeds.length);
  const all = lengths.map(async (length, index): Promise<HeardLength> => {
    const fitted = withLength(engine, length);
    const points = await Promise.all(
      speeds.map(async (n) => {
        const point = await heardPoint(fitted, n, row, { soundSpeed, cutOff }, computer);
        observer.onPoint?.(index, n, point.outcome);
        return point;
      }),
    );
    return { length, points, ...soundsOf(points, speed) };
  });
  const heardLengths = await Promise.all(all);
  const sounds = heardLengths.flatMap(({ held, runUp }) => [held, runUp]);
  const fullScale = fullScaleOf(sounds.filter((sound) => sound !== undefined));
  return { speed, row, lengthUnit, lengths: heardLengths, cutOff, beams, fullScale };
}

function limitsOf(engine: EngineSpecification) {
  const { outerDiameter, bellmouth } = engine.intake.trumpet;
  const soundSpeed = workingGas(engine).gas.soundSpeed(engine.ambient.temperature, 0, 0);
  const of = (number: number, radius: number) => (number * soundSpeed) / (2 * Math.PI * radius);
  return {
    soundSpeed,
    cutOff: of(CROSS_MODE, outerDiameter / 2),
    beams: of(1, outerDiameter / 2 + bellmouth.overhang),
  };
}

async function heardPoint(
  engine: EngineSpecification,
  speed: number,
  row: Row,
  { soundSpeed, cutOff }: { soundSpeed: number; cutOff: number },
  computer: Computer,
): Promise<HeardPoint> {
  const trace = await computer.task('trace', { engine, speed, stations: [MOUTH] });
  if ('failure' in trace) return { outcome: trace };
  const fundamental = cycleFrequency(speed);
  const mouth = trace.stations.find(({ name }) => name === MOUTH.name)!;
  const out = mouth.massFlow.map((flow) => -flow);
  const flow = ordersOf(trace.crankAngle, out, fundamental, cutOff / fundamental);
  return {
    outcome: trace.point,
    near: heard(flow, row, { distance: NEAR, height: row.height }, soundSpeed),
    far: heard(flow, row, FAR, soundSpeed),
  };
}

const MOUTH = STATIONS.find(({ name }) => name === 'mouth')!;

function soundsOf(points: readonly HeardPoint[], speed: number) {
  const known = points.flatMap(({ near }) => near ?? []);
  const held = points.find(({ outcome }) => outcome.speed === speed)?.near;
  return {
    ...(held && { held: steadySound(held, SECONDS.held) }),
    ...(known.length > 1 && { runUp: runUpSound(known, SECONDS.runUp) }),
  };
}

/** Share by which the mouths' air may differ from that outside and still count as open. */
const OPEN = 0.01;

/** Whether the mouths stand in the open and not in a box. */
export function mouthsInTheOpen({ intake, ambient }: EngineSpecification): boolean {
  return Math.abs(intake.feed.pressure / ambient.pressure - 1) <= OPEN;
}

/** Whether every speed has settled. */
export function listenSound({ lengths }: ListenStudy): boolean {
  return lengths.every(({ points }) =>
    points.every(({ outcome }) => !isFailure(outcome) && outcome.settled),
  );
}
