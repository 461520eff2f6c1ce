/** Room for the trumpets, the shelf they come from, and the saw. */
import { LEAST_CLEARANCE } from '../../loss/facingWall.ts';
import type { Fit } from '../../decision/shelf.ts';
import { choice, maybe, quantity, section } from '../leaf.ts';
import { quantityToText } from '../quantity.ts';
import type { Reading } from '../reading.ts';
import { diameterAt } from './pipe.ts';
import { checkRising } from './rows.ts';

const FIT = 'fit';
const LENGTH = { limits: ['5 mm', '2 m'] } as const;

export const fitSection = section('Room for the trumpets, and what can be bought and cut.', {
  room: maybe(
    'length',
    'From the face of the throttle body to the wall in front of the mouths: bonnet, wall of the airbox, or a filter, which then counts as a wall. The mouth feels it: entry loss and end correction grow as it nears.',
    { limits: ['20 mm', '3 m'], optional: true },
  ),
  clearance: maybe('length', 'Least distance to keep between rim and wall.', {
    limits: ['0 mm', '500 mm'],
    absent: { value: '10 mm', why: 'an engine rocks on its mounts; common practice, no source' },
  }),
  longest: maybe('length', 'Longest trumpet that may be fitted, for whatever reason.', {
    ...LENGTH,
    optional: true,
  }),
  shelf: quantity('length', 'One length on sale, rim plane to body face.', LENGTH)
    .array()
    .min(1)
    .max(100)
    .meta({ description: 'Lengths on sale, rising.' })
    .optional(),
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
}).optional();

export function checkFit(reading: Reading): void {
  checkRising(reading, `${FIT}.shelf`, '', reading.column(`${FIT}.shelf`));
  const bore = diameterAt(reading, 'intake.trumpet', 'AirEnd');
  const room = reading.given(`${FIT}.room`);
  const fitted = reading.given('intake.trumpet.length');
  if (room === undefined || bore === undefined || fitted === undefined) return;
  const most = room - LEAST_CLEARANCE * bore;
  if (fitted > most) {
    reading.problem(
      `${FIT}.room`,
      'the trumpets fitted now reach the wall',
      'measure from the body face, as the trumpets are; nearer to the wall than a tenth of the bore nothing is known',
      `at least ${quantityToText(fitted + LEAST_CLEARANCE * bore, 'length')}`,
    );
  }
}

/** Longest trumpet that may be fitted [m]. */
export function longestTrumpet(reading: Reading): number {
  const room = reading.given(`${FIT}.room`) ?? Number.POSITIVE_INFINITY;
  const bore = diameterAt(reading, 'intake.trumpet', 'AirEnd') ?? 0;
  const clearance = reading.given(`${FIT}.clearance`) ?? DEFAULT_CLEARANCE;
  const least = Math.max(clearance, LEAST_CLEARANCE * bore);
  return Math.min(reading.given(`${FIT}.longest`) ?? Number.POSITIVE_INFINITY, room - least);
}

/** What `clearance` defaults to [m]; resolving lists it. */
const DEFAULT_CLEARANCE = 0.01;

export function resolveFit(reading: Reading): Fit | undefined {
  if (!reading.has(FIT)) return undefined;
  if (reading.has(`${FIT}.room`)) reading.take(`${FIT}.clearance`);
  const shelf = reading.column(`${FIT}.shelf`);
  const longest = longestTrumpet(reading);
  return {
    ...(Number.isFinite(longest) && { longest }),
    shelf,
    cut: shelf.length === 0 || reading.choose(`${FIT}.cut`) === 'yes',
    tolerance: reading.take(`${FIT}.tolerance`),
    withinPercent: Number((100 * reading.take(`${FIT}.within`)).toPrecision(12)),
  };
}

/** Distance of the wall from the body face [m]; undefined where none is given. */
export function facingWall(reading: Reading): number | undefined {
  return reading.given(`${FIT}.room`);
}
