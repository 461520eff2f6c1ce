/**
 * One bar tried: its ripple at the hardest points by linear theory, and how late it is behind a step in time.
 * No source: book-keeping over periodicBar.ts and barMarches.ts.
 */
import { stepAnswer } from './barMarches.ts';
import { linearRipple } from './barReading.ts';
import { magnitude } from './complex.ts';
import type { RestingGas } from './line.ts';
import { barLines, barResponse, type PressureBar } from './pressureBar.ts';

/** Harmonics of the cycle and samples of it. */
const COARSE = { harmonics: 24, samples: 144 };
/** A step is watched for so many times the lag that is allowed. */
const WATCHED = 6;

/** A point at which a bar is tried. */
export interface TriedAt {
  speed: number;
  angle: number;
  history: readonly number[];
  frequency: number;
  gas: RestingGas;
}

/** All runners step from one pressure to another [Pa]. */
export interface Step {
  from: number;
  to: number;
  gas: RestingGas;
  /** Firing frequency [Hz]. */
  frequency: number;
}

/** One bar and what it does. */
export interface TriedBar {
  bar: PressureBar;
  /** Ripple at the worst point, peak to peak [Pa], and which of the points that is. */
  ripple: number;
  worst: number;
  /** From 10 to 90 % of a step [s]; infinite beyond what was watched. */
  lag: number;
  overshoot: number;
}

/** Where and how bars are tried. */
export interface Trial {
  shifts: readonly number[];
  points: readonly TriedAt[];
  step: Step;
  /** Longest lag allowed [s]. */
  mostLag: number;
}

export function triedBar(bar: PressureBar, { points, shifts, step, mostLag }: Trial): TriedBar {
  const ripples = points.map(({ history, frequency, gas }) =>
    linearRipple(bar, history, shifts, frequency, gas, COARSE),
  );
  const ripple = Math.max(...ripples);
  const watched = WATCHED * mostLag;
  const answer = stepAnswer(bar, step.from, step.to, step.gas, step.frequency, watched);
  return { bar, ripple, worst: ripples.indexOf(ripple), ...answer };
}

/** Frequency at which all runners in phase move the bar most, jets aside [Hz], and how much [-]. */
export function resonanceOf(
  bar: PressureBar,
  gas: RestingGas,
): { frequency: number; height: number } {
  let top = { frequency: 0, height: 0 };
  for (let frequency = 2; frequency <= 400; frequency += 1) {
    const { bar: share } = barResponse(barLines(bar, frequency, gas), 0);
    const height = bar.hoses * magnitude(share);
    if (height > top.height) top = { frequency, height };
    else if (height < top.height / 2) break;
  }
  return top;
}
