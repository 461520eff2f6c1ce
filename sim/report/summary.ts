/**
 * The decision in words: plain sentences from a study, the same on the command line, in the report
 * and on the page.
 */
import { flatTop } from '../decision/flatTop.ts';
import type { FloorMargin } from '../decision/floor.ts';
import type { LengthCurve, LengthStudy } from '../decision/lengthStudy.ts';
import { bandsOf, inTarget, type Target, targetMean } from '../decision/target.ts';
import { efficiencies } from '../decision/tradeOff.ts';
import { isFailure } from '../sweep/runner.ts';
import {
  counted,
  efficiency,
  millimetres,
  percent,
  rpm,
  rpmRange,
  scoreFigure,
  UNFELT,
} from './figures.ts';
import { studyCurves } from './lengthTable.ts';
import { feedWords, mixedWords, shelfWords } from './questionWords.ts';

export interface DecisionWords {
  /** What to cut. */
  answer: string;
  /** What it gains in the band. */
  gain: string;
  /** What it costs outside the band. */
  price: string;
  /** How the length was found, and how exact it need be. */
  found: string;
  /** What to buy and where to saw; empty where no shelf is given. */
  shelf: string;
  /** Two lengths spread over the cylinders, where they are flatter; empty otherwise. */
  mixed: string;
  /** What a pressurised box changes; empty where there is none. */
  feed: string;
  /** What stands against taking it as it is; empty where nothing does. */
  cautions: string[];
}

/** Share of the best mean that counts as next to nothing [-]. */
const NEXT_TO_NOTHING = 0.005;

/** A study as sentences. */
export function decisionWords(study: LengthStudy): DecisionWords {
  const cautions = pointCautions(studyCurves(study));
  if (!Number.isFinite(study.decision.bandMean)) return { ...noAnswer(study), cautions };
  return {
    answer: answer(study),
    gain: gain(study),
    price: price(study),
    found: found(study),
    shelf: shelfWords(study),
    mixed: mixedWords(study),
    feed: feedWords(study),
    cautions,
  };
}

/** The same as one list of sentences, in the order of reading. */
export function decisionSentences(study: LengthStudy): string[] {
  const { answer, gain, price, found, shelf, mixed, feed, cautions } = decisionWords(study);
  return [answer, gain, price, found, shelf, mixed, feed, ...cautions].filter(
    (sentence) => sentence !== '',
  );
}

/** One curve as sentences: its mean in the band, its peak, its cautions. */
export function curveSentences(
  curve: LengthCurve,
  speeds: readonly number[],
  target: Target,
): string[] {
  const values = efficiencies(curve.outcomes);
  const mean = targetMean(speeds, values, target);
  const peak = values.reduce(
    (at, y, i) => (y > values[at]! || Number.isNaN(values[at]!) ? i : at),
    0,
  );
  const cautions = pointCautions([curve]);
  if (!Number.isFinite(values[peak]!)) return ['No speed could be computed.', ...cautions];
  const top = `the best speed computed is ${rpm(speeds[peak]!)} with ${efficiency(values[peak]!)}`;
  const head = Number.isFinite(mean)
    ? `With trumpets of ${millimetres(curve.length)} the mean volumetric efficiency ` +
      `${bandWords(target)} is ${efficiency(mean)}; ${top}.`
    : `A speed of the band failed, so it has no mean; ${top}.`;
  return [head, ...cautions];
}

/** `from 5400 to 7400 rpm`, and so on over all bands. */
export function bandWords(target: Target): string {
  return `from ${bandsOf(target).map(rpmRange).join(' and ')}`;
}

/** A score in words and figures: `mean volumetric efficiency 0.947`. */
function meanWords(mean: number, { score }: Target): string {
  const figure = scoreFigure(mean, score);
  return score === 'indicated-torque'
    ? `mean indicated torque ${figure} Nm`
    : `mean volumetric efficiency ${figure}`;
}

function answer({ recommended, baseline }: LengthStudy): string {
  const length = millimetres(recommended.length);
  if (recommended.length === baseline.length) {
    return `Keep the trumpets fitted now, ${length} long.`;
  }
  const now = millimetres(baseline.length);
  return `Cut the trumpets to ${length}, in place of the ${now} fitted now.`;
}

function gain(study: LengthStudy): string {
  const { decision, target, recommended, baseline, weighed } = study;
  const band = `In the band ${bandWords(target)}${isWeighted(target) ? ', weighted as asked,' : ''}`;
  const mean = meanWords(decision.bandMean, target);
  if (recommended.length === baseline.length) return `${band} they give a ${mean}.`;
  const before = weighed.find(({ length }) => length === baseline.length)?.bandMean ?? Number.NaN;
  if (!Number.isFinite(before)) return `${band} they give a ${mean}; the old ones failed there.`;
  const { gainPercent } = decision;
  const unfelt =
    Math.abs(gainPercent) < UNFELT
      ? ' That is less than a dynamometer shows from one run to the next.'
      : '';
  const turn = gainPercent < 0 ? 'less' : 'more';
  return (
    `${band} they give ${percent(Math.abs(gainPercent))} ${turn}: ${mean} instead of ` +
    `${scoreFigure(before, target.score)}.${unfelt}`
  );
}

