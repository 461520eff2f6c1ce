/** Whether individual bodies pay on this engine: one sentence first, then what they give, cost and ask. */
import { lengthIn, percent, rpm, share, UNFELT } from '../../report/figures.ts';
import { brief, counted } from '../../report/numbers.ts';
import * as q from '../../report/quantities.ts';
import type { Report } from '../../report/report.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import { allPoints } from '../../sweep/sweep.ts';
import { BALANCE_CAUTIONS } from '../balance/cautions.ts';
import { plenumName } from '../banks.ts';
import { pointCautions } from '../cautions.ts';
import { effectsTable } from '../check/tables.ts';
import { together } from '../contest.ts';
import { type FedCurve, topPower } from '../fed.ts';
import { IDLE_CAUTIONS, idleSentences } from '../idle/tell.ts';
import type { LengthStudy } from '../length/compute.ts';
import { meterOutcomes } from '../meter/compute.ts';
import { METER_CAUTIONS, verdictWords as sensorWords } from '../meter/tell.ts';
import { PEDAL_CAUTIONS, pedalSentences } from '../pedal/tell.ts';
import { bothPlot, torquePlot } from '../plenum/figure.ts';
import { plenumTable, SENSED_SWING, sizesTable } from '../plenum/tables.ts';
import {
  ASSUMED,
  PLENUM_CAUTIONS,
  plenumBoostWords,
  plenumResolutionCautions,
  plenumWords,
} from '../plenum/tell.ts';
import { resolutionCautions, resolutionWords } from '../resolution.ts';
import { responseOutcomes } from '../response/compute.ts';
import { RESPONSE_CAUTIONS } from '../response/tell.ts';
import { bandWords, lossWords } from '../verdict.ts';
import { type WorthStudy, worthOutcomes } from './compute.ts';
import { responseWords } from './opened.ts';
import { plateOff, sensedPair, worthTable } from './tables.ts';

/** The sentence that the page begins with, and those behind it. */
export function worthSentences(study: WorthStudy): string[] {
  return [
    verdict(study),
    sizeWords(study),
    lengthWords(study),
    priceWords(study),
    ...knownWords(study),
    ...plenumBoostWords(study.plenum),
    ...workWords(study),
  ];
}

function verdict({ plenum }: WorthStudy): string {
  const { gainPercent: gain, worstLossPercent: loss } = plenum.weighed;
  if (!Number.isFinite(gain + loss)) {
    return 'Not to be told: points failed. What failed stands below.';
  }
  const other = `${plenumName(plenum.plenum)}${plenum.plenum.given ? '' : ' that nobody measured'}`;
  const figures =
    `individual bodies give ${percent(Math.abs(gain))} ${gain < 0 ? 'less' : 'more'} ` +
    `${bandWords(plenum.target)} than ${other}`;
  if (gain < -UNFELT) return `Not worth it for power: ${figures}.`;
  if (gain <= UNFELT) return `Not worth it for power alone: nothing is felt; ${figures}.`;
  const price =
    loss > UNFELT
      ? `and at worst ${percent(loss)} less outside the band`
      : 'and lose nothing that is felt outside the band';
  const answer = loss < gain ? 'Worth it for power' : 'Worth it in the band alone';
  return `${answer}: ${figures}, ${price}.`;
}

/** What stands against what, and power. */
function sizeWords({ plenum }: WorthStudy): string {
  const { bodies, onPlenum, lengthUnit } = plenum;
  const trumpets = lengthIn(bodies.engine.intake.trumpet.length, lengthUnit);
  const power = (curve: FedCurve) => {
    const top = topPower(curve);
    return top ? q.told(q.FLYWHEEL_POWER[lengthUnit], top.power) : 'no power';
  };
  return `That is on trumpets of ${trumpets} against ${plenumWords(plenum)}: ${power(bodies)} for ${power(onPlenum)} at best, friction by a correlation.`;
}

/** How much of it is the length of the trumpets and not the bodies. */
function lengthWords({ length, fitted, plenum }: WorthStudy): string {
  const { baseline, recommended, unit } = length;
  const own = lengthIn(baseline.length, unit);
  if (baseline.length === recommended.length) {
    return `The trumpets of ${own} fitted now are those to keep.`;
  }
  const gain = fitted.gainPercent;
  const byLength = plenum.weighed.gainPercent - gain;
  const more = byLength > Math.abs(gain) ? ': length decides more than bodies do' : '';
  return (
    `With the ${own} fitted now the bodies give ${percent(Math.abs(gain))} ${gain < 0 ? 'less' : 'more'} than that plenum${more}. ` +
    'A plenum on other runners would move too: give yours in the section plenum.'
  );
}

function priceWords({ plenum: { weighed } }: WorthStudy): string {
  const { worstLossPercent: loss, worstLossSpeed: speed, feltLossPercent } = weighed;
  return speed === undefined
    ? 'Outside the band they lose at no speed computed.'
    : `Outside the band they give at worst ${lossWords(loss, speed, feltLossPercent)}.`;
}

/** How well lengths, bodies and plenum are known between the speeds; what is not known is a caution. */
function knownWords({ plenum, length }: WorthStudy): string[] {
  if (!plenum.resolution || !length.resolution) return [];
  const resolution = together([plenum.resolution, length.resolution]);
  const words = resolutionWords({ ...plenum, resolution }, 'lengths and the plenum');
  return words === '' ? [] : [words];
}

/** The lengths by themselves, where they alone are in doubt; a list of speeds the plenum has told of. */
const lengthResolutionCautions = (length: LengthStudy) =>
  length.resolution ? resolutionCautions(length, (one) => lengthIn(one, length.unit)) : [];

