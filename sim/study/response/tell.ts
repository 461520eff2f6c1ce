/** How quickly torque follows the plates, in sentences. */
import type { LengthUnit } from '../../decision/lengthUnit.ts';
import { rpm, share, sizeIn } from '../../report/figures.ts';
import { counted } from '../../report/numbers.ts';
import * as q from '../../report/quantities.ts';
import type { Report } from '../../report/report.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import { pointCautions } from '../cautions.ts';
import { isBoosted } from '../length/freeFeed.ts';
import type { ResponseQuestion } from './ask.ts';
import { type ResponseStudy, type ResponseWay, responseOutcomes } from './compute.ts';
import { responsePlot } from './figure.ts';
import type { Signal } from './fuelled.ts';
import { fuelledTable, lambdasOf, leanCount } from './leanTables.ts';
import { roomOf } from './movedBodies.ts';
import * as t from './tables.ts';

const milliseconds = (time: number) => q.told(t.READY, time);
const plate = (angle: number) => q.told(q.plateAngle('', ''), angle);

export function responseSentences(study: ResponseStudy, unit?: LengthUnit): string[] {
  if (study.ways.length === 0) return ['Nothing could be computed.'];
  const lean = study.ways.map((way) => leanWords(way, study));
  return [headWords(study, unit), placeWords(study), ...lean, filmWords(study)];
}

function headWords({ ways, question }: ResponseStudy, unit?: LengthUnit): string {
  const { speed, from, to, seconds } = question;
  const told = ways.map((way) => timeWords(way, question, unit)).join('; ');
  return (
    `At ${rpm(speed)}, plates opened from ${plate(from)} to ${plate(to)} above their stop in ${milliseconds(seconds)}: ` +
    `every firing has nine tenths of the new torque from ${told}.`
  );
}

function timeWords(way: ResponseWay, question: ResponseQuestion, unit?: LengthUnit): string {
  const { name, ready, toValve } = way;
  const said = t.wayName(name, question);
  const place = toValve === undefined ? '' : `, plate ${sizeIn(toValve, unit)} from the valve`;
  if (!Number.isFinite(ready)) return `never within what was followed with ${said}`;
  return `${milliseconds(ready)} on with ${said} (${((ready * question.speed) / 120).toFixed(1)} cycles${place})`;
}

/** Why bodies are not moved one way or the other. */
function placeWords({ question }: ResponseStudy): string {
  const { near, far } = roomOf(question.engine);
  if (near === 0) return 'The bodies stand at the head: there is no place nearer to the valve.';
  return far === 0 ? 'The trumpets are as short as can be: no place is nearer to the mouth.' : '';
}

/** Lean by one signal and by the other, and rich where the signal runs ahead; wet walls told of apart. */
function leanWords(way: ResponseWay, { question }: ResponseStudy): string {
  const name = t.wayName(way.name, question);
  const by = (signal: Signal) => {
    const lambdas = lambdasOf(way, signal);
    const count = leanCount(lambdas);
    const richest = Math.min(...lambdas);
    const rich = richest < TOO_RICH ? `, the richest at ${q.told(t.LEAN, richest)}` : '';
    return count === 0
      ? `no charge more than a tenth lean${rich}`
      : `${counted(count, 'charge')} more than a tenth lean, the leanest at ${q.told(t.LEAN, Math.max(...lambdas))} of the lambda wanted${rich}`;
  };
  const said = name.charAt(0).toUpperCase() + name.slice(1);
  return `${said}, fuelled by a pressure signal ${milliseconds(question.lag)} behind: ${by('pressure')}; by plate angle: ${by('angle')}.`;
}

/** Lambda over that wanted below which a charge is told of as rich [-]; common practice, no source. */
const TOO_RICH = 0.9;

function filmWords({ film, ways, question }: ResponseStudy): string {
  if (!film) {
    const why = question.injectors ? 'its film is not known' : 'the file has no injectors';
    return `Walls are taken as dry, for ${why}: what they keep back of the fuel comes on top. Enrich while plates move, and measure lambda before you lean on it.`;
  }
  const worst = (signal: Signal) =>
    Math.max(...ways.flatMap((way) => lambdasOf(way, signal, 'wet')));
  const told = (signal: Signal) => q.told(t.LEAN, worst(signal));
  return (
    `Of the injectors' fuel ${share(film.share, 0)} lands on walls and leaves them in ${milliseconds(film.time)}: with it the leanest charge is at ` +
    `${told('pressure')} by pressure and ${told('angle')} by angle. Enrich while plates move, and measure lambda before you lean on it.`
  );
}

/** Said wherever plates are snapped open. */
export const RESPONSE_CAUTIONS: readonly string[] = [
  'A lean charge at load backfires into open mouths and burns pistons: set enrichment rich first, with the engine warm, and someone at the ignition switch.',
  'Plates are tried on a stand or dynamometer that holds the engine at its speed, never by feel on the road.',
];

const ASSUMED =
  'Speed is held. A charge makes its torque at its next firing, in the share of its filling; what burns lean makes less. Fuel is given one turn before the valve closes, ' +
  'by a first-order lag of the pressure behind the plates (all of them joined) or in the chamber, or by the plate angle as it is, and by what plates at rest give at this speed, straight between six angles. ' +
  'Wet walls keep share and time constant of the film at the opening before, on bodies as they stand (Aquino 1981, from memory). ' +
  'Plenum and box are one volume, or one a bank; both throttles move by the same degrees, though not to the same torque. The mesh is coarse: 40 mm in the intake.';

const BOOSTED =
  'The feed is boosted and held: how its pressure comes up when plates open is not in it.';

export function responseReport(study: ResponseStudy, scenario: Scenario): Report {
  const outcomes = responseOutcomes(study);
  const { plenum, airbox } = study.question;
  const missing = [plenum.given ? '' : 'plenum', airbox.given ? '' : 'airbox'].filter(Boolean);
  return {
    about: 'Response',
    scenario,
    answer: responseSentences(study, scenario.lengthUnit),
    flags: [
      ...pointCautions([{ name: 'plates at rest', outcomes }]),
      ...(missing.length > 0
        ? [
            `The file has no section ${missing.join(' and no section ')}: sizes are as is usual, not measured.`,
          ]
        : []),
      ...(isBoosted(study.question.engine) ? [BOOSTED] : []),
    ],
    sections: [
      { plots: [responsePlot(study)] },
      { tables: [t.waysTable(study), fuelledTable(study)], notes: [ASSUMED] },
      { tables: [t.cylindersTable(study), t.chargesTable(study)], only: 'html' },
      { heading: 'Mind', items: RESPONSE_CAUTIONS },
    ],
    outcomes,
  };
}
