/**
 * What a sensor reads over one cycle of runners that are alike, in time and by linear theory; what a crank
 * window or a filter makes of it. No source: book-keeping over periodicBar.ts and barMarches.ts.
 */
import { type MarchedCycle, marchedCycle } from './barMarches.ts';
import { imaginary, ONE } from './complex.ts';
import { harmonicsOf, samplesOf } from './fourierSeries.ts';
import type { RestingGas } from './line.ts';
import { periodicBar } from './periodicBar.ts';
import type { PressureBar } from './pressureBar.ts';

/** Samples of one cycle, a degree apart. */
export const SAMPLES = 720;
/** Harmonics of the cycle that are kept. */
const HARMONICS = 60;

export const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** Peak to peak. */
export const swing = (values: readonly number[]): number =>
  Math.max(...values) - Math.min(...values);

/** The history of a runner that is late by a share of the cycle. */
export function shifted(history: readonly number[], late: number): number[] {
  const by = Math.round(late * SAMPLES);
  return history.map((_, i) => history[(i - by + SAMPLES) % SAMPLES]!);
}

/** One bar at one point. */
export interface Reading {
  /** In time, where jets rectify. */
  marched: MarchedCycle;
  /** Ripple at the sensor, peak to peak [Pa], and mean reading above the runners' mean [Pa]. */
  ripple: number;
  offset: number;
  /** Ripple by the exact linear theory, jets by harmonic balance [Pa]. */
  linearRipple: number;
}

/** One bar on runners that are alike. */
export interface ReadingJob {
  bar: PressureBar;
  /** Pressure of the first runner over the cycle [Pa], and how late each is, in cycles [-]. */
  history: readonly number[];
  shifts: readonly number[];
  gas: RestingGas;
  /** Cycles a second [Hz], and cylinders: their firing sets the friction of hoses in time. */
  frequency: number;
  cylinders: number;
}

export function readingOf({
  bar,
  history,
  shifts,
  gas,
  frequency,
  cylinders,
}: ReadingJob): Reading {
  const histories = shifts.map((late) => shifted(history, late));
  const marched = marchedCycle(bar, histories, 1 / frequency, gas, cylinders * frequency);
  return {
    marched,
    ripple: swing(marched.sensor),
    offset: mean(marched.sensor) - mean(history),
    linearRipple: linearRipple(bar, history, shifts, frequency, gas),
  };
}

/** Ripple at the sensor by the linear theory, peak to peak [Pa]. */
export function linearRipple(
  bar: PressureBar,
  history: readonly number[],
  shifts: readonly number[],
  frequency: number,
  gas: RestingGas,
  { harmonics: count, samples } = { harmonics: HARMONICS, samples: SAMPLES },
): number {
  const harmonics = harmonicsOf(history, count);
  const runners = { mean: mean(history), harmonics, frequency, shifts };
  return swing(periodicBar(bar, runners, gas, samples).sensor);
}

/** Mean over a crank window [deg] that is read once a cycle. */
export function windowMean(
  samples: readonly number[],
  { from, to }: { from: number; to: number },
): number {
  const angles = Array.from({ length: Math.max(Math.round(to - from), 1) }, (_, i) => i);
  const at = (angle: number) => samples[(Math.round(from) + angle) % SAMPLES]!;
  return mean(angles.map(at));
}

/** Ripple that a first-order filter of this time constant [s] leaves, peak to peak [Pa]. */
export function filteredRipple(
  samples: readonly number[],
  time: number,
  frequency: number,
): number {
  const kept = harmonicsOf(samples, HARMONICS).map((one, i) => {
    return one.div(ONE.add(imaginary(2 * Math.PI * (i + 1) * frequency * time)));
  });
  return swing(samplesOf(0, kept, SAMPLES));
}

/** Time constant [s] of a filter that leaves at most this ripple [Pa]; 0 where none is needed. */
export function filterFor(samples: readonly number[], ripple: number, frequency: number): number {
  const within = (time: number) => filteredRipple(samples, time, frequency) <= ripple;
  if (within(0)) return 0;
  let [low, high] = [0, LONGEST_FILTER];
  if (!within(high)) return Number.POSITIVE_INFINITY;
  for (let i = 0; i < 14; i++) {
    const middle = (low + high) / 2;
    if (within(middle)) high = middle;
    else low = middle;
  }
  return high;
}

const LONGEST_FILTER = 2;
