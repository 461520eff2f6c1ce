/**
 * Values of one key of the injectors, tried in turn: where they stand, how they spray, when. A key of the outer
 * injector is tried with all fuel from it, one of the others with all fuel from them, any other as the file stages both.
 */
import { type PairedChange, pairedChange } from '../../decision/pairedChange.ts';
import { difference, sprayOf } from '../../decision/placementEffects.ts';
import type { PointOutcome } from '../../sweep/runner.ts';
import type { Placement, Trial } from './ask.ts';

/** What came of one value. */
export interface TriedValue {
  text: string;
  outcomes: readonly PointOutcome[];
  /** Volumetric efficiency against what the file has, on the mean of all speeds [-]. */
  change: PairedChange | undefined;
  /** Fuel lost for good, on the mean and at most [-]. */
  lost: { mean: number; most: number } | undefined;
}

export interface Tried {
  path: string;
  placement: Placement;
  values: readonly TriedValue[];
  /** What the file has lost, on the mean [-]. */
  lostAsFiled: number | undefined;
}

/** Every value against what the file has. */
export function tried(
  { axis, placement }: Trial,
  tables: readonly (readonly PointOutcome[])[],
  filed: readonly PointOutcome[],
  scatter: number,
): Tried {
  const values = axis.texts.map((text, k): TriedValue => {
    const outcomes = tables[k]!;
    const differences = outcomes.map((outcome, i) => difference(outcome, filed[i]!));
    return { text, outcomes, change: pairedChange(differences, scatter), lost: lostOf(outcomes) };
  });
  return { path: axis.path, placement, values, lostAsFiled: lostOf(filed)?.mean };
}

function lostOf(outcomes: readonly PointOutcome[]): TriedValue['lost'] {
  const lost = outcomes.flatMap((outcome) => sprayOf(outcome)?.lost ?? []);
  if (lost.length === 0) return undefined;
  return { mean: lost.reduce((sum, x) => sum + x, 0) / lost.length, most: Math.max(...lost) };
}

/** The value that fills best, where more than what single speeds leave open sets it above what the file has. */
export function bestTried({ values }: Tried): { best: TriedValue; stands: boolean } | undefined {
  const known = values.filter(({ change }) => change !== undefined);
  if (known.length === 0) return undefined;
  const best = known.reduce((a, b) => (b.change!.mean > a.change!.mean ? b : a));
  return { best, stands: best.change!.mean > best.change!.open };
}
