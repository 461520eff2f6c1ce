/**
 * What fuel is metered for while plates move, and what of it reaches the cylinder.
 *
 * Both signals are read one turn before the valve closes and turned into air by what plates at rest give at
 * this speed, straight between the angles settled: pressure behind a first-order lag, the angle as it is.
 * Where walls are wet, cylinder by cylinder and cycle by cycle (decision/tipIn.ts):
 *
 *   delivered = (1 - X) f + m (1 - e),   m' = m e + X f,   e = exp(-cycle / tau)      m steady before plates move
 */
import type { FilmModel } from '../../decision/tipIn.ts';
import { exp } from '../../elementary/powers.ts';
import { angleAt, type MovedPlates } from '../../engine/plateMove.ts';
import type { AtRest } from '../../engine/platesAtRest.ts';
import { interpolateLinear } from '../../interpolation.ts';
import type { EngineSpecification } from '../../specification.ts';
import type { ResponseQuestion } from './ask.ts';

export const SIGNALS = ['pressure', 'angle'] as const;
export type Signal = (typeof SIGNALS)[number];

/** Filling that fuel is metered for, of a charge that closes at a time [s]. */
export type Metering = (closing: number) => number;

/** @param engine of the way, plates as they start */
export function meteringOf(
  moved: MovedPlates,
  engine: EngineSpecification,
  to: number,
  { lag, speed, seconds }: ResponseQuestion,
): Record<Signal, Metering> {
  const turn = 60 / speed;
  const { signal, rest } = moved;
  const low = rest[0]!.pressure;
  const times = signal.map(({ time }) => time);
  const seen = laggedSignal(signal, low, lag);
  const byPressure = risingIn(rest, ({ pressure }) => pressure);
  const byAngle = risingIn(rest, ({ angle }) => angle);
  return {
    pressure: (closing) => byPressure(interpolateLinear(times, seen, closing - turn)),
    angle: (closing) => byAngle(angleAt({ engine, to, seconds }, closing - turn)),
  };
}

/** The mean before plates move, then a first-order lag of what the sensor is under. */
function laggedSignal(signal: MovedPlates['signal'], low: number, lag: number): number[] {
  let level = low;
  return signal.map(({ pressure, time }, i) => {
    const dt = i > 0 ? time - signal[i - 1]!.time : 0;
    if (time > 0) level += ((pressure - level) * dt) / (lag + dt);
    return level;
  });
}

/** Filling of plates at rest by a reading; where the reading does not rise with the angle the place is left out. */
function risingIn(rest: readonly AtRest[], reading: (one: AtRest) => number) {
  const kept: AtRest[] = [];
  for (const one of rest) {
    const last = kept.at(-1);
    if (!last || reading(one) > reading(last)) kept.push(one);
  }
  const [xs, ys] = [kept.map(reading), kept.map(({ filling }) => filling)];
  return (at: number) => interpolateLinear(xs, ys, at);
}

/** Fuel that reaches one cylinder, charge by charge, in units of filling; `cycle` its time [s]. */
export function throughFilm(
  metered: readonly number[],
  before: number,
  { share, time }: FilmModel,
  cycle: number,
): number[] {
  if (!(time > 0)) return [...metered];
  const kept = exp(-cycle / time);
  let film = (share * before) / (1 - kept);
  return metered.map((fuel) => {
    const off = film * (1 - kept);
    film = film * kept + share * fuel;
    return (1 - share) * fuel + off;
  });
}
