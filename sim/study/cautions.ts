/** What failed, what did not settle, and what no engine does, in words. */

import { POSSIBLE_FILLING, strangeFillings } from '../decision/filling.ts';
import { log } from '../elementary/powers.ts';
import { rpm } from '../report/figures.ts';
import { counted, listed } from '../report/numbers.ts';
import type { EngineSpecification } from '../specification.ts';
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
  const careful = points.filter(({ outcome }) => !isFailure(outcome) && outcome.careful);
  const places = (of: typeof points) => listed([...new Set(of.map(({ place }) => place))]);
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
    ...(careful.length > 0
      ? [
          `${counted(careful.length, 'point')} of ${points.length} failed as asked and ${careful.length > 1 ? 'were' : 'was'} ` +
            `computed with smaller steps and the strongest limiter: ${places(careful)}. Fronts are blurred more there.`,
        ]
      : []),
  ];
}

/** Says where the engine catches less or more air than engines do; the file is then in doubt. */
export function fillingCautions(
  engine: EngineSpecification,
  outcomes: readonly PointOutcome[],
): string[] {
  const strange = strangeFillings(engine, outcomes);
  const [first] = strange;
  if (!first) return [];
  const worst = strange.reduce((far, one) => {
    return Math.abs(log(one.filling)) > Math.abs(log(far.filling)) ? one : far;
  }, first);
  const [low, high] = POSSIBLE_FILLING;
  return [
    `At ${counted(strange.length, 'point')} the air caught is not what engines catch, ${low} to ${high} of a ` +
      `cylinder full of the air they breathe: ${worst.filling.toFixed(2)} at ${rpm(worst.speed)}. ` +
      'Check the file before anything is cut: cam timing, units and decimal points first.',
  ];
}
