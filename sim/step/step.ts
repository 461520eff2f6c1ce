/**
 * One time step of a whole plan, and steps on until a lane comes to its next event. Each lane has its
 * own time step, crank angle and events; nothing passes from lane to lane, so that a point's figures do
 * not depend on what runs beside it.
 */

import { constriction } from './constriction.ts';
import { predictCylinder, workCylinder, wrapped } from './cylinder.ts';
import { collector } from './echo.ts';
import { readEnd, tallyEnd } from './ends.ts';
import { exchange, shutEnd } from './exchange.ts';
import { fluxes } from './faces.ts';
import { junction } from './junction.ts';
import { all, type I, K, lookup, min, N, type R, type V, X } from './lanes.ts';
import {
  CLOSED,
  COLLECTOR,
  CONSTRICTION,
  COUNT,
  COURANT,
  CRANK,
  CRANK_LEFT,
  CRANK_MIDDLE,
  CRANK_RATE,
  CRANK_STEP,
  D_DX,
  D_FASTEST,
  D_SIZE,
  D_SUMS,
  DT,
  DUCTS,
  DUCTS_AT,
  E_K,
  E_X,
  F_MASS,
  FIRST_END,
  G_MASS,
  G_OPENING,
  JUNCTION,
  KIND,
  MOUTH,
  NODES,
  NODES_AT,
  NON_REFLECTING,
  RESERVOIR,
  TAP_SIZE,
  TAPS,
  TAPS_AT,
  TIME,
  VOL_K,
  VOL_SIZE,
  VOL_X,
  VOLUMES,
  VOLUMES_AT,
} from './layout.ts';
import { mouth } from './mouth.ts';
import { nonReflecting } from './nonReflecting.ts';
import { predict } from './predict.ts';
import { pourTapping, showTapping } from './tapping.ts';
import { update } from './update.ts';
import { advanceVolume, showVolume, volumeStep } from './volume.ts';

/** Entries of a valve's table per degree. */
const PER_DEGREE: R = 8;

/**
 * Share of its own longest step that a volume takes: rates half a step ahead are stable up to the whole of it, where
 * each step undoes what the last one did, and short ducts from volume to volume swing against both. At the whole,
 * boxes of coarse cells never settled (tests/consistency/rowOfVolumes.test.ts); at three quarters, few did not.
 */
const VOLUME_SHARE: R = 0.5;

/** Longest stable step at Courant number 1 [s]. */
export function longestStep(): V {
  let dt: V = X[DT] * 0 + 1;
  for (let d: I = 0; d < N[DUCTS]; d++) {
    const duct: I = N[DUCTS_AT] + d * D_SIZE;
    const dx: R = K[N[duct + D_DX]];
    dt = min(dt, dx / X[N[duct + D_SUMS] + D_FASTEST]);
  }
  for (let v: I = 0; v < N[VOLUMES]; v++) {
    const volume: I = N[VOLUMES_AT] + v * VOL_SIZE;
    const whole: V = volumeStep(N[volume + VOL_X]);
    dt = min(dt, N[volume + VOL_K] < 0 ? VOLUME_SHARE * whole : whole);
  }
  return dt;
}

/** One step of every lane, by its own X[DT], X[CRANK_MIDDLE] and X[CRANK_STEP]. */
export function step(): void {
  const dt: V = X[DT];
  for (let d: I = 0; d < N[DUCTS]; d++) predict(N[DUCTS_AT] + d * D_SIZE, dt);
  for (let v: I = 0; v < N[VOLUMES]; v++) {
    const volume: I = N[VOLUMES_AT] + v * VOL_SIZE;
    if (N[volume + VOL_K] < 0) showVolume(N[volume + VOL_X], 0.5 * dt);
    else predictCylinder(N[volume + VOL_X], N[volume + VOL_K]);
  }
  for (let t: I = 0; t < N[TAPS]; t++) showTapping(N[TAPS_AT] + t * TAP_SIZE);
  for (let j: I = 0; j < N[NODES]; j++) solveNode(N[N[NODES_AT] + j]);
  for (let t: I = 0; t < N[TAPS]; t++) pourTapping(N[TAPS_AT] + t * TAP_SIZE);
  for (let d: I = 0; d < N[DUCTS]; d++) {
    const duct: I = N[DUCTS_AT] + d * D_SIZE;
    fluxes(duct);
    update(duct, dt);
  }
  for (let v: I = 0; v < N[VOLUMES]; v++) {
    const volume: I = N[VOLUMES_AT] + v * VOL_SIZE;
    if (N[volume + VOL_K] >= 0) workCylinder(N[volume + VOL_X], N[volume + VOL_K]);
    advanceVolume(N[volume + VOL_X], dt);
  }
}

