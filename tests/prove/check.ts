/** One published value beside ours. Checks are data with a function that computes our value. */
import { SOURCES, type SourceName } from './sources.ts';

/** How far ours may lie from the published value. */
export type Tolerance = { relative: number } | { absolute: number };

/**
 * The gas-dynamic solver; a formula worked out; a number of the same source that this program keeps, which
 * shows no more than that it was copied well.
 */
export type By = 'solver' | 'formula' | 'copy';

export interface Check {
  /** What is compared, in words, with its conditions and unit. */
  what: string;
  source: SourceName;
  /** A value, or a band [low, high] where the source gives no more. */
  published: number | readonly [low: number, high: number];
  tolerance: Tolerance;
  /** Our value. */
  run: () => number;
  /** How ours comes about; by a formula where it is left out. */
  by?: By;
  /** Whether it takes more than a few seconds. */
  slow?: true;
}

/** Checks of one field of physics. */
export interface Group {
  name: string;
  checks: readonly Check[];
}

/** A check with its outcome. */
export interface Outcome {
  group: string;
  what: string;
  source: string;
  by: By;
  published: number | readonly [number, number];
  ours: number;
  /** Ours less the published value, or less the nearer edge of the band (0 within it). */
  difference: number;
  tolerance: Tolerance;
  holds: boolean;
}

/** Runs one check. A computation that throws is a check that fails, with no value of ours. */
export function outcomeOf(group: string, check: Check): Outcome {
  const { what, source, published, tolerance, by = 'formula' } = check;
  const ours = computed(check);
  const nearest = typeof published === 'number' ? published : held(ours, published);
  const difference = ours - nearest;
  const most =
    'absolute' in tolerance ? tolerance.absolute : tolerance.relative * Math.abs(nearest);
  // Two roundings: a value printed at the very edge of its tolerance holds.
  const holds = Math.abs(difference) <= most * (1 + 1e-9);
  return {
    group,
    what,
    source: SOURCES[source],
    by,
    published,
    ours,
    difference,
    tolerance,
    holds,
  };
}

function computed(check: Check): number {
  try {
    return check.run();
  } catch {
    return Number.NaN;
  }
}

function held(x: number, [low, high]: readonly [number, number]): number {
  return Math.min(Math.max(x, low), high);
}

/** A computation that several checks share, run when the first of them asks. */
export function once<T>(compute: () => T): () => T {
  let kept: { value: T } | undefined;
  return () => {
    kept ??= { value: compute() };
    return kept.value;
  };
}

export const relative = (share: number): Tolerance => ({ relative: share });
export const absolute = (most: number): Tolerance => ({ absolute: most });
/** Checks whose values all come about in one way. */
export const allBy = (by: By, checks: readonly Check[]): Check[] =>
  checks.map((check) => ({ ...check, by }));