function price({ decision, speeds, target, recommended, baseline }: LengthStudy): string {
  if (recommended.length === baseline.length) return '';
  if (speeds.every((speed) => inTarget(target, speed))) {
    return 'No speed outside the band was computed, so the price there is not known.';
  }
  const { worstLossPercent, worstLossSpeed } = decision;
  if (!Number.isFinite(worstLossPercent)) {
    return 'The price outside the band is not known, because points there failed.';
  }
  if (worstLossSpeed === undefined) return 'No speed computed outside the band loses by it.';
  return (
    `The price is paid outside the band: at worst ${percent(worstLossPercent)} less, at ` +
    `${rpm(worstLossSpeed)}.`
  );
}

function found(study: LengthStudy): string {
  return [howFound(study), howFlat(study), ...study.decision.floors.map(floorWords)]
    .filter((sentence) => sentence !== '')
    .join(' ');
}

function howFound({ recommended, tried, weighed }: LengthStudy): string {
  const { length, reason } = recommended;
  const lengths = weighed.map((row) => row.length);
  const at = lengths.indexOf(length);
  switch (reason) {
    case 'keep-baseline':
      return 'No other length computed is better there.';
    case 'held-by-floor':
      return 'Another length would give more in the band but breaks a floor of the target.';
    case 'nearest-miss':
      return 'No length computed meets every floor of the target: this one misses by least.';
    case 'at-the-end':
      return (
        `This is the ${at === 0 ? 'shortest' : 'longest'} length computed, so a ` +
        `${at === 0 ? 'shorter' : 'longer'} one may be better still: widen sweep.lengths and ` +
        'run again.'
      );
    case 'best-tried':
      return (
        'This is the best of the lengths tried; a run between them, where their trend pointed, ' +
        'was no better.'
      );
    case 'confirmed-between':
      return tried.some((curve) => curve.length === length)
        ? 'This is one of the lengths tried, and their trend peaks there.'
        : `The trend of the lengths tried peaks between ${millimetres(lengths[at - 1]!)} and ` +
            `${millimetres(lengths[at + 1]!)}; a run at this very length confirms it.`;
  }
}

/** Said only where neither a floor nor the end of the range narrows the choice. */
function howFlat({ weighed, target, recommended }: LengthStudy): string {
  if ((target.floors ?? []).length > 0 || recommended.reason === 'at-the-end') return '';
  const lengths = weighed.map((row) => row.length);
  const means = weighed.map((row) => row.bandMean);
  const { from, to } = flatTop(lengths, means, NEXT_TO_NOTHING);
  const [low, high] = [Math.ceil(from * 1e3 - 1e-6), Math.floor(to * 1e3 + 1e-6)];
  const share = percent(100 * NEXT_TO_NOTHING);
  if (low >= high || recommended.length < from || recommended.length > to) return '';
  return `Any length from ${low} to ${high} mm gives within ${share} of the same in the band.`;
}

function floorWords({ floor, marginPercent }: FloorMargin): string {
  const margin = percent(Math.abs(marginPercent));
  return marginPercent >= 0
    ? `The floor at ${rpm(floor.speed)} holds with ${margin} to spare.`
    : `The floor at ${rpm(floor.speed)} is missed by ${margin}.`;
}

function isWeighted(target: Target): boolean {
  return bandsOf(target).some((band) => band.weights || (band.weight ?? 1) !== 1);
}

function noAnswer({ target }: LengthStudy): Omit<DecisionWords, 'cautions'> {
  return {
    answer: `No answer: no length could be computed at every speed ${bandWords(target)}.`,
    gain: '',
    price: '',
    found: '',
    shelf: '',
    mixed: '',
    feed: '',
  };
}

/** What failed and what did not settle. */
function pointCautions(curves: readonly LengthCurve[]): string[] {
  const points = curves.flatMap(({ length, outcomes }) =>
    outcomes.map((outcome) => ({ length, outcome })),
  );
  const place = ({ length, outcome }: (typeof points)[number]) =>
    `${millimetres(length)} at ${rpm(outcome.speed)}`;
  const failed = points.filter(({ outcome }) => isFailure(outcome));
  const restless = points.filter(({ outcome }) => !isFailure(outcome) && !outcome.settled);
  const first = failed[0]?.outcome;
  return [
    ...(first && isFailure(first)
      ? [
          `${counted(failed.length, 'point')} of ${points.length} failed and count for nothing: ` +
            `${listed(failed.map(place))}. The first: ${first.failure}.`,
        ]
      : []),
    ...(restless.length > 0
      ? [
          `${counted(restless.length, 'point')} of ${points.length} did not settle, so the figures ` +
            `there are no answer yet: ${listed(restless.map(place))}. Raise ` +
            'numerics.maximumCycles to see whether they do.',
        ]
      : []),
  ];
}

/** The first few of a list, and how many more there are. */
function listed(items: readonly string[], most = 4): string {
  const more = items.length - most;
  return more > 0 ? `${items.slice(0, most).join(', ')} and ${more} more` : items.join(', ');
}
