/** How torque follows plates that open, bodies beside the plenum, in words. */
import { rpm } from '../../report/figures.ts';
import { counted } from '../../report/numbers.ts';
import * as q from '../../report/quantities.ts';
import { CYCLES, type ResponseStudy } from '../response/compute.ts';
import type { Signal } from '../response/fuelled.ts';
import { lambdasOf, leanCount } from '../response/leanTables.ts';
import { READY } from '../response/tables.ts';
import type { Opening, WorthStudy } from './compute.ts';

export type Way = 'bodies' | 'plenum';

const wayOf = ({ ways }: ResponseStudy, name: Way) => ways.find((one) => one.name === name);

/** Until every firing has nine tenths of the new torque [s]; NaN: never; undefined where it failed. */
export const readyAfter = ({ response }: WorthStudy, opening: Opening, way: Way) =>
  wayOf(response[opening], way)?.ready;

export function readyWords(study: WorthStudy, opening: Opening, way: Way): string {
  const ready = readyAfter(study, opening, way);
  if (ready === undefined) return '-';
  return Number.isFinite(ready) ? q.told(READY, ready) : `more than ${CYCLES} cycles`;
}

/** Charges more than a tenth lean while plates are snapped wide open; undefined where it failed. */
export function leanAfter({ response }: WorthStudy, way: Way, signal: Signal): number | undefined {
  const found = wayOf(response.wide, way);
  return found && leanCount(lambdasOf(found, signal));
}

const plate = (angle: number) => q.told(q.plateAngle('', ''), angle);

/** `opened by 3 deg`, `opened wide in 50 ms`. */
export function openingWords({ response }: WorthStudy, opening: Opening): string {
  const { from, to, seconds } = response[opening].question;
  return opening === 'little'
    ? `opened by ${plate(to - from)}`
    : `opened wide in ${q.told(READY, seconds)}`;
}

/** Small and wide openings, and the mixture on the way. */
export function responseWords(study: WorthStudy): string {
  const { response, plenum } = study;
  const { question } = response.wide;
  const { speed, from, lag } = question;
  const both = (opening: Opening) =>
    `${readyWords(study, opening, 'bodies')} on when ${openingWords(study, opening)} (plenum ${readyWords(study, opening, 'plenum')})`;
  const [port, box] = [plenum.turns.port.toFixed(2), plenum.turns.plenum.toFixed(1)];
  return (
    `Response: from plates ${plate(from)} above their stop at ${rpm(speed)} nine tenths of the new torque are there ${both('little')}, ${both('wide')}. ` +
    `${leanWords(study, lag)}Nearly shut a port fills in ${port} turns of the crank, the plenum with its runners in ${box} (response).`
  );
}

function leanWords(study: WorthStudy, lag: number): string {
  const of = (signal: Signal) =>
    (['bodies', 'plenum'] as const).map((way) => leanAfter(study, way, signal));
  const [pressure, angle] = [of('pressure'), of('angle')];
  if ([...pressure, ...angle].some((count) => count === undefined)) return '';
  return (
    `Opened wide, ${counted(pressure[0]!, 'charge')} ${pressure[0] === 1 ? 'comes' : 'come'} more than a tenth lean by a pressure signal ${q.told(READY, lag)} behind ` +
    `(plenum ${pressure[1]}), ${angle[0]} by plate angle (${angle[1]}): enrichment to set. `
  );
}
