/** What is heard as tables and as a JSON document. */

import type { LengthUnit } from '../../decision/lengthUnit.ts';
import { auditOf } from '../../report/audit.ts';
import { documentHead } from '../../report/document.ts';
import { lengthIn } from '../../report/figures.ts';
import { plain } from '../../report/numbers.ts';
import * as q from '../../report/quantities.ts';
import { asColumns, asObjects, type Column, column, tableOf } from '../../report/table.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import { level, levelA, levelOf, orderPower, weightA } from '../../sound/level.ts';
import { frequencyOf, type Orders, orderOf } from '../../sound/orders.ts';
import { FAR, type HeardLength, type HeardPoint, type ListenStudy, NEAR } from './compute.ts';

/** Level at a place of a point [dB(A)], undefined where it failed. */
export function heardA({ near, far }: HeardPoint, place: 'near' | 'far'): number | undefined {
  const orders = place === 'near' ? near : far;
  return orders && levelA(orders);
}

const NEAR_A = q.decibelsA('level_near_dBA', `${NEAR} m`);
const FAR_A = q.decibelsA('level_far_dBA', `${FAR.distance} m`);

const LEVELS: readonly Column<HeardPoint>[] = [
  column(NEAR_A, (point) => heardA(point, 'near')),
  column(FAR_A, (point) => heardA(point, 'far')),
  column(q.decibels('level_near_dB', `${NEAR} m, unweighted`), ({ near }) => near && level(near)),
];

/** One row a length and speed. */
export function levelsTable({ lengths, lengthUnit }: ListenStudy) {
  type Line = { length: number; point: HeardPoint };
  const rows = lengths.flatMap(({ length, points }) =>
    points.map((point): Line => ({ length, point })),
  );
  return tableOf<Line>(
    'Level over speed',
    [
      column(q.lengthQuantity(lengthUnit), ({ length }) => length),
      column(q.SPEED, ({ point }) => point.outcome.speed),
      ...LEVELS.map((one) => ({ ...one, of: ({ point }: Line) => one.of(point) })),
    ],
    rows,
  );
}

/** One row a speed, lengths side by side. */
export function speedsTable({ lengths, lengthUnit }: ListenStudy) {
  const side = lengths.flatMap(({ length, points }) =>
    LEVELS.slice(0, 2).map(
      (one): Column<number> => ({
        ...one,
        key: `trumpet_${q.shown(q.LENGTH, length)}mm_${one.key}`,
        head: `${lengthIn(length, lengthUnit)}, ${one.head}`,
        of: (i) => one.of(points[i]!),
      }),
    ),
  );
  const [first, second] = lengths;
  const change = column<number>(
    { ...q.decibelsA('change_dBA', `change, ${NEAR} m`), signed: true },
    (i) => difference(first!.points[i]!, second!.points[i]!),
  );
  return tableOf<number>(
    'Intake alone, full load',
    [column(q.SPEED, (i) => first!.points[i]!.outcome.speed), ...side, ...(second ? [change] : [])],
    [...first!.points.keys()],
  );
}

/** The other less the first at the near place [dB(A)]. */
export function difference(first: HeardPoint, other: HeardPoint): number | undefined {
  const [a, b] = [heardA(first, 'near'), heardA(other, 'near')];
  return a === undefined || b === undefined ? undefined : b - a;
}

export interface HeardOrder {
  length: number;
  orders: Orders;
  entry: number;
}

/** Level of one order at the near place [dB]. */
export const orderLevel = ({ orders, entry }: HeardOrder): number =>
  levelOf(orderPower(orders, entry));

/** The same by weighting A [dB(A)]. */
export function orderLevelA({ orders, entry }: HeardOrder): number {
  const weight = weightA(frequencyOf(orders, entry));
  return levelOf(orderPower(orders, entry) * weight * weight);
}

/** Every order of a length at the speed that is held. */
export function ordersHeld({ length, points }: HeardLength, speed: number): HeardOrder[] {
  const orders = points.find(({ outcome }) => outcome.speed === speed)?.near;
  return orders ? orders.re.map((_, entry) => ({ length, orders, entry })) : [];
}

/** One row a length and order. */
export function ordersTable(
  rows: readonly HeardOrder[],
  lengthUnit: LengthUnit,
  label = 'Orders at the speed held, 0.5 m away',
) {
  return tableOf<HeardOrder>(
    label,
    [
      column(q.lengthQuantity(lengthUnit), ({ length }) => length),
      column(q.ORDER, ({ entry }) => orderOf(entry)),
      column(q.FREQUENCY, ({ orders, entry }) => frequencyOf(orders, entry)),
      column(q.decibels('level_near_dB', 'level'), orderLevel),
      column(q.decibelsA('level_near_dBA', 'weighted'), orderLevelA),
    ],
    rows,
  );
}

export function listenDocument(study: ListenStudy, scenario: Scenario) {
  const { lengths, lengthUnit, speed, cutOff, beams, fullScale } = study;
  return {
    ...documentHead('listen', scenario),
    heard: study.box ? 'inlet of the box' : 'mouths in the open',
    speed_held_rpm: speed,
    lengths_mm: lengths.map(({ length }) => q.filed(q.LENGTH, length)),
    highest_frequency_Hz: plain(cutOff),
    beams_above_Hz: plain(beams),
    full_scale_Pa: plain(fullScale),
    levels: asObjects(levelsTable(study)),
    orders: lengths.map((one) => asColumns(ordersTable(ordersHeld(one, speed), lengthUnit))),
    failures: lengths.flatMap(({ points }) =>
      points.map(({ outcome }) => ('failure' in outcome ? outcome.failure : null)),
    ),
    audit: auditOf(lengths.flatMap(({ points }) => points.map(({ outcome }) => outcome))),
  };
}
