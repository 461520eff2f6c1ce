/**
 * Every hose bore, jet and volume on sale: ripple at the worst point, lag of a step, what no other beats, and
 * where a bigger bar swings more.
 */
import { stepAnswer } from '../../acoustics/barMarches.ts';
import { magnitude } from '../../acoustics/complex.ts';
import type { RestingGas } from '../../acoustics/line.ts';
import { barLines, barResponse, type PressureBar } from '../../acoustics/pressureBar.ts';
import { linearRipple } from './reading.ts';

/** Bores of hoses and of drilled jets [m], and volumes [m^3] that are tried; common practice, no source. */
const HOSES = [0.002, 0.003, 0.004, 0.005, 0.006];
const JETS = [0.0005, 0.0006, 0.0008, 0.001, 0.0013, 0.0016, 0.002, 0.0025];
const VOLUMES = [2e-6, 5e-6, 1e-5, 2e-5, 5e-5, 1e-4, 2e-4];
/** Harmonics of the cycle and samples of it while searching. */
const COARSE = { harmonics: 24, samples: 144 };
/** A step is watched for so many times the lag that is allowed. */
const WATCHED = 6;
/** Ripple grows by more than this where a bigger bar is said to swing more [-]. */
export const MORE = 1.03;

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
  /** Ripple at the worst point, peak to peak [Pa], and where that is. */
  ripple: number;
  worst: TriedAt;
  /** From 10 to 90 % of a step [s]; infinite beyond what was watched. */
  lag: number;
  overshoot: number;
}

export interface Search {
  tried: TriedBar[];
  /** Those that no other beats in ripple and lag, by lag. */
  unbeaten: TriedBar[];
  /** Smallest ripple within the lag allowed. */
  best?: TriedBar;
  /** Neighbours in volume, all else alike, where the bigger swings more; greatest growth first. */
  worseThough: { smaller: TriedBar; bigger: TriedBar }[];
}

export interface SearchQuestion {
  bar: PressureBar;
  shifts: readonly number[];
  points: readonly TriedAt[];
  step: Step;
  mostLag: number;
}

export function searchBars(question: SearchQuestion): Search {
  const tried = choices(question.bar).map((bar) => triedBar(bar, question));
  const unbeaten = tried
    .filter((one) => Number.isFinite(one.lag) && !tried.some((other) => beats(other, one)))
    .sort((a, b) => a.lag - b.lag);
  const quick = unbeaten.filter(({ lag }) => lag <= question.mostLag);
  const best = quick.at(-1);
  return { tried, unbeaten, ...(best && { best }), worseThough: worseThough(tried) };
}

function beats(a: TriedBar, b: TriedBar): boolean {
  return a.ripple <= b.ripple && a.lag <= b.lag && (a.ripple < b.ripple || a.lag < b.lag);
}

function choices(bar: PressureBar): PressureBar[] {
  const volumes = VOLUMES.filter((volume) => volume >= bar.sensor.volume);
  return HOSES.flatMap((bore) =>
    [...JETS.filter((jet) => jet < bore), bore].flatMap((jet) =>
      volumes.map((volume) => withSizes(bar, bore, jet, volume)),
    ),
  );
}

/** The same bar of other sizes; a jet keeps its coefficient. */
function withSizes(bar: PressureBar, bore: number, jet: number, volume: number): PressureBar {
  const hose = { ...bar.hose, bore };
  return { ...bar, hose, volume, jet: { ...bar.jet!, bore: jet } };
}

/** The bar with other volumes, the rest as it is. */
export function withVolumes(bar: PressureBar): PressureBar[] {
  const own = [...VOLUMES, bar.volume];
  const volumes = [...new Set(own)].filter((volume) => volume >= bar.sensor.volume);
  return volumes.sort((a, b) => a - b).map((volume) => ({ ...bar, volume }));
}

export function triedBar(
  bar: PressureBar,
  { points, shifts, step, mostLag }: Omit<SearchQuestion, 'bar'>,
): TriedBar {
  const ripples = points.map(({ history, frequency, gas }) =>
    linearRipple(bar, history, shifts, frequency, gas, COARSE),
  );
  const ripple = Math.max(...ripples);
  const watched = WATCHED * mostLag;
  const answer = stepAnswer(bar, step.from, step.to, step.gas, step.frequency, watched);
  return { bar, ripple, worst: points[ripples.indexOf(ripple)]!, ...answer };
}

/** Neighbours in volume, all else alike, the greatest growth of ripple first. */
export function worseThough(tried: readonly TriedBar[]): Search['worseThough'] {
  const found = tried.flatMap((smaller, i) => {
    const bigger = tried[i + 1];
    if (!bigger || bigger.bar.volume < smaller.bar.volume) return [];
    return bigger.ripple > MORE * smaller.ripple ? [{ smaller, bigger }] : [];
  });
  const growth = ({ smaller, bigger }: (typeof found)[number]) => bigger.ripple - smaller.ripple;
  return found.sort((a, b) => growth(b) - growth(a));
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
