/** In which order the cylinders fire, and how far apart; lists of cylinders, as the trade writes them. */
import { CYCLE } from '../../crankAngle.ts';
import type { FiringSpecification } from '../../specification.ts';
import { list, optional, quantity, section, text } from '../key.ts';
import type { ScenarioView } from '../schema.ts';
import { numbers, type Place, type TextPlace, type ViewOf } from '../view.ts';

const MOST = 16;
/** Least crank angle between two cylinders, and by how much a whole cycle may be missed [deg]. */
const [LEAST_STEP, SLACK] = [1, 0.01];

const interval = quantity('angle', 'From one cylinder of the order to the next.', {
  limits: ['1 deg', '720 deg'],
  example: '180 deg',
});
const angle = quantity('angle', 'Crank angle at which one cylinder fires, behind any of them.', {
  limits: ['0 deg', '720 deg'],
  example: '270 deg',
});

export const firingSection = optional(
  section('In which order the cylinders fire, and how far apart. Left out: at even steps.', {
    order: optional(text('Numbers of the cylinders as they fire: 1-8-4-3-6-5-7-2.', 60, 3)),
    intervals: optional(
      list(interval, 'From each of the order to the next, the last to the first; 720 deg in all.', {
        most: MOST,
      }),
    ),
    angles: optional(
      list(angle, 'When each cylinder fires, cylinder 1 first; in place of order and intervals.', {
        most: MOST,
      }),
    ),
  }),
);

type FiringView = ViewOf<typeof firingSection>;

/** Firing orders by number of cylinders; others count along the row. Common practice, no source. */
const USUAL_ORDERS: Record<number, readonly number[]> = {
  1: [1],
  2: [1, 2],
  3: [1, 2, 3],
  4: [1, 3, 4, 2],
  5: [1, 2, 4, 5, 3],
  6: [1, 5, 3, 6, 2, 4],
};

export function usualOrder(count: number): readonly number[] {
  return USUAL_ORDERS[count] ?? Array.from({ length: count }, (_, i) => i + 1);
}

/** `1-8-4-3` as numbers; undefined where anything but whole numbers stands between the strokes. */
export function cylindersOf(said: string): number[] | undefined {
  const words = said.trim().split(/\s*[-,\s]\s*/);
  return words.every((word) => /^\d+$/.test(word)) ? words.map(Number) : undefined;
}

/** What is wrong with a list that is to name every cylinder of `all` once, in words; '' where nothing is. */
export function naming(named: readonly number[], all: readonly number[]): string {
  const told = (some: readonly number[]) => [...new Set(some)].join(' and ');
  const missing = all.filter((number) => !named.includes(number));
  const twice = named.filter((number, i) => named.indexOf(number) !== i);
  const unknown = named.filter((number) => !all.includes(number));
  return [
    ...(missing.length > 0 ? [`misses ${told(missing)}`] : []),
    ...(twice.length > 0 ? [`names ${told(twice)} twice`] : []),
    ...(unknown.length > 0 ? [`names ${told(unknown)}, which is not among them`] : []),
  ].join(', ');
}

export const upTo = (count: number): number[] => Array.from({ length: count }, (_, i) => i + 1);

/** @param needed whether pipes name cylinders */
export function checkFiring({ engine }: ScenarioView, needed: boolean): void {
  const { firing } = engine;
  const count = engine.cylinders.given;
  if (count === undefined) return;
  const known = firing.order.present || firing.angles.present || USUAL_ORDERS[count];
  if (!known && (needed || firing.here.present)) {
    firing.order.problem(
      'the firing order is not known',
      `write it, for example: ${usualOrder(count).join('-')}, each cylinder as it fires`,
      `the numbers 1 to ${count}`,
    );
  }
  if (!firing.here.present) return;
  if (firing.angles.present) {
    checkAngles(firing, count);
    return;
  }
  if (firing.order.given !== undefined) checkOrder(firing.order, firing.order.given, count);
  if (firing.intervals.rows.length > 0) checkIntervals(firing, count);
}

