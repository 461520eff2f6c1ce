/** Sentences on what a curve is worth, whatever was varied. */
import { FELT } from '../decision/felt.ts';
import type { FloorMargin } from '../decision/floor.ts';
import type { Stretch } from '../decision/stretches.ts';
import { bandsOf, type Target } from '../decision/target.ts';
import { percent, rpm, rpmRange } from '../report/figures.ts';
import { counted } from '../report/numbers.ts';
import { bandMean, scored, told } from '../report/quantities.ts';

/** `from 5400 to 7400 rpm`, and so on over all bands. */
export function bandWords(target: Target): string {
  return `from ${bandsOf(target).map(rpmRange).join(' and ')}`;
}

/** A score in words and figures: `mean volumetric efficiency 0.947`. */
export function meanWords(mean: number, { score }: Target): string {
  const figure = told(bandMean(score), mean);
  return `mean ${scored(score).name} ${figure}`;
}

export function floorWords({ floor, marginPercent, feltMarginPercent, near }: FloorMargin): string {
  const margin = percent(Math.abs(marginPercent));
  const felt = ` (${marginWords(feltMarginPercent)} over +-${FELT} rpm)`;
  const beside =
    marginPercent >= 0 && near.marginPercent < 0
      ? ` It would be missed by ${percent(-near.marginPercent)} at ${rpm(near.speed)}, near by.`
      : '';
  return marginPercent >= 0
    ? `The floor at ${rpm(floor.speed)} holds with ${margin} to spare${felt}.${beside}`
    : `The floor at ${rpm(floor.speed)} is missed by ${margin}${felt}.`;
}

const marginWords = (margin: number) =>
  margin >= 0 ? `${percent(margin)} to spare` : `missed by ${percent(-margin)}`;

/** `13.9 % less, at 3140 rpm (13.2 % over +-50 rpm)`. */
export function lossWords(loss: number, speed: number, felt: number): string {
  const mean = Number.isFinite(felt) ? ` (${percent(Math.max(felt, 0))} over +-${FELT} rpm)` : '';
  return `${percent(loss)} less, at ${rpm(Math.round(speed))}${mean}`;
}

/** `loses from 3000 to 3360 rpm`; empty where it does so nowhere. */
export function stretchWords(stretches: readonly Stretch[], verb: 'wins' | 'loses'): string {
  const sign = verb === 'wins' ? 1 : -1;
  const ours = stretches.filter(({ changePercent }) => Math.sign(changePercent) === sign);
  if (ours.length === 0) return '';
  const more = ours.length - MOST_STRETCHES;
  const named = ours
    .slice(0, MOST_STRETCHES)
    .map(({ from, to }) => rpmRange({ from: inTens(from), to: inTens(to) }));
  const rest = more > 0 ? ` and ${counted(more, 'more time')}` : '';
  return `${verb} from ${named.join(', ')}${rest}`;
}

/** Stretches named one by one. */
const MOST_STRETCHES = 4;
/** Speeds between those computed in round figures [rpm]. */
export const inTens = (speed: number) => 10 * Math.round(speed / 10);

export function isWeighted(target: Target): boolean {
  return bandsOf(target).some((band) => band.weights || (band.weight ?? 1) !== 1);
}
