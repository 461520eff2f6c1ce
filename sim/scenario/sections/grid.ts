/** A row of numbers to compute at: from, to and step, or a list. */

import type { DimensionName } from '../dimension.ts';
import { type LeafOptions, maybe, quantity, section } from '../leaf.ts';
import type { Reading } from '../reading.ts';
import { checkRising } from './rows.ts';

/** A range counts as whole steps when it misses by less than this share of a step [-]. */
const WHOLE = 1e-6;

export function gridSection(
  description: string,
  dimension: DimensionName,
  options: Pick<LeafOptions, 'limits' | 'usual'> & { step: readonly [string, string] },
) {
  const { step, ...range } = options;
  const end = { ...range, optional: true } as const;
  return section(`${description} Give from, to and step; or a list under at.`, {
    from: maybe(dimension, 'First value.', end),
    to: maybe(dimension, 'Last value.', end),
    step: maybe(dimension, 'Distance between values.', { limits: step, optional: true }),
    at: quantity(dimension, 'One value.', range)
      .array()
      .min(1)
      .max(400)
      .meta({ description: 'The values one by one, rising.' })
      .optional(),
  });
}

export function checkGrid(reading: Reading, path: string): void {
  if (!reading.hasSection(path)) return;
  const keys = ['from', 'to', 'step'];
  const given = keys.filter((key) => reading.has(`${path}.${key}`));
  if (reading.has(`${path}.at`)) {
    for (const key of given) {
      reading.problem(
        `${path}.${key}`,
        'the values are given twice',
        'keep the list under at, or from, to and step',
      );
    }
    checkRising(reading, `${path}.at`, '', reading.column(`${path}.at`));
    return;
  }
  for (const key of keys.filter((other) => !given.includes(other))) {
    reading.problem(path, `${key} is missing`, 'give from, to and step; or a list under at');
  }
  checkSteps(reading, path);
}

function checkSteps(reading: Reading, path: string): void {
  const [from, to, step] = ['from', 'to', 'step'].map((key) => reading.given(`${path}.${key}`));
  if (from === undefined || to === undefined || step === undefined) return;
  const steps = (to - from) / step;
  if (steps < 0) {
    reading.problem(`${path}.to`, 'the range runs backwards', 'give the lower value under from');
  } else if (Math.abs(steps - Math.round(steps)) > WHOLE) {
    reading.problem(
      `${path}.step`,
      `the range is ${steps.toFixed(2)} steps long`,
      'choose a step that divides the range, or list the values under at',
      'a whole number of steps',
    );
  }
}

/** The values of a grid, or none while it is not whole. */
export function gridValues(reading: Reading, path: string): number[] {
  if (reading.has(`${path}.at`)) return reading.column(`${path}.at`);
  const [from, to, step] = ['from', 'to', 'step'].map((key) => reading.given(`${path}.${key}`));
  if (from === undefined || to === undefined || step === undefined) return [];
  const steps = Math.round((to - from) / step);
  if (steps < 0 || steps > 10_000) return [];
  return Array.from({ length: steps + 1 }, (_, i) => Number((from + i * step).toPrecision(12)));
}