function checkOrder(place: TextPlace, said: string, count: number): void {
  const order = cylindersOf(said);
  const wrong = order ? naming(order, upTo(count)) : 'is not numbers with strokes between them';
  if (wrong === '') return;
  const example = usualOrder(count).join('-');
  place.problem(
    `the firing order ${wrong}`,
    `write every cylinder once, as it fires, for example: ${example}`,
    `the numbers 1 to ${count}`,
  );
}

function checkIntervals({ intervals }: FiringView, count: number): void {
  const values = numbers(intervals.rows);
  if (!rightCount(intervals, 'interval', values.length, count)) return;
  const doubtful = intervals.rows.find(({ quantity: given }) => (given?.spread ?? 0) > 0);
  doubtful?.problem(
    'an interval cannot be in doubt, since all add up to 720 deg',
    'leave out what follows +-, or give the angles of the cylinders',
  );
  const sum = values.reduce((a, b) => a + b);
  if (Math.abs(sum - CYCLE) <= SLACK) return;
  intervals.problem(
    `the intervals add up to ${Number(sum.toFixed(3))} deg`,
    'the last counts from the last cylinder of the order back to the first; a four-stroke needs 720 deg in all',
    `${CYCLE} deg in all`,
  );
}

function checkAngles({ angles, order, intervals }: FiringView, count: number): void {
  for (const other of [order, intervals]) {
    if (!other.present) continue;
    const remedy = 'give the angle of every cylinder, or the order with its intervals';
    other.problem('the firing is given twice', remedy);
  }
  const values = numbers(angles.rows);
  if (!rightCount(angles, 'angle', values.length, count)) return;
  const rising = values.map((value) => value % CYCLE).toSorted((a, b) => a - b);
  const steps = rising.map((at, i) => (rising[i + 1] ?? rising[0]! + CYCLE) - at);
  if (count === 1 || Math.min(...steps) >= LEAST_STEP) return;
  angles.problem(
    'two cylinders fire at once',
    'write when each fires over two turns of the crank, from 0 to 720 deg',
    `at least ${LEAST_STEP} deg apart`,
  );
}

function rightCount(place: Place, what: string, given: number, count: number): boolean {
  if (given === count) return true;
  const said = `${given} ${what}${given === 1 ? '' : 's'} for ${count} cylinders`;
  place.problem(said, `give one ${what} a cylinder`, `${count} of them`);
  return false;
}

/** As the file has it; undefined where it says nothing and nobody asks (`needed`). */
export function resolveFiring(
  { engine }: ScenarioView,
  needed: boolean,
): FiringSpecification[] | undefined {
  const { firing } = engine;
  const count = engine.cylinders.given!;
  if (!firing.here.present && !needed) return undefined;
  if (firing.angles.rows.length > 0) return byAngle(numbers(firing.angles.rows));
  const order = orderOf(firing, count);
  const intervals = numbers(firing.intervals.rows);
  let at = 0;
  return order.map((cylinder, i) => {
    const angle = intervals.length > 0 ? at : (i * CYCLE) / count;
    at += intervals[i] ?? 0;
    return { cylinder, angle };
  });
}

/** Cylinder 1 leads. */
function byAngle(angles: readonly number[]): FiringSpecification[] {
  return angles
    .map((at, i) => ({ cylinder: i + 1, angle: (at - angles[0]! + CYCLE) % CYCLE }))
    .toSorted((a, b) => a.angle - b.angle);
}

/** The order that is given, or the usual one, which is then listed. */
export function orderOf({ order }: FiringView, count: number): readonly number[] {
  if (order.given !== undefined) return cylindersOf(order.given)!;
  const usual = usualOrder(count);
  order.note(usual.join('-'), 'common practice, no source');
  return usual;
}
