/** How well the points of a study settled and added up. */
import type { PointResult } from '../engine/point.ts';
import { isFailure, type PointOutcome } from '../sweep/runner.ts';
import { plain } from './numbers.ts';

interface AuditSummary {
  mass_error_max: number | null;
  energy_error_max: number | null;
  /**
   * Where there are injectors, over the fuel injected: what films took up more than they gave off in the last
   * cycle, or less; and by how much they were set ahead before it, nothing where the point has settled.
   */
  film_imbalance_max?: number | null;
  film_adjusted_max?: number | null;
}

/** The worst audit of all points. */
export function auditOf(outcomes: readonly PointOutcome[]): AuditSummary {
  const points = outcomes.filter((one): one is PointResult => !isFailure(one));
  const worst = (figure: (point: PointResult) => number) =>
    plain(points.reduce((most, point) => Math.max(most, figure(point)), Number.NEGATIVE_INFINITY));
  return {
    mass_error_max: worst((point) => point.audit.massError),
    energy_error_max: worst((point) => point.audit.energyError),
    ...(points.some(({ spray }) => spray) && {
      film_imbalance_max: worst(({ spray }) => spray?.filmImbalance ?? 0),
      film_adjusted_max: worst(({ spray }) => spray?.filmAdjusted ?? 0),
    }),
  };
}

/** Whether every point has settled. */
export function allSettled(outcomes: readonly PointOutcome[]): boolean {
  return outcomes.every((outcome) => !isFailure(outcome) && outcome.settled);
}
