/** Lists of cylinders by number, `[1-4, 2-3]`: every cylinder stands in one of them. */
import type { Text } from '../key.ts';
import type { ListPlace } from '../view.ts';
import { cylindersOf, naming } from './firing.ts';

/** Cylinders by list; undefined where none are given, or one is no list of numbers. */
export function listsIn(place: ListPlace<Text>): number[][] | undefined {
  if (!place.present) return undefined;
  const read = place.rows.map(({ given = '' }) => cylindersOf(given));
  return read.every((one) => one !== undefined) ? (read as number[][]) : undefined;
}

/** @param what in words: `list of groups` */
export function checkLists(
  place: ListPlace<Text>,
  what: string,
  all: readonly number[],
  example: string,
): void {
  if (place.rows.some(({ given }) => given === undefined)) return;
  const read = listsIn(place);
  const wrong = read ? naming(read.flat(), all) : 'is not numbers with strokes between them';
  if (place.rows.length === 0 || wrong === '') return;
  place.problem(
    `the ${what} ${wrong}`,
    `write every cylinder in one of them, for example: ${example}`,
    `the numbers 1 to ${all.length}`,
  );
}