/** Response, signal, balance, idle, pedal: what else changes and what there is to do. */
function workWords(study: WorthStudy): string[] {
  const { plenum, length, idle, pedal } = study;
  const count = plenum.bodies.engine.cylinder.count;
  const changes = length.baseline.length !== length.recommended.length;
  const cut = `${counted(count, 'trumpet')} of ${lengthIn(length.recommended.length, length.unit)} to make, `;
  return [
    responseWords(study),
    signalWords(study),
    `Sensor: ${uncapitalised(sensorWords(study.meter))}`,
    plateWords(study),
    idle
      ? `Idle: ${uncapitalised(idleSentences(idle)[0]!)}`
      : 'Idle: the file has no section idle, so what its air could come through is not known (idle).',
    pedal
      ? `Pedal: ${uncapitalised(pedalSentences(pedal)[0]!)}`
      : 'Pedal: the file has no section pedal, so whether plates shut with any part gone is not known (pedal).',
    `Work: ${changes ? cut : ''}${count > 1 ? 'plates and bleeds to balance, ' : ''}the fuel table to make anew.`,
  ];
}

function signalWords(study: WorthStudy): string {
  const pair = sensedPair(study);
  if (!pair) return '';
  const alone = study.plenum.bodies.engine.cylinder.count === 1;
  const smooth = alone ? 'damp it in a hose and a volume' : 'join the runners to a damped bar';
  const swing = (value: number) => q.told({ ...SENSED_SWING, digits: 3, finest: 2 }, value);
  return (
    `Signal: nearly shut at ${rpm(pair.bodies.speed)} the pressure behind one plate swings by ${swing(pair.bodies.swing)}, ` +
    `in the plenum by ${swing(pair.plenum.swing)}: ${smooth}, or fuel by plate angle (signal, load).`
  );
}

function plateWords(study: WorthStudy): string {
  const off = plateOff(study);
  if (!off) return '';
  const count = counted(study.plenum.bodies.engine.cylinder.count, 'plate');
  return (
    `Balance: ${count} to set alike; one ${q.told(q.PLATE, off.error)} off takes ${share(off.air!)} more air at idle and ` +
    `runs at lambda ${q.told(q.LAMBDA, off.lambda!)} (balance).`
  );
}

/** A long decimal in a text with three digits. */
const shortly = (text: string) =>
  text.replace(/\d+\.\d{4,}/g, (number) => brief(Number(number), 3));

/** As it stands behind a colon; a word all in capitals stays. */
const uncapitalised = (sentence: string) =>
  sentence.replace(/^[A-Z](?![A-Z])/, (first) => first.toLowerCase());

/** What would have to be measured before anything is bought; the defaults that move most come first. */
function toMeasure({ plenum, effects, idle, pedal }: WorthStudy): string[] {
  const most = effects.filter(({ moves }) => moves > LEAST).slice(0, NAMED);
  return [
    ...(plenum.plenum.given
      ? []
      : [
          'The plenum there is: bore of its throttle, volume, length and bore of runners and inlet (section plenum).',
        ]),
    ...most.map(
      ({ path, text, moves }) =>
        `${path}, taken as ${shortly(text)}: moves filling by ${share(moves)} over its doubt.`,
    ),
    ...(idle
      ? ['Air of the warm and the cold engine at idle, and lambda of every cylinder.']
      : ['What the engine idles on (section idle).']),
    ...(pedal ? [] : ['Springs, levers and cable (section pedal).']),
    'A run on a dyno with what is fitted now, set beside the prediction by compare: nothing here was held against this engine.',
  ];
}

/** Defaults that are named, at most, and what one must move [-]. */
const NAMED = 5;
const LEAST = 0.001;

/** Said before anything is bought. */
const CAUTIONS: readonly string[] = [
  ...PLENUM_CAUTIONS,
  IDLE_CAUTIONS[0]!,
  PEDAL_CAUTIONS[0]!,
  BALANCE_CAUTIONS[0]!,
  RESPONSE_CAUTIONS[0]!,
  METER_CAUTIONS[0]!,
];

export function worthReport(study: WorthStudy, scenario: Scenario): Report {
  const { plenum, length, effects } = study;
  return {
    about: 'Is it worth it',
    scenario,
    answer: worthSentences(study),
    flags: [
      ...pointCautions([
        { name: 'individual bodies', outcomes: allPoints(plenum.bodies) },
        { name: 'the plenum', outcomes: allPoints(plenum.onPlenum) },
        { name: 'part throttle', outcomes: plenum.part.map(({ outcome }) => outcome) },
        {
          name: 'plates that open',
          outcomes: Object.values(study.response).flatMap(responseOutcomes),
        },
        { name: 'sensors', outcomes: meterOutcomes(study.meter) },
      ]),
      ...plenumResolutionCautions(plenum),
      ...lengthResolutionCautions(length),
      ...(plenum.plenum.given ? [] : [ASSUMED]),
    ],
    sections: [
      { tables: [worthTable(study)], onSheet: true },
      { heading: 'Measure before you buy', items: toMeasure(study), onSheet: true },
      { heading: 'Mind', items: CAUTIONS, onSheet: true },
      { plots: [bothPlot(plenum), torquePlot(plenum)] },
      { tables: [sizesTable(plenum)] },
      { tables: [plenumTable(plenum), effectsTable(effects)], only: 'html' },
    ],
    sheet: true,
    length: length.recommended.length,
    outcomes: worthOutcomes(study),
  };
}
