/** The shelf, two lengths on one engine, and the doubt, in words. */
import type { LengthStudy } from '../decision/lengthStudy.ts';
import type { TradeOff } from '../decision/tradeOff.ts';
import type { UncertaintyStudy } from '../decision/uncertainty.ts';
import { brief, change, counted, millimetres, percent, scoreFigure, UNFELT } from './figures.ts';

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
  const least = (value: number) => scoreFigure(value, target.score);
  return (
    `Flatter still: ${millimetres(mixed.short)} on ${counted(mixed.shortCount, 'cylinder')} and ` +
    `${millimetres(mixed.long)} on ${mixed.longCount}. The least in the band is then ` +
    `${least(mixed.least)} instead of ${least(decision.least)}, the mean ` +
    `${least(mixed.bandMean)} instead of ${least(decision.bandMean)}; the cylinders differ by up to ` +
    `${percent(mixed.unlikePercent)} and each kind wants its own fuelling.`
  );
}

/** What the pressurised box changes; empty where there is none. */
export function feedWords({ free, decision }: LengthStudy): string {
  if (!free || !Number.isFinite(free.gainPercent)) return '';
  const { gainPercent } = decision;
  const turn = Math.abs(gainPercent) < Math.abs(free.gainPercent) ? 'less' : 'no less';
  const before = ({ bandMean, gainPercent: gain }: TradeOff) => bandMean / (1 + gain / 100);
  const box = 100 * (before(decision) / before(free) - 1);
  return (
    `The box itself gives ${change(box)} over ambient air with the trumpets fitted now. Under its ` +
    `pressure the length matters ${turn}, of what is there: the same change breathing ambient air ` +
    `gives ${change(free.gainPercent)} in the band, here it gives ${change(gainPercent)}.`
  );
}

/** Inputs named in the sentence on what to measure next. */
const NAMED = 3;

/** How sure the answer is, and what to measure next. */
export function uncertaintySentences(study: UncertaintyStudy): string[] {
  const { gainPercent, better, recommended, baseline, effects, explained, failed } = study;
  if (recommended.length === baseline.length) {
    return ['The trumpets fitted now are the answer, so there is no gain to be in doubt about.'];
  }
  const chance = `${percent(100 * better.value, 0)} (${percent(100 * better.low, 0)} at least)`;
  const first = effects.slice(0, NAMED).filter(({ share }) => share > 0.01);
  const named = first.map(({ input, share }) => `${input} (${percent(100 * share, 0)})`);
  return [
    `With every input anywhere within its spread, ${millimetres(recommended.length)} beats ` +
      `${millimetres(baseline.length)} in the band in ${chance} of ${counted(study.samples, 'sample')}; ` +
      `the gain is ${change(gainPercent.mean.value)} in the mean, from ` +
      `${change(gainPercent.p5.value)} to ${change(gainPercent.p95.value)} in nine of ten.`,
    ...(named.length > 0
      ? [`Measure next what the gain hangs on most: ${named.join(', ')} of its variance.`]
      : []),
    ...(explained < 0.8
      ? [
          `The ranking explains only ${percent(100 * explained, 0)} of the variance: take it as a hint.`,
        ]
      : []),
    ...(failed > 0 ? [`${counted(failed, 'sample')} failed and are left out.`] : []),
  ];
}
