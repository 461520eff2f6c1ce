/** How the charge follows the plates as tables and as a JSON document. */
import { auditOf } from '../../report/audit.ts';
import { documentHead } from '../../report/document.ts';
import * as q from '../../report/quantities.ts';
import { asObjects, column, type Table, tableOf, words } from '../../report/table.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import {
  type Followed,
  type ResponseStudy,
  type ResponseWay,
  responseOutcomes,
  type WayName,
} from './compute.ts';

export const WAY_NAMES: Record<WayName, string> = {
  bodies: 'individual bodies',
  box: 'bodies in a box',
  plenum: 'one throttle and a plenum',
};

export const FIRING_TIME = q.milliseconds('firing_ms', 'fires at');
const CLOSING_TIME = q.milliseconds('closing_ms', 'closes at');
export const SHARE = q.percentOf('share_of_change', 'of the change', { decimals: 0 });
export const LEAN = q.ratio('lambda_over_wanted', 'lambda over wanted', 2);
export const READY = q.milliseconds('all_there_ms', 'all there', 0);
const READY_CYCLES = q.ratio('all_there_cycles', 'cycles', 1);
const SLOWEST = q.milliseconds('slowest_first_there_ms', 'slowest first', 0);
const QUICKEST = q.milliseconds('quickest_first_there_ms', 'quickest first', 0);
export const LEANEST = q.ratio('leanest_lambda_over_wanted', 'leanest', 2);
const LEAN_CHARGES = { ...q.CYCLES, key: 'lean_charges', head: 'lean charges' };

/** Lambda over that wanted from which a charge counts as lean [-]; common practice, no source. */
const TOO_LEAN = 1.1;

/** Those fuelled lean, and the leanest [-]. */
export const leanOnes = ({ charges }: ResponseWay) => charges.filter(({ lean }) => lean > TOO_LEAN);
export const leanestOf = ({ charges }: ResponseWay) => Math.max(...charges.map(({ lean }) => lean));
const known = (value: number) => (Number.isFinite(value) ? value : undefined);

/** One row a way. */
export function waysTable({ ways, question }: ResponseStudy): Table {
  const before = { ...q.EFFICIENCY, key: `before_${q.EFFICIENCY.key}`, head: 'VE before' };
  const after = { ...q.EFFICIENCY, key: `after_${q.EFFICIENCY.key}`, head: 'VE after' };
  const cycles = (time: number) => known((time * question.speed) / 120);
  return tableOf<ResponseWay>(
    'Until nine tenths of the new torque',
    [
      words('way', 'way', ({ name }) => name),
      column(before, ({ moved }) => moved.fillings.before),
      column(after, ({ moved }) => moved.fillings.after),
      column(QUICKEST, ({ times }) => known(Math.min(...times))),
      column(SLOWEST, ({ times }) => known(Math.max(...times))),
      column(READY, ({ ready }) => known(ready)),
      column(READY_CYCLES, ({ ready }) => cycles(ready)),
      column(LEAN_CHARGES, (way) => leanOnes(way).length),
      column(LEANEST, leanestOf),
      words('settled', '', ({ moved }) => moved.before.settled && moved.after.settled, {
        only: 'files',
      }),
    ],
    ways,
  );
}

type Row = Followed & { way: WayName };

/** One row a way and charge, in the order they close. */
export function chargesTable({ ways }: ResponseStudy): Table {
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
      column(LEAN, ({ lean }) => lean),
    ],
    ways.flatMap(({ name, charges }) => charges.map((one) => ({ ...one, way: name }))),
  );
}

export function responseDocument(study: ResponseStudy, scenario: Scenario) {
  const { question, failed } = study;
  return {
    ...documentHead('response', scenario),
    speed_rpm: question.speed,
    from_above_stop_deg: question.from,
    to_above_stop_deg: question.to,
    within_ms: q.filed(FIRING_TIME, question.seconds),
    signal_lag_ms: q.filed(FIRING_TIME, question.lag),
    ways: asObjects(waysTable(study)),
    charges: asObjects(chargesTable(study)),
    failures: failed.map(({ name, failure }) => ({ way: name, failure: failure.failure })),
    audit: auditOf(responseOutcomes(study)),
  };
}
