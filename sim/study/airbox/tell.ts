/** What a box over the trumpets does, in sentences. */
import { percentOver } from '../../decision/tradeOff.ts';
import { lengthIn, percent, rpm, sizeIn, UNFELT } from '../../report/figures.ts';
import * as q from '../../report/quantities.ts';
import type { Report } from '../../report/report.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import { allPoints } from '../../sweep/sweep.ts';
import { banksWords } from '../banks.ts';
import { boostWords } from '../boosted.ts';
import { pointCautions } from '../cautions.ts';
import { together } from '../contest.ts';
import { widestSpread } from '../fed.ts';
import { knownNotes, resolutionCautions, resolutionWords } from '../resolution.ts';
import { bandWords, lossWords } from '../verdict.ts';
import { type AirboxStudy, airboxOutcomes } from './compute.ts';
import { boxedLengthsPlot, boxedPlot } from './figure.ts';
import {
  airboxTable,
  boxedLengthsTable,
  boxTable,
  cylindersTable,
  SPREAD,
  SWING,
} from './tables.ts';

export function airboxSentences(study: AirboxStudy): string[] {
  return [
    verdictWords(study),
    ...banksWords('box', study.airbox, study.open.engine, study.lengthUnit),
    ...airboxBoostWords(study),
    lengthWords(study),
    ...knownWords(study),
    ...spreadWords(study),
    ...pressureWords(study),
  ];
}

function boxWords({ airbox, lengthUnit }: AirboxStudy): string {
  const { volume, snorkelLength, snorkelDiameter, banks } = airbox;
  const size = (length: number) => sizeIn(length, lengthUnit);
  const holds = q.told(q.cubicCentimetres('', ''), banks ? volume / 2 : volume);
  return `a box of ${holds} on a snorkel of ${size(snorkelDiameter)} by ${size(snorkelLength)}${banks ? ' a bank,' : ''}`;
}

function verdictWords(study: AirboxStudy): string {
  const { weighed, target, open, lengthUnit } = study;
  const { gainPercent, worstLossPercent, worstLossSpeed, feltLossPercent } = weighed;
  const trumpets = `over trumpets of ${lengthIn(open.engine.intake.trumpet.length, lengthUnit)}`;
  if (!Number.isFinite(gainPercent))
    return `The box ${trumpets} cannot be weighed: a point failed.`;
  const size = percent(Math.abs(gainPercent));
  const verdict =
    gainPercent > UNFELT
      ? `gives ${size} more`
      : gainPercent < -UNFELT
        ? `takes ${size}`
        : `changes nothing that is felt (${size})`;
  const worst =
    worstLossSpeed === undefined
      ? ''
      : ` Outside the band it has at worst ${lossWords(worstLossPercent, worstLossSpeed, feltLossPercent)}.`;
  return `${boxWords(study).replace(/^a/, 'A')} ${trumpets} ${verdict} ${bandWords(target)} against the same in the open.${worst}`;
}

function airboxBoostWords({ open, boxed, free }: AirboxStudy): string[] {
  if (!free) return [];
  const pair = [boxed.outcomes, open.outcomes] as const;
  return [boostWords('what the box changes', pair, [free.boxed, free.open])];
}

function lengthWords({ best, lengths, lengthUnit }: AirboxStudy): string {
  if (!best)
    return 'The best length cannot be told: points failed in the band, or the file tries none.';
  const told = (length: number) => lengthIn(length, lengthUnit);
  const of = (length: number) => lengths.find((one) => one.length === length)!;
  if (best.open === best.boxed) {
    return `Of the ${lengths.length} lengths of the file the best in the band is ${told(best.open)}, in the open and in the box.`;
  }
  const { boxed } = of(best.boxed);
  const lost = -percentOver(of(best.open).boxed, boxed);
  return (
    `Of the ${lengths.length} lengths of the file the best in the band is ${told(best.open)} in the open and ` +
    `${told(best.boxed)} in the box; to keep the first in the box would take ${percent(lost)}.`
  );
}

/** All that was resolved, as one. */
const allOf = ({ resolutions, ...study }: AirboxStudy) =>
  resolutions ? { ...study, resolution: together(Object.values(resolutions)) } : study;

/** How well it is known between the speeds; what is not known is a caution. */
function knownWords(study: AirboxStudy): string[] {
  const words = resolutionWords(allOf(study), 'two ways and the lengths');
  return words === '' ? [] : [words];
}

/** Where cylinders differ most along the box. */
function spreadWords({ boxed, airbox }: AirboxStudy): string[] {
  if (!airbox.row) return [];
  const worst = widestSpread(boxed);
  return [
    `Along the box cylinders differ by up to ${q.told(SPREAD, worst.spread)} of filling, at ${rpm(worst.speed)}; each wants its own fuel by so much.`,
  ];
}

function pressureWords({ inBox, speeds }: AirboxStudy): string[] {
  const known = inBox.flatMap((one, i) => (one ? [{ ...one, speed: speeds[i]! }] : []));
  if (known.length === 0) return [];
  const worst = known.reduce((a, b) => (b.swing > a.swing ? b : a));
  const lowest = known.reduce((a, b) => (b.mean < a.mean ? b : a));
  const kPa = (value: number) => q.told(SWING, value);
  return [
    `Where the snorkel opens the pressure swings by ${kPa(worst.swing)} at most at the speeds of the file, at ${rpm(worst.speed)}; its mean is lowest at ${rpm(lowest.speed)} with ${kPa(lowest.mean)}.`,
  ];
}

/** Said wherever a box is spoken of. */
export const BOX_CAUTIONS: readonly string[] = [
  'A box must bear the pressure of a backfire: give it a flame trap or a panel that lets go, and keep fuel lines out of its way.',
  'Nothing loose inside: what falls in goes through a plate and keeps it open.',
];

const LIMITS =
  'Mouths stand along the box in a row, or one a bank side by side, and breathe its air as still air; waves across it, heat of its walls and what the filter holds back when dirty are left out. ' +
  'The first table has the speeds of the file alone.';

const BOOSTED =
  'The feed is boosted: in the open means a box without end at the pressure of the feed, and the snorkel draws from there. How a compressor answers is not in it.';

/** Said where the file has no section of its own. */
const ASSUMED =
  'The file has no section airbox: box, snorkel and filter are as is usual for an engine of this size and speed, not measured.';

export function airboxReport(study: AirboxStudy, scenario: Scenario): Report {
  const { open, boxed, tried, airbox } = study;
  const cylinders = cylindersTable(study);
  return {
    about: 'A box over the trumpets',
    scenario,
    answer: airboxSentences(study),
    flags: [
      ...pointCautions([
        { name: 'in the open', outcomes: allPoints(open) },
        { name: 'in the box', outcomes: allPoints(boxed) },
        { name: 'lengths in the band', outcomes: tried },
        { name: 'on ambient air', outcomes: study.free ? Object.values(study.free).flat() : [] },
      ]),
      ...resolutionCautions(allOf(study), String),
      ...(study.free ? [BOOSTED] : []),
      ...(airbox.given ? [] : [ASSUMED]),
    ],
    sections: [
      { plots: [boxedPlot(study), boxedLengthsPlot(study)] },
      {
        tables: [airboxTable(study), boxedLengthsTable(study), boxTable(study)],
        notes: [LIMITS, ...knownNotes(study.resolutions?.open)],
      },
      ...(airbox.row ? [{ tables: [cylinders], only: 'html' as const }] : []),
      { heading: 'Mind', items: BOX_CAUTIONS },
    ],
    length: open.engine.intake.trumpet.length,
    outcomes: airboxOutcomes(study),
  };
}
