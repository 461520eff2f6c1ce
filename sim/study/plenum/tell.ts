/** What individual bodies give and take against one throttle and a plenum, in sentences. */

import { change, lengthIn, percent, rpm, sizeIn, UNFELT } from '../../report/figures.ts';
import * as q from '../../report/quantities.ts';
import type { Report } from '../../report/report.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import { allPoints } from '../../sweep/sweep.ts';
import { banksWords } from '../banks.ts';
import { boostWords } from '../boosted.ts';
import { pointCautions } from '../cautions.ts';
import { type FedCurve, topPower, widestSpread } from '../fed.ts';
import { resolutionCautions, resolutionWords } from '../resolution.ts';
import { bandWords, lossWords, stretchWords } from '../verdict.ts';
import { type PlenumStudy, plenumOutcomes, type SensedPoint } from './compute.ts';
import { bothPlot, swingPlot, torquePlot } from './figure.ts';
import { plenumTable, SENSED_SWING, SPREAD, sensedTable, sizesTable } from './tables.ts';

export const PLENUM_CAUTIONS: readonly string[] = [
  'Individual bodies at full load stand open to the engine bay: fuel, hands, cloth and grit keep away from the mouths, and every plate must shut by itself (see pedal).',
  'A dyno run is for people who hold the cell, its ventilation and its fuel safe. What is licensed or asked of a road car where you live comes before any figure here.',
];

export function plenumSentences(study: PlenumStudy): string[] {
  const known = resolutionWords(study, 'two ways');
  return [
    verdictWords(study),
    ...banksWords('plenum', study.plenum, study.bodies.engine, study.lengthUnit),
    whereWords(study),
    ...(known === '' ? [] : [known]),
    flywheelWords(study),
    ...plenumBoostWords(study),
    ...spreadWords(study),
    ...signalWords(study),
    fillingWords(study),
  ];
}

/** `one throttle of 64 mm and a plenum of 3000 cm3`, or so much a bank. */
export function plenumWords({ plenum, lengthUnit }: Pick<PlenumStudy, 'plenum' | 'lengthUnit'>) {
  const { throttle, volume, runnerLength, banks } = plenum;
  const size = (length: number) => sizeIn(length, lengthUnit);
  const holds = q.told(q.cubicCentimetres('', ''), banks ? volume / 2 : volume);
  const runners = `on runners of ${size(runnerLength)}`;
  return banks
    ? `a throttle of ${size(throttle.bore)} and a plenum of ${holds} a bank, ${runners}`
    : `one throttle of ${size(throttle.bore)} and a plenum of ${holds} ${runners}`;
}

export function verdictWords(study: PlenumStudy): string {
  const { weighed, target, bodies, lengthUnit } = study;
  const { gainPercent, bandMean } = weighed;
  const trumpets = `Individual bodies on trumpets of ${lengthIn(bodies.engine.intake.trumpet.length, lengthUnit)}`;
  const mean = q.bandMean(target.score);
  if (!Number.isFinite(gainPercent)) {
    return `${trumpets} cannot be weighed ${bandWords(target)}: a point failed there.`;
  }
  const verdict =
    gainPercent > UNFELT
      ? `give ${percent(gainPercent)} more`
      : gainPercent < -UNFELT
        ? `give ${percent(-gainPercent)} less`
        : `give nothing that is felt (${change(gainPercent)})`;
  const other = bandMean / (1 + gainPercent / 100);
  return (
    `${trumpets} ${verdict} ${bandWords(target)} against ${plenumWords(study)}: ` +
    `${q.told(mean, bandMean)} for ${q.told(mean, other)} of ${q.scored(target.score).name}.`
  );
}

/** Where each wins. */
function whereWords({ weighed }: PlenumStudy): string {
  const { stretches, worstLossPercent, worstLossSpeed, feltLossPercent } = weighed;
  const said = [stretchWords(stretches, 'wins'), stretchWords(stretches, 'loses')].filter(Boolean);
  if (said.length === 0) return 'At no speed computed do they differ by half a per cent.';
  const worst =
    worstLossSpeed === undefined
      ? 'Outside the band it loses nowhere.'
      : `Outside the band it has at worst ${lossWords(worstLossPercent, worstLossSpeed, feltLossPercent)}.`;
  return `The set of bodies ${said.join(' and ')}. ${worst}`;
}

