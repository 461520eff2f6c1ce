/** What failed and what did not settle, in words. */
import { rpm } from '../report/figures.ts';
import { counted, listed } from '../report/numbers.ts';
import { isFailure, type PointOutcome } from '../sweep/runner.ts';

/** Curves under the names by which a reader knows them. */
export function pointCautions(
  curves: readonly { name: string; outcomes: readonly PointOutcome[] }[],
): string[] {
  const points = curves.flatMap(({ name, outcomes }) =>
    outcomes.map((outcome) => ({ place: `${name} at ${rpm(outcome.speed)}`, outcome })),
  );
  const failed = points.filter(({ outcome }) => isFailure(outcome));
  const restless = points.filter(({ outcome }) => !isFailure(outcome) && !outcome.settled);
  const places = (of: typeof points) => listed(of.map(({ place }) => place));
  const first = failed[0]?.outcome;
  return [
    ...(first && isFailure(first)
      ? [
          `${counted(failed.length, 'point')} of ${points.length} failed and count for nothing: ` +
            `${places(failed)}. The first: ${first.failure}.`,
        ]
      : []),
    ...(restless.length > 0
      ? [
          `${counted(restless.length, 'point')} of ${points.length} did not settle, so the figures ` +
            `there are no answer yet: ${places(restless)}. Raise ` +
            'numerics.maximumCycles to see whether they do.',
        ]
      : []),
  ];
}
