/** Sizes of a valve that several checks need. */
import { numbers } from '../view.ts';
import type { ValvesView } from './valve.ts';

/** Inner seat diameter over the valve's head where nobody measured it [-]; common practice, no source. */
export const SEAT_SHARE = 0.93;

/** Rule for the inner seat diameter from the head [m]; undefined while neither is known. */
export function seatOf({ headDiameter, seatDiameter }: ValvesView): number | undefined {
  const head = headDiameter.given;
  return seatDiameter.given ?? (head === undefined ? undefined : SEAT_SHARE * head);
}

/** Greatest lift [m]; undefined while it is not known. */
export function maximumLift({ maximum, table }: ValvesView['lift']): number | undefined {
  const heights = numbers(table.rows.map(({ lift }) => lift)).filter((h) => !Number.isNaN(h));
  return maximum.given ?? (heights.length > 0 ? Math.max(...heights) : undefined);
}
