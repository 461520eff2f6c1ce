/** What to buy, and two lengths spread over the cylinders, in words. */
import { lengthIn, percent, UNFELT } from '../../report/figures.ts';
import { brief, counted } from '../../report/numbers.ts';
import { bandMean, shown } from '../../report/quantities.ts';
import type { LengthStudy } from './compute.ts';

/** A loss that is told as 0.00 % [%]. */
const ALIKE = 0.005;

/** What to buy and where to saw; empty where no shelf is given. */
export function shelfWords({ shelf, fit, decision, unit }: LengthStudy): string {
  if (!fit || fit.shelf.length === 0 || !Number.isFinite(decision.bandMean)) return '';
  if (!shelf) return 'Nothing on the shelf can be fitted.';
  const { buy, cutTo, lossPercent, missPercent, good } = shelf;
  if (cutTo !== undefined) {
    const miss = `a cut that is ${lengthIn(fit.tolerance, unit)} out costs ${percent(missPercent, 2)} at worst`;
    return `Buy ${lengthIn(buy, unit)}, cut to ${lengthIn(cutTo, unit)}; ${miss}.`;
  }
  const loss = `${percent(Math.max(0, lossPercent), 2)} less in the band`;
  const than = lossPercent < ALIKE ? 'as good in the band as' : `${loss} than`;
  if (good) return `Buy ${lengthIn(buy, unit)} and fit it as it is: ${than} the length above.`;
  const limit = `${brief(fit.withinPercent, 3)} %`;
  return `Nothing on the shelf is within ${limit}: the nearest, ${lengthIn(buy, unit)}, gives ${loss}.`;
}

/** Two lengths spread over the cylinders, where they are clearly flatter than the one recommended. */
export function mixedWords({ mixed, decision, target, unit }: LengthStudy): string {
  if (!mixed || !(mixed.least > (1 + UNFELT / 100) * decision.least)) return '';
  const least = (value: number) => shown(bandMean(target.score), value);
  return (
    `Flatter still: ${lengthIn(mixed.short, unit)} on ${counted(mixed.shortCount, 'cylinder')} and ` +
    `${lengthIn(mixed.long, unit)} on ${mixed.longCount}. The least in the band is then ` +
    `${least(mixed.least)} instead of ${least(decision.least)}, the mean ` +
    `${least(mixed.bandMean)} instead of ${least(decision.bandMean)}; the cylinders differ by up to ` +
    `${percent(mixed.unlikePercent)} and each kind wants its own fuelling.`
  );
}
