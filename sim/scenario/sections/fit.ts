/** Room for the trumpets, the shelf they come from, and the saw. */

import type { Fit } from '../../decision/shelf.ts';
import { LEAST_CLEARANCE } from '../../loss/facingWall.ts';
import { choice, list, maybe, optional, quantity, section } from '../key.ts';
import { quantityToText } from '../quantity.ts';
import type { ScenarioView } from '../schema.ts';
import { numbers } from '../view.ts';
import { diameterAt } from './pipe.ts';

const LENGTH = { limits: ['5 mm', '2 m'] } as const;

export const fitSection = optional(
  section('Room for the trumpets, and what can be bought and cut.', {
    room: maybe(
      'length',
      'From the face of the throttle body to the wall in front of the mouths: bonnet, wall of the airbox, or a filter, which then counts as a wall. The mouth feels it: entry loss and end correction grow as it nears.',
      { limits: ['20 mm', '3 m'], form: { group: 'Lengths to try', label: 'Body face to wall' } },
    ),
    clearance: maybe('length', 'Least distance to keep between rim and wall.', {
      limits: ['0 mm', '500 mm'],
      absent: { value: '10 mm', why: 'an engine rocks on its mounts; common practice, no source' },
    }),
    longest: maybe('length', 'Longest trumpet that may be fitted, for whatever reason.', {
      ...LENGTH,
      form: { group: 'Lengths to try', label: 'Longest that fits' },
    }),
    shelf: optional(
      list(
        quantity('length', 'One length on sale, rim plane to body face.', {
          ...LENGTH,
          form: { group: 'Lengths to try', label: 'On the shelf' },
        }),
        'Lengths on sale, rising.',
        { most: 100, rising: '' },
      ),
    ),
    cut: choice(['yes', 'no'], 'Whether a trumpet may be cut, at the end of the throttle body.', {
      value: 'yes',
      why: 'common practice, no source',
    }),
    tolerance: maybe('length', 'How far a cut may miss either way.', {
      limits: ['0 mm', '20 mm'],
      absent: { value: '0.5 mm', why: 'saw and file against a rule; common practice, no source' },
    }),
    within: maybe('ratio', 'Loss against the best length that still counts as good enough.', {
      example: '1 %',
      limits: ['0', '0.5'],
      absent: { value: '1 %', why: 'what a dynamometer just shows; common practice, no source' },
    }),
  }),
);

export function checkFit({ fit: { room }, intake: { trumpet } }: ScenarioView): void {
  const gap = LEAST_CLEARANCE * diameterAt(trumpet, 'AirEnd')!;
  const fitted = trumpet.length.given!;
  if (!(fitted > room.given! - gap)) return;
  room.problem(
    'the trumpets fitted now reach the wall',
    'measure from the body face, as the trumpets are; nearer to the wall than a tenth of the bore nothing is known',
    `at least ${quantityToText(fitted + gap, 'length')}`,
  );
}

/** Longest trumpet that may be fitted [m]. */
export function longestTrumpet({ fit, intake }: ScenarioView): number {
  const bore = diameterAt(intake.trumpet, 'AirEnd') ?? 0;
  const least = Math.max(fit.clearance.assumed, LEAST_CLEARANCE * bore);
  const infinite = Number.POSITIVE_INFINITY;
  return Math.min(fit.longest.given ?? infinite, (fit.room.given ?? infinite) - least);
}

export function resolveFit(view: ScenarioView): Fit | undefined {
  const { fit } = view;
  if (!fit.here.present) return undefined;
  if (fit.room.present) fit.clearance.take();
  const shelf = numbers(fit.shelf.rows);
  const longest = longestTrumpet(view);
  return {
    ...(Number.isFinite(longest) && { longest }),
    shelf,
    cut: shelf.length === 0 || fit.cut.take() === 'yes',
    tolerance: fit.tolerance.take(),
    withinPercent: Number((100 * fit.within.take()).toPrecision(12)),
  };
}