function solveNode(node: I): void {
  const ends: I = N[node + COUNT];
  for (let i: I = 0; i < ends; i++) readEnd(N[node + FIRST_END + i]);
  const kind: I = N[node + KIND];
  const first: I = N[node + FIRST_END];
  const more: I = node + FIRST_END + ends;
  if (kind === RESERVOIR) {
    reservoirNode(first, more);
  } else if (kind === CONSTRICTION) {
    constriction(first, N[node + FIRST_END + 1], N[more], N[more + 1]);
  } else if (kind === JUNCTION) {
    junction(node, N[more]);
  } else if (kind === COLLECTOR) {
    collector(node, N[more], N[more + 1], N[more + 2], N[more + 3]);
  } else if (kind === NON_REFLECTING) {
    nonReflecting(first, N[more]);
    receive(first, N[more], 1 + 0 * X[DT]);
  } else if (kind === MOUTH) {
    mouth(first, N[more], N[more + 1], N[more + 2]);
    receive(first, N[more], 1 + 0 * X[DT]);
  } else if (kind === CLOSED) {
    shutEnd(first, N[more]);
  }
  for (let i: I = 0; i < ends; i++) tallyEnd(N[node + FIRST_END + i]);
}

/** An end before a reservoir; its record goes on with: slots, shares, table, phase, roots. */
function reservoirNode(end: I, at: I): void {
  const q: I = N[at];
  const table: I = N[at + 2];
  const root: I = N[at + 4];
  let shareIn: V = 0 * X[DT] + K[N[at + 1]];
  let shareOut: V = 0 * X[DT] + K[N[at + 1] + 1];
  if (table >= 0) {
    const angle: V = wrapped(X[CRANK_MIDDLE] - K[N[at + 3]]);
    const share: V = lookup(table, angle * PER_DEGREE) * K[N[end + E_K] + 1];
    shareIn = share;
    shareOut = share;
  }
  exchange(end, q, root, shareIn, shareOut);
  receive(end, q, shareIn + shareOut);
}

/** Books what an end gives to gas at rest, while it is open to it. */
function receive(end: I, q: I, open: V): void {
  const a: I = N[end + E_X];
  for (let k: I = 0; k < 4; k++) X[q + G_MASS + k] += X[a + F_MASS + k] * X[DT];
  X[q + G_OPENING] += open > 0 ? K[N[end + E_K]] : 0;
}

/** Steps on until a lane has come to its event, or is no number any more; at most `most` steps. */
export function run(most: I): I {
  let steps: I = 0;
  while (steps < most) {
    const left: V = X[CRANK_LEFT];
    const longest: V = K[COURANT] * longestStep() * X[CRANK_RATE];
    // The last two steps share what is left, so that none is tiny.
    const part: V = left > 2 * longest ? longest : left > longest ? 0.5 * left : left;
    const dt: V = part / X[CRANK_RATE];
    X[DT] = dt;
    X[CRANK_STEP] = part;
    X[CRANK_MIDDLE] = wrapped(X[CRANK] + 0.5 * part);
    step();
    steps++;
    X[CRANK] = wrapped(X[CRANK] + part);
    X[CRANK_LEFT] = part === left ? 0 : left - part;
    X[TIME] += dt;
    if (!all(X[CRANK_LEFT] > 0)) break;
  }
  return steps;
}
