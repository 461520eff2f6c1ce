/**
 * Every hose bore, jet and volume on sale: ripple at the worst point, lag of a step, what no other beats, and
 * where a bigger bar swings more.
 */
import type { Trial, TriedBar } from '../../acoustics/barTrial.ts';
import type { PressureBar } from '../../acoustics/pressureBar.ts';
import type { Computer } from '../../sweep/tasks.ts';

/** Bores of hoses and of drilled jets [m], and volumes [m^3] that are tried; common practice, no source. */
const HOSES = [0.002, 0.003, 0.004, 0.005, 0.006];
const JETS = [0.0005, 0.0006, 0.0008, 0.001, 0.0013, 0.0016, 0.002, 0.0025];
const VOLUMES = [2e-6, 5e-6, 1e-5, 2e-5, 5e-5, 1e-4, 2e-4];
/** Ripple grows by more than this where a bigger bar is said to swing more [-]. */
const MORE = 1.03;

export interface Search {
  tried: TriedBar[];
  /** Those that no other beats in ripple and lag, by lag. */
  unbeaten: TriedBar[];
  /** Smallest ripple within the lag allowed. */
  best?: TriedBar;
  /** Neighbours in volume, all else alike, where the bigger swings more; greatest growth first. */
  worseThough: { smaller: TriedBar; bigger: TriedBar }[];
}

/** Every bar on sale beside the bar of the file, tried by whoever computes. */
export async function searchBars(
  bar: PressureBar,
  trial: Trial,
  computer: Pick<Computer, 'task'>,
): Promise<Search> {
  const tried = await tryAll(choices(bar), trial, computer);
  const unbeaten = tried
    .filter((one) => Number.isFinite(one.lag) && !tried.some((other) => beats(other, one)))
    .sort((a, b) => a.lag - b.lag);
  const quick = unbeaten.filter(({ lag }) => lag <= trial.mostLag);
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

/** How many bars are one task. */
const SHARE = 40;

/** Bars in order, some to a task. */
export async function tryAll(
  bars: readonly PressureBar[],
  trial: Trial,
  computer: Pick<Computer, 'task'>,
): Promise<TriedBar[]> {
  const shares = Array.from({ length: Math.ceil(bars.length / SHARE) }, (_, i) =>
    bars.slice(i * SHARE, (i + 1) * SHARE),
  );
  const found = await Promise.all(
    shares.map((share) => computer.task('bars', { ...trial, bars: share })),
  );
  return found.flat();
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
