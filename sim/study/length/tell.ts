/** The decision in words: plain sentences from a study, the same wherever they stand. */
import { CUT } from '../../decision/choice.ts';
import { flatTop } from '../../decision/flatTop.ts';
import { inTarget } from '../../decision/target.ts';
import type { TradeOff } from '../../decision/tradeOff.ts';
import { change, millimetres, percent, rpm, share, UNFELT } from '../../report/figures.ts';
import { brief, counted } from '../../report/numbers.ts';
import { bandMean, DIFFERENCE, shown, told } from '../../report/quantities.ts';
import type { Report } from '../../report/report.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import { fillingCautions, pointCautions } from '../cautions.ts';
import type { Doubt } from '../doubt/tables.ts';
import { doubtSections } from '../doubt/tell.ts';
import { allOutcomes } from '../study.ts';
import { TRADE_OFF_NOTE } from '../tradeOffs.ts';
import { bandWords, floorWords, isWeighted, meanWords, NEXT_TO_NOTHING } from '../verdict.ts';
import type { LengthStudy } from './compute.ts';
import { studyPlot, worthPlot } from './figure.ts';
import { lengthsTable, mapTable, studyCurves } from './tables.ts';

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

/** A study as sentences. */
export function decisionWords(study: LengthStudy): DecisionWords {
  const cautions = pointCautions(
    studyCurves(study).map(({ length, outcomes }) => ({ name: millimetres(length), outcomes })),
  );
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
    `${shown(bandMean(target.score), before)}.${unfelt}`
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

/** A millimetre that an end misses by less lies inside [-]. */
const ROUND_OFF = 1e-5;

/** Said only where neither a floor nor the end of the range narrows the choice. */
function howFlat({ weighed, target, recommended }: LengthStudy): string {
  if ((target.floors ?? []).length > 0 || recommended.reason === 'at-the-end') return '';
  const lengths = weighed.map((row) => row.length);
  const means = weighed.map((row) => row.bandMean);
  const { from, to } = flatTop(lengths, means, NEXT_TO_NOTHING);
  // Whole millimetres that lie inside.
  const [low, high] = [Math.ceil(from / CUT - ROUND_OFF), Math.floor(to / CUT + ROUND_OFF)];
  const near = share(NEXT_TO_NOTHING);
  if (low >= high || recommended.length < from || recommended.length > to) return '';
  return `Any length from ${low} to ${high} mm gives within ${near} of the same in the band.`;
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

/** What to buy and where to saw; empty where no shelf is given. */
export function shelfWords({ shelf, fit, decision }: LengthStudy): string {
  if (!fit || fit.shelf.length === 0 || !Number.isFinite(decision.bandMean)) return '';
  if (!shelf) return 'Nothing on the shelf can be fitted.';
  const { buy, cutTo, lossPercent, missPercent, good } = shelf;
  if (cutTo !== undefined) {
    const miss = `a cut that is ${millimetres(fit.tolerance)} out costs ${percent(missPercent, 2)} at worst`;
    return `Buy ${millimetres(buy)}, cut to ${millimetres(cutTo)}; ${miss}.`;
  }
  const loss = `${percent(Math.max(0, lossPercent), 2)} less in the band`;
  if (good) return `Buy ${millimetres(buy)} and fit it as it is: ${loss} than the length above.`;
  const limit = `${brief(fit.withinPercent, 3)} %`;
  return `Nothing on the shelf is within ${limit}: the nearest, ${millimetres(buy)}, gives ${loss}.`;
}

/** Two lengths spread over the cylinders, where they are clearly flatter than the one recommended. */
export function mixedWords({ mixed, decision, target }: LengthStudy): string {
  if (!mixed || !(mixed.least > (1 + UNFELT / 100) * decision.least)) return '';
  const least = (value: number) => shown(bandMean(target.score), value);
  return (
    `Flatter still: ${millimetres(mixed.short)} on ${counted(mixed.shortCount, 'cylinder')} and ` +
    `${millimetres(mixed.long)} on ${mixed.longCount}. The least in the band is then ` +
    `${least(mixed.least)} instead of ${least(decision.least)}, the mean ` +
    `${least(mixed.bandMean)} instead of ${least(decision.bandMean)}; the cylinders differ by up to ` +
    `${percent(mixed.unlikePercent)} and each kind wants its own fuelling.`
  );
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

export function sweepReport(study: LengthStudy, scenario: Scenario, doubt?: Doubt): Report {
  const { answer, gain, price, found, shelf, mixed, feed, cautions } = decisionWords(study);
  return {
    about: 'Trumpet length',
    scenario,
    answer: [answer, gain, price, found, shelf, mixed, feed],
    flags: [...cautions, ...fillingCautions(scenario.engine, allOutcomes(studyCurves(study)))],
    sections: [
      { sentences: [LENGTH_MEANING_SHORT], only: 'text' },
      { plots: [studyPlot(study), worthPlot(study)] },
      ...(doubt ? doubtSections(doubt, study.target) : []),
      { tables: [lengthsTable(study)], notes: [TRADE_OFF_NOTE, paretoWords(study)] },
      { tables: [mapTable(study)], notes: [MAP_NOTE], only: 'html' },
    ],
    length: study.recommended.length,
    outcomes: allOutcomes(studyCurves(study)),
  };
}

const LENGTH_MEANING_SHORT =
  'Lengths run from the rim plane of the mouth to the throttle body face, bellmouth included.';

const MAP_NOTE =
  'Volumetric efficiency; rows are lengths, columns speeds. The lighter, the fuller. A star marks a point that did not settle.';

/** Lengths that no other beats in gain without a higher price. */
function paretoWords({ pareto }: LengthStudy): string {
  const words = pareto.map(
    ({ length, gainPercent, worstLossPercent }) =>
      `${millimetres(length)} (${change(gainPercent)}, at worst ${percent(worstLossPercent)} less outside)`,
  );
  return `No other length gains as much at a lower price as these: ${words.join('; ')}.`;
}
