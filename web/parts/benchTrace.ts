/** The cycle that the workbench shows: of the reader's length where it is traced, else of the answer. */
import { computed } from '@preact/signals';
import type { Trace } from '../../sim/index.ts';
import type { Role } from '../look.ts';
import { curveOf, type Picture, picture } from '../state/picture.ts';
import { isTrace, traceOf } from '../state/why.ts';

export interface ShownTrace {
  role: Role;
  /** Trumpet length of the cycle [m]. */
  length: number;
  trace: Trace;
}

/** The same thing while nothing of it changes, so that a drag leaves its picture alone. */
export const shownTrace = computed<ShownTrace | undefined>((): ShownTrace | undefined => {
  const next = picture.value && benchTrace(picture.value);
  const same = next && next.trace === last?.trace && next.role === last.role;
  last = same && next.length === last?.length ? last : next;
  return last;
});

let last: ShownTrace | undefined;

function benchTrace(now: Picture): ShownTrace | undefined {
  for (const role of ['hand', 'best', 'now'] as const) {
    const trace = traceOf(role);
    const length = curveOf(now, role)?.length;
    if (isTrace(trace) && length !== undefined) return { role, length, trace };
  }
  return undefined;
}

/** The length that is looked at: the reader's, else the one recommended, else the one fitted now [m]. */
export function shownLength(picture: Picture): number {
  const curve = curveOf(picture, 'hand') ?? curveOf(picture, 'best') ?? picture.curves[0]!;
  return curve.length;
}
