/**
 * What joins duct ends, as data: its kind, its ends, and what its kind needs. How each is solved stands
 * in sim/step, a file a kind.
 */

import { CYCLE } from '../crankAngle.ts';
import { square } from '../elementary/powers.ts';
import { dischargeFromLoss } from '../loss/entryLoss.ts';
import type { MouthImpedance } from '../loss/mouthRadiation.ts';
import { END_SLOTS, M_SIZE, REC_AT, REC_SIZE, T_AREA, T_LEVEL, T_SIZE } from '../step/layout.ts';
import { type DuctEnd, type EndFlow, flowAt } from './ductEnd.ts';
import type { OpenAir, Tapping, Volume } from './reservoir.ts';

/** Numbers of a lane that belong to a part. */
export interface Slots {
  slots: Float64Array;
}

/** What an end can open into. */
export type StillGas = OpenAir | Volume | Tapping;

export type Node =
  | { kind: 'closed'; ends: readonly [DuctEnd]; roots: Slots }
  | {
      kind: 'reservoir';
      ends: readonly [DuctEnd];
      reservoir: StillGas;
      /** Effective over end area for flow into the duct and out of it [-]. */
      shares: readonly [into: number, out: number];
      /** Effective area [m^2] against crank angle, eight entries a degree; in place of the shares. */
      areas?: Float64Array;
      /** How far the crank angle of the table lags the engine's [deg]. */
      phase: number;
      roots: Slots;
    }
  | {
      kind: 'constriction';
      ends: readonly [DuctEnd, DuctEnd];
      throat: Slots;
      /** How the throat grows as gas expands through it (loss/throttlePlate.ts). */
      growth?: Float64Array;
    }
  | { kind: 'junction'; ends: readonly DuctEnd[]; root: Slots }
  | Collector
  | { kind: 'nonReflecting'; ends: readonly [DuctEnd]; reservoir: OpenAir | Volume }
  | {
      kind: 'mouth';
      ends: readonly [DuctEnd];
      reservoir: OpenAir | Volume;
      impedance: MouthImpedance;
      /** Effective over end area for flow into the duct [-]. */
      share: number;
      state: Slots;
    };

export interface Collector {
  kind: 'collector';
  ends: readonly DuctEnd[];
  /** The ends that stand for pipes that are not solved. */
  echoes: readonly Echo[];
  root: Slots;
  record: Slots;
}

const slots = (size: number): Slots => ({ slots: new Float64Array(size) });

/** A rigid wall across a duct. */
export function closedEnd(end: DuctEnd): Node {
  return { kind: 'closed', ends: [end], roots: slots(2) };
}

/** A duct that opens into gas at rest. Losses in dynamic heads at the end's own area [-]. */
export function openEnd(end: DuctEnd, reservoir: StillGas, entryLoss = 0, exitLoss = 0): Node {
  const shares = [dischargeFromLoss(entryLoss), dischargeFromLoss(exitLoss)] as const;
  return { kind: 'reservoir', ends: [end], reservoir, shares, phase: 0, roots: slots(2) };
}

/** A duct's end behind a hole of effective area [m^2], alike either way. */
export function orifice(end: DuctEnd, reservoir: StillGas, effectiveArea: number): Node {
  const share = effectiveArea / end.area;
  return {
    kind: 'reservoir',
    ends: [end],
    reservoir,
    shares: [share, share],
    phase: 0,
    roots: slots(2),
  };
}

/** A duct that opens into free air, whose inertia and radiation it feels; entry loss in heads of the end [-]. */
export function mouth(
  end: DuctEnd,
  reservoir: OpenAir | Volume,
  impedance: MouthImpedance,
  entryLoss = 0,
): Node {
  const share = dischargeFromLoss(entryLoss);
  return { kind: 'mouth', ends: [end], reservoir, impedance, share, state: slots(M_SIZE) };
}

/** Entries per degree; a valve's area between them is straight to within 1e-6 of its greatest. */
const PER_DEGREE = 8;

