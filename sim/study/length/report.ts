/** The report of a sweep of lengths: the decision in words, then the pictures and tables behind it. */
import { change, lengthIn, percent } from '../../report/figures.ts';
import { BAND_SPREAD } from '../../report/quantities.ts';
import type { Report } from '../../report/report.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import { fillingCautions } from '../cautions.ts';
import type { Doubt } from '../doubt/tables.ts';
import { doubtSections } from '../doubt/tell.ts';
import { knownNotes } from '../resolution.ts';
import { allOutcomes } from '../study.ts';
import { TRADE_OFF_NOTE } from '../tradeOffs.ts';
import type { LengthStudy } from './compute.ts';
import { studyPlot, worthPlot } from './figure.ts';
import { lengthsTable, mapTable, studyCurves } from './tables.ts';
import { answerOf, decisionWords } from './tell.ts';

const SPREAD_NOTE = 'Spread: fullest less emptiest cylinder over the mean, at worst in the band.';

export function sweepReport(study: LengthStudy, scenario: Scenario, doubt?: Doubt): Report {
  const words = decisionWords(study);
  const lengths = lengthsTable(study);
  const spreads = lengths.columns.some(({ key }) => key === BAND_SPREAD.key);
  return {
    about: 'Trumpet length',
    scenario,
    answer: answerOf(words),
    flags: [
      ...words.cautions,
      ...fillingCautions(scenario.engine, allOutcomes(studyCurves(study))),
    ],
    sections: [
      { sentences: [LENGTH_MEANING_SHORT], only: 'text' },
      { plots: [studyPlot(study), worthPlot(study)] },
      ...(doubt ? doubtSections(doubt, study.target) : []),
      {
        tables: [lengths],
        notes: [
          TRADE_OFF_NOTE,
          ...knownNotes(study.resolution),
          ...(spreads ? [SPREAD_NOTE] : []),
          paretoWords(study),
        ],
      },
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
function paretoWords({ pareto, unit, resolution }: LengthStudy): string {
  const words = pareto.map(
    ({ length, gainPercent, worstLossPercent }) =>
      `${lengthIn(length, unit)} (${change(gainPercent)}, at worst ${percent(worstLossPercent)} less outside)`,
  );
  const others = resolution ? 'No other length whose price is resolved' : 'No other length';
  return `${others} gains as much at a lower price as these: ${words.join('; ')}.`;
}
