/**
 * A joint of like pipes that fire at like intervals, of which one is solved and the others echo it: once
 * settled, each sends into the joint just what the first one sent, some crank degrees later. So the others'
 * arriving gas is replayed from the first one's last cycle.
 *
 * A record of the last cycle alone can swing from cycle to cycle for ever; the mean of all, the older
 * the less, has the same settled state and finds it. No source: symmetry. Exact once the cycle has
 * settled; shown against all cylinders solved in tests/consistency/echo.test.ts.
 */

import { junction } from './junction.ts';
import {
  any,
  type B,
  type I,
  K,
  lookupLane,
  N,
  type R,
  real,
  rounded,
  scatterLane,
  type V,
  X,
} from './lanes.ts';
import {
  A_SIZE,
  BINS,
  COUNT,
  CRANK_MIDDLE,
  DT,
  E_X,
  END_SLOTS,
  F_ENERGY,
  F_MASS,
  FIRST_END,
  REC_AT,
  REC_BINS,
  REC_LAST,
  REC_TURNS,
} from './layout.ts';

/** Share of the newest cycle in the record. */
const MEMORY: R = 0.75;
/** The same from so many cycles on: small charges, mostly of what came back, swing for long. */
const LATE_MEMORY: R = 0.3;
const LATE: R = 10;
/** Cycles of which nothing is kept: the start is still being flushed out. */
const FORGOTTEN: R = 3;

/** Notes what the first end sends, recalls what the last `echoes` ends send, and solves the joint. */
export function collector(node: I, root: I, record: I, delays: I, echoes: I): void {
  const ends: I = N[node + COUNT];
  note(N[N[node + FIRST_END] + E_X], record);
  const at: V = X[CRANK_MIDDLE];
  for (let j: I = 0; j < echoes; j++) {
    const a: I = N[N[node + FIRST_END + ends - echoes + j] + E_X];
    const then: V = at - K[delays + j];
    const bin: V = then < 0 ? then + real(BINS) : then;
    for (let k: I = 0; k < A_SIZE; k++) X[a + k] = lookupLane(record + REC_BINS + k, A_SIZE, bin);
  }
  junction(node, root);
  for (let j: I = 0; j < echoes; j++) {
    const a: I = N[N[node + FIRST_END + ends - echoes + j] + E_X];
    X[a + END_SLOTS] += X[a + F_MASS] * X[DT];
    X[a + END_SLOTS + 1] += X[a + F_ENERGY] * X[DT];
  }
}

/** Fills a record with the gas at slots `a`, where it is fresh. */
function fill(a: I, record: I, fresh: B): void {
  for (let k: I = 0; k < A_SIZE; k++) {
    const now: V = X[a + k];
    X[record + REC_LAST + k] = fresh ? now : X[record + REC_LAST + k];
    for (let b: I = 0; b <= BINS; b++) {
      const place: I = record + REC_BINS + b * A_SIZE + k;
      X[place] = fresh ? now : X[place];
    }
  }
}

/** Notes the gas that arrives at the end with slots `a`. */
function note(a: I, record: I): void {
  const bins: I = record + REC_BINS;
  const here: V = X[CRANK_MIDDLE];
  const before: V = X[record + REC_AT];
  const fresh: B = before < 0;
  if (any(fresh)) fill(a, record, fresh);
  const turned: B = here < before;
  X[record + REC_TURNS] += turned ? 1 : 0;
  const turns: V = X[record + REC_TURNS];
  const weight: V = turns < FORGOTTEN ? 1 : turns < LATE ? MEMORY : LATE_MEMORY;
  const span: V = turned ? here - before + real(BINS) : here - before;
  // The first bin behind where the last note was.
  const near: V = rounded(before);
  let bin: V = near > before ? near : near + 1;
  while (any(!fresh && bin <= before + span)) {
    const within: B = !fresh && bin <= before + span;
    const share: V = (bin - before) / span;
    const place: V = bin >= real(BINS) ? bin - real(BINS) : bin;
    for (let k: I = 0; k < A_SIZE; k++) {
      const last: V = X[record + REC_LAST + k];
      const value: V = last + share * (X[a + k] - last);
      const old: V = lookupLane(bins + k, A_SIZE, place < 0 ? 0 : place);
      const mixed: V = old + weight * (value - old);
      scatterLane(bins + k, A_SIZE, place, mixed, within);
      // The bin behind the last is the first again, so that a look-up needs no turning round.
      scatterLane(bins + k, A_SIZE, place + real(BINS), mixed, within && place < 1);
    }
    bin = bin + 1;
  }
  for (let k: I = 0; k < A_SIZE; k++) X[record + REC_LAST + k] = X[a + k];
  X[record + REC_AT] = here;
}
