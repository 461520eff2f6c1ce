/** What the answer would be with the bands moved a little: where they end is seldom known better. */
import { bestOf } from '../../decision/choice.ts';
import { fits } from '../../decision/shelf.ts';
import { bandsOf, movedTarget } from '../../decision/target.ts';
import { percentOver } from '../../decision/tradeOff.ts';
import type { Curves } from '../curves.ts';
import { BAND_MOVE } from '../refinement.ts';
import type { LengthQuestion } from './compute.ts';

export interface MovedBand {
  /** By how much the bands are moved up [rpm]. */
  by: number;
  /** The best length there [m]. */
  length: number;
  /** Its mean there over that of the length recommended [%]. */
  gainPercent: number;
}

/** The best with all bands a little lower and a little higher, as far as the speeds reach. */
export function movedBands(
  question: LengthQuestion,
  curves: Curves,
  recommended: number,
): MovedBand[] {
  const { speeds, fit } = question;
  return [-BAND_MOVE, BAND_MOVE].flatMap((by) => {
    const target = movedTarget(question.target, by);
    const ends = bandsOf(target).flatMap(({ from, to }) => [from, to]);
    if (Math.min(...ends) < speeds[0]! || Math.max(...ends) > speeds.at(-1)!) return [];
    const choices = curves.weighed(target).filter(({ length }) => fits(length, fit));
    const best = choices[bestOf(choices)]!;
    const ours = choices.find(({ length }) => length === recommended);
    if (!ours || !Number.isFinite(best.bandMean)) return [];
    return [{ by, length: best.length, gainPercent: percentOver(best.bandMean, ours.bandMean) }];
  });
}