/** A valve, orifice or nozzle whose effective area [m^2] follows the crank angle less a phase [deg]. */
export function valve(
  end: DuctEnd,
  reservoir: StillGas,
  effectiveArea: (crankAngle: number) => number,
  phase = 0,
): Node {
  const areas = Float64Array.from({ length: CYCLE * PER_DEGREE + 2 }, (_, i) =>
    effectiveArea((i / PER_DEGREE) % CYCLE),
  );
  return {
    kind: 'reservoir',
    ends: [end],
    reservoir,
    shares: [0, 0],
    areas,
    phase,
    roots: slots(2),
  };
}

/**
 * Two ends with a throat between them, of effective area [m^2] from the first to the second and back,
 * in slow flow; `growth` says how much more it is in faster flow.
 */
export function constriction(
  first: DuctEnd,
  second: DuctEnd,
  areas: { forward: number; backward: number },
  growth?: Float64Array,
): Node {
  const throat = slots(T_SIZE);
  throat.slots.set([areas.forward, areas.backward], T_AREA);
  throat.slots.fill(1, T_LEVEL);
  return { kind: 'constriction', ends: [first, second], throat, ...(growth && { growth }) };
}

/**
 * A sudden change of area between two ducts. Into the wider duct the jet mixes out and part of its
 * head returns; into the narrower one it contracts first:
 *
 *   K = (1 - A1/A2)^2       widening, dynamic heads of the narrow duct (Borda-Carnot)
 *   K = 0.5 (1 - A1/A2)     narrowing, dynamic heads of the narrow duct
 *
 * A constriction whose effective area meets that loss. Loss laws of slow flow.
 * Source: Idelchik, Handbook of Hydraulic Resistance, diagrams 4-1 and 4-9 (from memory).
 */
export function areaStep(first: DuctEnd, second: DuctEnd): Node {
  const forward = stepArea(first.area, second.area);
  const backward = stepArea(second.area, first.area);
  return constriction(first, second, { forward, backward });
}

/** Effective throat area [m^2] for flow from area `from` into area `to`. */
function stepArea(from: number, to: number): number {
  if (from >= to) return to / Math.sqrt(1 + 0.5 * (1 - to / from));
  const heads = square(1 - from / to);
  return to / Math.sqrt(1 + heads * square(to / from));
}

/** Ends that meet at one pressure, without volume. */
export function junction(ends: readonly DuctEnd[]): Node {
  return { kind: 'junction', ends, root: slots(1) };
}

/** The end of a pipe that is not solved. */
export class Echo {
  slots = new Float64Array(END_SLOTS + 2);
  readonly area: number;
  /** How far behind the recorded pipe this one fires [deg]. */
  readonly delay: number;

  constructor(area: number, delay: number) {
    this.area = area;
    this.delay = delay;
  }

  /** What it gave to the joint since the last reset: mass [kg], energy [J]. */
  get given(): { mass: number; energy: number } {
    const [mass, energy] = this.slots.subarray(END_SLOTS);
    return { mass: mass!, energy: energy! };
  }

  resetLedger(): void {
    this.slots.fill(0, END_SLOTS);
  }

  /** As the last step found it. */
  get flow(): EndFlow {
    return flowAt(this.slots, 8);
  }
}

/**
 * A joint of like pipes, of which `pipe` is solved and the others echo it, each firing so many degrees
 * behind it, with any other ends that meet there.
 */
export function collector(
  pipe: DuctEnd,
  delays: readonly number[],
  others: readonly DuctEnd[],
): Collector {
  const echoes = delays.map((delay) => new Echo(pipe.area, delay));
  const record = slots(REC_SIZE);
  record.slots[REC_AT] = -1;
  return { kind: 'collector', ends: [pipe, ...others], echoes, root: slots(1), record };
}

/** An end that lets outgoing waves pass. */
export function nonReflecting(end: DuctEnd, reservoir: OpenAir | Volume): Node {
  return { kind: 'nonReflecting', ends: [end], reservoir };
}
