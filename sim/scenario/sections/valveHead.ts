/** Sizes of a valve that several checks need. */
import type { Reading } from '../reading.ts';

/** Rule for the inner seat diameter from the head [m]; undefined while neither is known. */
export function seatOf(reading: Reading, path: string): number | undefined {
  const head = reading.given(`${path}.headDiameter`);
  return reading.given(`${path}.seatDiameter`) ?? (head === undefined ? undefined : 0.93 * head);
}

/** Greatest lift [m]; undefined while it is not known. */
export function maximumLift(reading: Reading, lift: string): number | undefined {
  const heights = reading.column(`${lift}.table`, 'lift').filter((value) => !Number.isNaN(value));
  return reading.given(`${lift}.maximum`) ?? (heights.length ? Math.max(...heights) : undefined);
}
