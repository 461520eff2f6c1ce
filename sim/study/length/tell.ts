/** The decision in words: plain sentences from a study, the same wherever they stand. */
import { NEXT_TO_NOTHING } from '../../decision/choice.ts';
import { flatTop } from '../../decision/flatTop.ts';
import { justifiedStep } from '../../decision/lengthUnit.ts';
import type { TradeOff } from '../../decision/tradeOff.ts';
import { change, lengthIn, percent, share, UNFELT } from '../../report/figures.ts';
import { bandMean, DIFFERENCE, lengthQuantity, shown, told } from '../../report/quantities.ts';
import { allPoints } from '../../sweep/sweep.ts';
import { pointCautions } from '../cautions.ts';
import { spreadCautions } from '../cylinders.ts';
import { resolutionCautions, resolutionWords } from '../resolution.ts';
import { bandWords, floorWords, isWeighted, meanWords } from '../verdict.ts';
import type { LengthStudy } from './compute.ts';
import { mixedWords, shelfWords } from './offerWords.ts';
import { edge, flywheelWords, inside, price } from './priceWords.ts';
import { studyCurves } from './tables.ts';

export interface DecisionWords {
  /** What to cut. */
  answer: string;
  /** What it gains in the band. */
  gain: string;
  /** The same at the flywheel; empty where a point failed. */
  flywheel: string;
  /** What it costs outside the band. */
  price: string;
  /** What it costs in the band, and where it wins and loses. */
  inside: string;
  /** What the answer would be with the band moved a little. */
  edge: string;
  /** How well the curves are known between the speeds; empty where they are not. */
  resolution: string;
  /** How the length was found, and how exact it need be. */
  found: string;
  /** What to buy and where to saw; empty where no shelf is given. */
  shelf: string;
  /** Two lengths spread over the cylinders, where they are flatter; empty otherwise. */
  mixed: string;
  /** What a pressurised box changes; empty where there is none. */
  feed: string;
  /** What the fuel of the file's injectors changes. */
  fuel: string;
  /** What stands against taking it as it is; empty where nothing does. */
  cautions: string[];
}

/** A study as sentences. */
export function decisionWords(study: LengthStudy): DecisionWords {
  const points = pointCautions(
    studyCurves(study).map((curve) => ({
      name: lengthIn(curve.length, study.unit),
      outcomes: allPoints(curve),
    })),
  );
  if (!Number.isFinite(study.decision.bandMean)) return { ...noAnswer(study), cautions: points };
  const cautions = [
    ...points,
    ...resolutionCautions(study, (length) => lengthIn(length, study.unit)),
    ...spreadCautions(allPoints(study.recommended)),
  ];
  return {
    answer: answer(study),
    gain: gain(study),
    flywheel: flywheelWords(study),
    price: price(study),
    inside: inside(study),
    edge: edge(study),
    resolution: resolutionWords(study, 'lengths'),
    found: found(study),
    shelf: shelfWords(study),
    mixed: mixedWords(study),
    feed: feedWords(study),
    fuel: fuelWords(study),
    cautions,
  };
}

/** The same as one list of sentences, in the order of reading. */
export function decisionSentences(study: LengthStudy): string[] {
  const words = decisionWords(study);
  return [...answerOf(words), ...words.cautions].filter((sentence) => sentence !== '');
}

/** Everything but cautions, in the order of reading. */
export function answerOf(words: DecisionWords): string[] {
  const {
    answer,
    gain,
    flywheel,
    price,
    inside,
    found,
    edge,
    resolution,
    shelf,
    mixed,
    feed,
    fuel,
  } = words;
  return [answer, gain, flywheel, price, inside, found, edge, resolution, shelf, mixed, feed, fuel];
}

function answer({ recommended, baseline, unit }: LengthStudy): string {
  const length = lengthIn(recommended.length, unit);
  if (recommended.length === baseline.length) {
    return `Keep the trumpets fitted now, ${length} long.`;
  }
  const now = lengthIn(baseline.length, unit);
  const turn = recommended.length > baseline.length ? 'longer' : 'shorter';
  return `Make the trumpets ${turn}: ${length}, in place of the ${now} fitted now.`;
}

