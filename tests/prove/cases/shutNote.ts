/**
 * The note of the shut intake: after the valve has closed, the pipe rings at its own frequency until
 * it opens again. From the solver's traced pressure at the valve, and from the linear estimate: where
 * the wave comes back to the shut valve in step, arg r = 0.
 *
 * Walls at feed temperature, so that both know the speed of sound, and a low speed, so that there is
 * time for many periods. Loss and finite amplitude move the note by far less than the end correction.
 */
import { tracePoint, withLength } from '../../../sim/index.ts';
import { END_CORRECTION_UNFLANGED } from '../../../sim/loss/endCorrection.ts';
import type { EngineSpecification } from '../../../sim/specification.ts';
import { linearIntake } from '../../acoustics/linearEstimate.ts';
import { pipeReflection } from '../../acoustics/linearInduction.ts';
import { hillClimb } from './engine.ts';

const SPEED = 1500;

/** The hill-climb four with a trumpet of this length [m], plain or flared, its intake walls cool. */
export function coolEngine(length: number, flared: boolean): EngineSpecification {
  const engine = withLength(hillClimb(), length);
  const { intake } = engine;
  const plain = { depth: 0, overhang: 0, endCorrection: END_CORRECTION_UNFLANGED };
  if (!flared) Object.assign(intake.trumpet.bellmouth, plain);
  for (const pipe of [intake.trumpet, intake.runner, intake.port]) {
    pipe.wallTemperature = intake.feed.temperature;
  }
  return engine;
}

/** Lowest frequency at which the shut pipe answers in step [Hz]. */
export function linearNote(engine: EngineSpecification): number {
  const { pipe, gas } = linearIntake(engine);
  const late = (frequency: number) => pipeReflection(pipe, frequency, 0, gas).arg();
  // The phase falls from pi at 0 Hz through 0 at the note.
  let [low, high] = [10, 10];
  while (late(high) > 0) high += 10;
  low = high - 10;
  for (let i = 0; i < 30; i++) {
    const middle = (low + high) / 2;
    if (late(middle) > 0) low = middle;
    else high = middle;
  }
  return low;
}

/** Mean frequency of the solver's pressure at the shut valve about the feed's [Hz]. */
export function solverNote(engine: EngineSpecification): number {
  const trace = tracePoint(engine, SPEED);
  const port = trace.stations.find(({ name }) => name === 'port')!;
  const { open, close } = trace.intakeEvents;
  const shut = trace.crankAngle
    .map((angle, i) => ({
      since: (angle - close + 720) % 720,
      above: port.pressure[i]! - engine.intake.feed.pressure,
    }))
    .filter(({ since }) => since < (open - close + 720) % 720)
    .sort((a, b) => a.since - b.since);
  const crossings: number[] = [];
  for (let i = 1; i < shut.length; i++) {
    const [before, now] = [shut[i - 1]!, shut[i]!];
    if (before.above * now.above >= 0) continue;
    const share = before.above / (before.above - now.above);
    crossings.push(before.since + share * (now.since - before.since));
  }
  // The first periods still hold higher notes.
  const from = 4;
  const periods = (crossings.length - 1 - from) / 2;
  return (periods * 6 * SPEED) / (crossings.at(-1)! - crossings[from]!);
}
