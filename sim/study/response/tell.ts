/** How quickly torque follows the plates, in sentences. */
import { rpm } from '../../report/figures.ts';
import { counted } from '../../report/numbers.ts';
import * as q from '../../report/quantities.ts';
import type { Report } from '../../report/report.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import { pointCautions } from '../cautions.ts';
import { type ResponseStudy, type ResponseWay, responseOutcomes } from './compute.ts';
import { responsePlot } from './figure.ts';
import * as t from './tables.ts';

const milliseconds = (time: number) => q.told(t.READY, time);
const plate = (angle: number) => q.told(q.plateAngle('', ''), angle);

export function responseSentences(study: ResponseStudy): string[] {
  const [first, ...rest] = study.ways;
  if (!first) return ['Nothing could be computed.'];
  return [headWords(study), ...[first, ...rest].map((way) => leanWords(way, study))];
}

function headWords({ ways, question }: ResponseStudy): string {
  const { speed, from, to, seconds } = question;
  const told = ways.map((way) => timeWords(way, speed)).join('; ');
  return (
    `At ${rpm(speed)}, plates opened from ${plate(from)} to ${plate(to)} above their stop in ${milliseconds(seconds)}: ` +
    `every firing has nine tenths of the new torque from ${told}.`
  );
}

function timeWords(way: ResponseWay, speed: number): string {
  const { name, ready } = way;
  if (!Number.isFinite(ready)) return `never within what was followed with ${t.WAY_NAMES[name]}`;
  return `${milliseconds(ready)} on with ${t.WAY_NAMES[name]} (${((ready * speed) / 120).toFixed(1)} cycles)`;
}

function leanWords(way: ResponseWay, { question }: ResponseStudy): string {
  const lean = t.leanOnes(way);
  const name = `${t.WAY_NAMES[way.name]} fuelled by a pressure signal ${milliseconds(question.lag)} behind`;
  const said = name.charAt(0).toUpperCase() + name.slice(1);
  if (lean.length === 0) return `${said}: no charge more than a tenth lean.`;
  return (
    `${said}: ${counted(lean.length, 'charge')} more than a tenth lean, the leanest at ${q.told(t.LEAN, t.leanestOf(way))} ` +
    'of the lambda wanted. Enrich while plates move, and measure lambda before you lean on it.'
  );
}

/** Said wherever plates are snapped open. */
export const RESPONSE_CAUTIONS: readonly string[] = [
  'A lean charge at load backfires into open mouths and burns pistons: set enrichment rich first, with the engine warm, and someone at the ignition switch.',
  'Plates are tried on a stand or dynamometer that holds the engine at its speed, never by feel on the road.',
];

const ASSUMED =
  'Speed is held. A charge makes its torque at its next firing, in the share of its filling; what burns lean makes less. Fuel is given one turn before the valve closes, ' +
  'by a first-order lag of the pressure behind the plates (all of them joined) or in the chamber, straight between both ends; films of fuel in the port are left out, they add to it. ' +
  'Plenum and box are one volume; both plates move by the same degrees, though not to the same torque. The mesh is coarse: 40 mm in the intake.';

export function responseReport(study: ResponseStudy, scenario: Scenario): Report {
  const outcomes = responseOutcomes(study);
  const { plenum, airbox } = study.question;
  const missing = [plenum.given ? '' : 'plenum', airbox.given ? '' : 'airbox'].filter(Boolean);
  return {
    about: 'Response',
    scenario,
    answer: responseSentences(study),
    flags: [
      ...pointCautions([{ name: 'plates at rest', outcomes }]),
      ...(missing.length > 0
        ? [`The file has no section ${missing.join(' and ')}: sizes are as is usual, not measured.`]
        : []),
    ],
    sections: [
      { plots: [responsePlot(study)] },
      { tables: [t.waysTable(study)], notes: [ASSUMED] },
      { tables: [t.chargesTable(study)], only: 'html' },
      { heading: 'Mind', items: RESPONSE_CAUTIONS },
    ],
    outcomes,
  };
}