function flywheelWords({ bodies, onPlenum, lengthUnit }: PlenumStudy): string {
  const best = (curve: FedCurve) => {
    const top = topPower(curve);
    return top ? `${q.told(q.FLYWHEEL_POWER[lengthUnit], top.power)} at ${rpm(top.speed)}` : 'none';
  };
  return `Most brake power of the speeds computed: individual bodies ${best(bodies)}, plenum ${best(onPlenum)}; friction by a correlation, so compare and do not quote.`;
}

/** Whether a boost leaves less between the two. */
export function plenumBoostWords({ bodies, onPlenum, free }: PlenumStudy): string[] {
  if (!free) return [];
  const pair = [bodies.outcomes, onPlenum.outcomes] as const;
  return [boostWords('what lies between the two', pair, [free.bodies, free.plenum])];
}

/** Where the plenum's cylinders differ most. */
function spreadWords({ onPlenum, plenum }: PlenumStudy): string[] {
  const worst = widestSpread(onPlenum);
  if (!plenum.row || worst.spread === 0) return [];
  return [
    `Along the plenum cylinders differ by up to ${q.told(SPREAD, worst.spread)} of filling, at ${rpm(worst.speed)}; individual bodies in the open do not by that cause.`,
  ];
}

type Told = SensedPoint & { mean: number; swing: number };

/** The nearest to shut that was computed, at the lowest speed, both ways. */
function signalWords({ part, speeds }: PlenumStudy): string[] {
  const [ours, theirs] = (['bodies', 'plenum'] as const).map((way) =>
    part.find(
      (one): one is Told => one.way === way && one.speed === speeds[0] && one.swing !== undefined,
    ),
  );
  if (!ours || !theirs) return [];
  const kPa = (pressure: number) => q.told({ ...SENSED_SWING, digits: 3, finest: 2 }, pressure);
  return [
    `Signal: at ${rpm(speeds[0]!)}, plates ${q.told(q.plateAngle('', ''), ours.angle)} above the stop, the pressure behind one plate swings by ` +
      `${kPa(ours.swing)} about a mean of ${kPa(ours.mean)}, in the plenum by ${kPa(theirs.swing)} about ${kPa(theirs.mean)}: ` +
      `${(ours.swing / theirs.swing).toFixed(1)} times as much. What joins the runners to a sensor is a question of its own (signal).`,
  ];
}

function fillingWords({ turns }: PlenumStudy): string {
  return (
    `Behind a choked plate a port fills with a time constant of ${turns.port.toFixed(2)} turns of the crank, the plenum with its runners of ` +
    `${turns.plenum.toFixed(1)}: so much quicker the air follows the pedal at small openings.`
  );
}

const LIMITS =
  'Runners stand along the plenum in a row, or one a bank side by side; waves across it and heat of its walls are left out. ' +
  'Runners breathe its air with the inertia of that outside. The table has the speeds of the file alone. ' +
  'Pressures at part throttle stand on a coarse mesh, 40 mm in the intake, the plenum one volume there.';

export function plenumReport(study: PlenumStudy, scenario: Scenario): Report {
  const { bodies, onPlenum, part, plenum } = study;
  return {
    about: 'Individual bodies or a plenum',
    scenario,
    answer: plenumSentences(study),
    flags: [
      ...pointCautions([
        { name: 'individual bodies', outcomes: allPoints(bodies) },
        { name: 'the plenum', outcomes: allPoints(onPlenum) },
        { name: 'part throttle', outcomes: part.map(({ outcome }) => outcome) },
      ]),
      ...plenumResolutionCautions(study),
      ...(plenum.given ? [] : [ASSUMED]),
    ],
    sections: [
      { plots: [bothPlot(study), torquePlot(study), swingPlot(study)] },
      { tables: [plenumTable(study), sensedTable(study), sizesTable(study)], notes: [LIMITS] },
      { heading: 'Mind', items: PLENUM_CAUTIONS },
    ],
    length: bodies.engine.intake.trumpet.length,
    outcomes: plenumOutcomes(study),
  };
}

export const plenumResolutionCautions = (study: PlenumStudy) =>
  resolutionCautions(study, (way) => (way === 0 ? 'the bodies' : 'the plenum'));

/** Said where the file has no section of its own. */
export const ASSUMED =
  'The file has no section plenum: throttle, plenum, runners and inlet are as is usual for an engine of this size and speed, not measured. Measure yours before you believe the difference.';