function gain(study: LengthStudy): string {
  const { decision, target, recommended, baseline, weighed } = study;
  const band = `In the band ${bandWords(target)}${isWeighted(target) ? ', weighted as asked,' : ''}`;
  const mean = meanWords(decision.bandMean, target);
  if (recommended.length === baseline.length) return `${band} the trumpets give a ${mean}.`;
  const before = weighed.find(({ length }) => length === baseline.length)?.bandMean ?? Number.NaN;
  if (!Number.isFinite(before))
    return `${band} the trumpets give a ${mean}; the old ones failed there.`;
  const { gainPercent } = decision;
  const unfelt =
    Math.abs(gainPercent) < UNFELT
      ? ' That is less than a dynamometer shows from one run to the next.'
      : '';
  const turn = gainPercent < 0 ? 'less' : 'more';
  return (
    `${band} the trumpets give ${percent(Math.abs(gainPercent))} ${turn}: ${mean} instead of ` +
    `${shown(bandMean(target.score), before)}.${unfelt}`
  );
}

function found(study: LengthStudy): string {
  return [howFound(study), howFlat(study), ...study.decision.floors.map(floorWords)]
    .filter((sentence) => sentence !== '')
    .join(' ');
}

function howFound({ recommended, tried, weighed, unit }: LengthStudy): string {
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
        : `The trend of the lengths tried peaks between ${lengthIn(lengths[at - 1]!, unit)} and ` +
            `${lengthIn(lengths[at + 1]!, unit)}; a run at this very length confirms it.`;
  }
}

/** A step that an end misses by less lies inside [-]. */
const ROUND_OFF = 1e-5;

/**
 * Lengths [m] that give next to nothing less in the band than the best, whole millimetres or twentieths of
 * an inch; known only where neither a floor nor the end of the range narrows the choice.
 */
export function goodEnough(
  study: LengthStudy,
): { from: number; to: number; share: number } | undefined {
  const { weighed, target, recommended, unit = 'mm' } = study;
  if ((target.floors ?? []).length > 0 || recommended.reason === 'at-the-end') return undefined;
  const lengths = weighed.map((row) => row.length);
  const means = weighed.map((row) => row.bandMean);
  const { from, to } = flatTop(lengths, means, NEXT_TO_NOTHING);
  const step = justifiedStep(0, unit);
  const ends = [Math.ceil(from / step - ROUND_OFF), Math.floor(to / step + ROUND_OFF)];
  if (ends[0]! >= ends[1]! || recommended.length < from || recommended.length > to)
    return undefined;
  return { from: ends[0]! * step, to: ends[1]! * step, share: NEXT_TO_NOTHING };
}

function howFlat(study: LengthStudy): string {
  const range = goodEnough(study);
  if (!range) return '';
  const { unit = 'mm' } = study;
  const first = shown(lengthQuantity(unit), range.from);
  return `Any length from ${first} to ${lengthIn(range.to, unit)} gives within ${share(range.share)} of the same in the band.`;
}

function noAnswer({ target }: LengthStudy): Omit<DecisionWords, 'cautions'> {
  return {
    answer: `No answer: no length could be computed at every speed ${bandWords(target)}.`,
    gain: '',
    flywheel: '',
    price: '',
    inside: '',
    edge: '',
    resolution: '',
    found: '',
    shelf: '',
    mixed: '',
    feed: '',
    fuel: '',
  };
}

/** What the pressurised box changes; empty where there is none. */
function feedWords({ free, decision }: LengthStudy): string {
  if (!free || !Number.isFinite(free.gainPercent)) return '';
  const { gainPercent } = decision;
  const turn = Math.abs(gainPercent) < Math.abs(free.gainPercent) ? 'less' : 'no less';
  const before = ({ bandMean, gainPercent: gain }: TradeOff) => bandMean / (1 + gain / 100);
  const box = told(DIFFERENCE, before(decision) / before(free) - 1);
  return (
    `The box itself gives ${box} over ambient air with the trumpets fitted now. Under its ` +
    `pressure the length matters ${turn}, of what is there: the same change breathing ambient air ` +
    `gives ${change(free.gainPercent)} in the band, here it gives ${change(gainPercent)}.`
  );
}

/** What the fuel of the injectors changes; empty where the file has none. */
function fuelWords({ fuelled }: LengthStudy): string {
  if (!fuelled || !Number.isFinite(fuelled.wet.gainPercent)) return '';
  const { wet, dry, sound } = fuelled;
  const doubt = sound ? '' : ' Some of its points have not settled.';
  return (
    "All this is computed without fuel in the intake. With the file's injectors the change gives " +
    `${change(wet.gainPercent)} in the band at the speeds of the file, without them ` +
    `${change(dry.gainPercent)} there.${doubt}`
  );
}
