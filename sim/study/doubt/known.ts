/** What samples lose and hold, and how well they are known between the speeds, in words. */
import type { UncertaintyStudy } from '../../decision/uncertainty.ts';
import { percent, rpm, share } from '../../report/figures.ts';
import { counted, fixed } from '../../report/numbers.ts';
import { MOST_MOVED } from '../contest.ts';

/** Losses that are not told of [%]. */
const HARDLY = 0.5;

/** The worst loss in the band, where there is one. */
export function lossWords({ bandLossPercent: { p50, p95 } }: UncertaintyStudy): string[] {
  if (!(p95.value > HARDLY)) return [];
  return [
    `Inside the band it loses too: at worst ${percent(p50.value)} in the middle of the samples, ` +
      `${percent(p95.value)} or less in nineteen of twenty.`,
  ];
}

export function floorWords({ floors, samples }: UncertaintyStudy): string[] {
  return floors.map(({ floor, held }) => {
    const times = Math.round(held.value * samples);
    return `The floor at ${rpm(floor.speed)} holds in ${times} of ${counted(samples, 'sample')} (${share(held.low, 0)} at least).`;
  });
}

/** At how many speeds the samples are known, and what that leaves open; nothing where none lies between. */
export function knownWords({ moved, speeds, floors, samples }: UncertaintyStudy): string[] {
  if (!moved) return [];
  const still = moved.gain < MOST_MOVED.mean && moved.loss < MOST_MOVED.loss && moved.floors === 0;
  const none = floors.length === 0;
  const verdicts = none
    ? ''
    : `, and the verdict of a floor in ${moved.floors} of ${counted(samples, 'sample')}`;
  return [
    `${still ? 'Resolved' : 'Not wholly resolved'}: samples are computed at ${speeds.length} speeds, in the band ` +
      `${none ? '' : 'and about the floors '}at those of the answer itself. The last halving moved the gain of ` +
      `nineteen samples in twenty by ${fixed(moved.gain, 2)} points or less, their worst loss in the band by ` +
      `${fixed(moved.loss, 2)} or less${verdicts}.`,
  ];
}
