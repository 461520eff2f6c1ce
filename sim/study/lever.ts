/** What angles of a slide or barrel are of. */
import { throttleOf } from '../loss/throttles.ts';
import type { EngineSpecification } from '../specification.ts';

/** Nothing of a butterfly, whose plate has the angle itself. */
export function leverNotes({ intake: { throttle } }: EngineSpecification): string[] {
  const { kind = 'butterfly', closedAngle } = throttle;
  if (kind === 'butterfly') return [];
  const { noun } = throttleOf(throttle);
  return [
    `Angles are of the ${noun}'s lever: shut at ${closedAngle} deg, wide open at 90 deg, its travel in proportion between.`,
  ];
}
