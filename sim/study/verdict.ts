/** Sentences on what a curve is worth, whatever was varied. */
import type { FloorMargin } from '../decision/floor.ts';
import { bandsOf, type Target } from '../decision/target.ts';
import { percent, rpm, rpmRange } from '../report/figures.ts';
import { bandMean, scored, told } from '../report/quantities.ts';

/** Share of the best mean that counts as next to nothing [-]. */
export const NEXT_TO_NOTHING = 0.005;

/** `from 5400 to 7400 rpm`, and so on over all bands. */
export function bandWords(target: Target): string {
  return `from ${bandsOf(target).map(rpmRange).join(' and ')}`;
}

/** A score in words and figures: `mean volumetric efficiency 0.947`. */
export function meanWords(mean: number, { score }: Target): string {
  const figure = told(bandMean(score), mean);
  return `mean ${scored(score).name} ${figure}`;
}

export function floorWords({ floor, marginPercent }: FloorMargin): string {
  const margin = percent(Math.abs(marginPercent));
  return marginPercent >= 0
    ? `The floor at ${rpm(floor.speed)} holds with ${margin} to spare.`
    : `The floor at ${rpm(floor.speed)} is missed by ${margin}.`;
}

export function isWeighted(target: Target): boolean {
  return bandsOf(target).some((band) => band.weights || (band.weight ?? 1) !== 1);
}
