/** Sections that a file may leave out altogether: what they hold is then as is usual, and told by the study. */
import type { LeafPlace, Place } from '../view.ts';

/** Takes values of a section; of one that is absent nothing is listed as a default of the file. */
export function usualTaker({ present }: Place) {
  return {
    value: (place: LeafPlace<'value'>) => (present ? place.take() : place.assumed),
    rule: (place: LeafPlace<'rule'>, rule: () => number) => (present ? place.take(rule) : rule()),
  };
}
