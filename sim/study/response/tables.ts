/** How the charge follows the plates as tables and as a JSON document. */

import { firings } from '../../firings.ts';
import { auditOf } from '../../report/audit.ts';
import { documentHead } from '../../report/document.ts';
import * as q from '../../report/quantities.ts';
import { asObjects, column, type Table, tableOf, words } from '../../report/table.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import { plenumName } from '../banks.ts';
import type { ResponseQuestion } from './ask.ts';
import {
  type Followed,
  type ResponseStudy,
  type ResponseWay,
  responseOutcomes,
  type WayName,
} from './compute.ts';
import { SIGNALS, type Signal } from './fuelled.ts';
import { fuelledTable, WET } from './leanTables.ts';

const WAY_NAMES: Record<Exclude<WayName, 'plenum'>, string> = {
  bodies: 'individual bodies',
  near: 'bodies moved to the valve',
  far: 'bodies moved to the mouth',
  box: 'bodies in a box',
};

export const wayName = (name: WayName, { plenum }: ResponseQuestion): string =>
  name === 'plenum' ? plenumName(plenum) : WAY_NAMES[name];

export const FIRING_TIME = q.milliseconds('firing_ms', 'fires at');
const CLOSING_TIME = q.milliseconds('closing_ms', 'closes at');
const TO_VALVE = q.boreOf('plate_to_valve_mm', 'to valve');
export const SHARE = q.percentOf('share_of_change', 'of the change', { decimals: 0 });
export const LEAN = q.ratio('lambda_over_wanted', 'lambda over wanted', 2);
export const READY = q.milliseconds('all_there_ms', 'all there', 0);
const READY_CYCLES = q.ratio('all_there_cycles', 'cycles', 1);
const SLOWEST = q.milliseconds('slowest_first_there_ms', 'slowest first', 0);
const QUICKEST = q.milliseconds('quickest_first_there_ms', 'quickest first', 0);
const FIRST = q.milliseconds('first_there_ms', 'first there', 0);
const FIRST_CYCLES = q.ratio('first_there_cycles', 'cycles', 1);

const known = (value: number) => (Number.isFinite(value) ? value : undefined);
const cyclesAt = (speed: number) => (time: number) => known((time * speed) / 120);

/** One row a way. */
export function waysTable({ ways, question }: ResponseStudy): Table {
  const before = { ...q.EFFICIENCY, key: `before_${q.EFFICIENCY.key}`, head: 'VE before' };
  const after = { ...q.EFFICIENCY, key: `after_${q.EFFICIENCY.key}`, head: 'VE after' };
  const cycles = cyclesAt(question.speed);
  return tableOf<ResponseWay>(
    'Until nine tenths of the new torque',
    [
      words('way', 'way', ({ name }) => name),
      column(TO_VALVE, ({ toValve }) => toValve),
      column(before, ({ moved }) => moved.rest[0]!.filling),
      column(after, ({ moved }) => moved.rest.at(-1)!.filling),
      column(QUICKEST, ({ times }) => known(Math.min(...times))),
      column(SLOWEST, ({ times }) => known(Math.max(...times))),
      column(READY, ({ ready }) => known(ready)),
      column(READY_CYCLES, ({ ready }) => cycles(ready)),
      words('settled', '', ({ moved }) => moved.before.settled && moved.after.settled, {
        only: 'files',
      }),
    ],
    ways,
  );
}

interface CylinderRow {
  way: WayName;
  number: number;
  time: number;
}

/** One row a way and cylinder, in the order they fire. */
export function cylindersTable({ ways, question }: ResponseStudy): Table {
  const cycles = cyclesAt(question.speed);
  const turns = firings(question.engine);
  return tableOf<CylinderRow>(
    'Cylinder by cylinder: first firing with nine tenths of the new torque',
    [
      words('way', 'way', ({ way }) => way),
      column(q.CYLINDER, ({ number }) => number),
      column(FIRST, ({ time }) => known(time)),
      column(FIRST_CYCLES, ({ time }) => cycles(time)),
    ],
    ways.flatMap(({ name: way, times }) =>
      times.map((time, i) => ({ way, number: turns[i]!.number, time })),
    ),
  );
}

type Row = Followed & { way: WayName };

/** One row a way and charge, in the order they close. */
export function chargesTable({ ways, film }: ResponseStudy): Table {
  const by = (quantity: q.Quantity, signal: Signal) => ({
    ...quantity,
    key: `${quantity.key}_by_${signal}`,
    head: `${quantity.head}, ${signal}`,
  });
  return tableOf<Row>(
    'Every charge',
    [
      words('way', 'way', ({ way }) => way),
      column(
        { ...q.CYLINDER, key: 'place_in_firing_order', head: 'fires as' },
        ({ place }) => place,
      ),
      column(CLOSING_TIME, ({ closing }) => closing),
      column(FIRING_TIME, ({ firing }) => firing),
      column(q.EFFICIENCY, ({ filling }) => filling),
      column(SHARE, ({ share }) => share),
      ...SIGNALS.flatMap((signal) => [
        column<Row>(by(LEAN, signal), ({ lean }) => lean[signal]),
        ...(film ? [column<Row>(by(WET, signal), ({ wet }) => wet?.[signal])] : []),
      ]),
    ],
    ways.flatMap(({ name, charges }) => charges.map((one) => ({ ...one, way: name }))),
  );
}

export function responseDocument(study: ResponseStudy, scenario: Scenario) {
  const { question, failed, film } = study;
  return {
    ...documentHead('response', scenario),
    speed_rpm: question.speed,
    from_above_stop_deg: question.from,
    to_above_stop_deg: question.to,
    within_ms: q.filed(FIRING_TIME, question.seconds),
    signal_lag_ms: q.filed(FIRING_TIME, question.lag),
    film: film
      ? {
          film_deposit_fraction: film.share,
          film_time_constant_ms: q.filed(FIRING_TIME, film.time),
        }
      : null,
    ways: asObjects(waysTable(study)),
    cylinders: asObjects(cylindersTable(study)),
    fuelled: asObjects(fuelledTable(study)),
    charges: asObjects(chargesTable(study)),
    failures: failed.map(({ name, failure }) => ({ way: name, failure: failure.failure })),
    audit: auditOf(responseOutcomes(study)),
  };
}
