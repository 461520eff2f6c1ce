/** A row of numbers to compute at: from, to and step, or a list. */
import type { DimensionName } from '../dimension.ts';
import {
  type FormField,
  type LeafOptions,
  list,
  maybe,
  oneOf,
  optional,
  quantity,
  section,
} from '../key.ts';
import { numbers, type ViewOf } from '../view.ts';

/** A range counts as whole steps when it misses by less than this share of a step [-]. */
const WHOLE = 1e-6;

export function gridSection(
  description: string,
  dimension: DimensionName,
  options: Pick<LeafOptions, 'limits' | 'usual'> & {
    step: readonly [string, string];
    /** What the step is where it may be left out; it must be given where absent. */
    coarsest?: string;
    /** Labels of from, to and step in a form. */
    form?: Pick<FormField, 'group'> & { labels: readonly [string, string, string] };
  },
) {
  const { step, form, coarsest, ...range } = options;
  const [from, to, by] = form
    ? form.labels.map((label) => ({ form: { group: form.group, label } }))
    : [];
  return section(
    `${description} Give ${coarsest ? 'from and to' : 'from, to and step'}; or a list under at.`,
    {
      from: maybe(dimension, 'First value.', { ...range, ...from }),
      to: maybe(dimension, 'Last value.', { ...range, ...to }),
      step: maybe(dimension, coarsest ?? 'Distance between values.', { limits: step, ...by }),
      at: optional(
        list(quantity(dimension, 'One value.', range), 'The values one by one, rising.', {
          most: 400,
          rising: '',
        }),
      ),
    },
    oneOf(
      'the range of values',
      [['at'], coarsest ? ['from', 'to'] : ['from', 'to', 'step']],
      coarsest
        ? 'give from and to, with a step if you like; or a list under at'
        : 'give from, to and step; or a list under at',
    ),
  );
}

export type GridView = ViewOf<ReturnType<typeof gridSection>>;

/** A range must be a whole number of steps. */
export function checkGrid({ at, from, to, step }: GridView): void {
  if (at.present && step.present) {
    step.problem('a list has no step', 'leave out step, or give from and to in place of the list');
  }
  const steps = (to.given! - from.given!) / (step.given ?? usualStep(to.given! - from.given!));
  if (steps < 0) {
    to.problem('the range runs backwards', 'give the lower value under from');
  } else if (Math.abs(steps - Math.round(steps)) > WHOLE) {
    step.problem(
      `the range is ${steps.toFixed(2)} steps long`,
      'choose a step that divides the range, or list the values under at',
      'a whole number of steps',
    );
  }
}

/** The values of a grid, or none while it is not whole; worked out once for all engines of a file. */
export function gridValues(grid: GridView): readonly number[] {
  const { data } = grid.here;
  if (!(data instanceof Object)) return [];
  const values = VALUES.get(data) ?? freshValues(grid);
  VALUES.set(data, values);
  return values;
}

const VALUES = new WeakMap<object, readonly number[]>();

function freshValues({ at, from, to, step }: GridView): readonly number[] {
  if (at.present) return numbers(at.rows);
  if (from.given === undefined || to.given === undefined) return [];
  const [first, by] = [from.given, step.given ?? usualStep(to.given - from.given)];
  const steps = Math.round((to.given - first) / by);
  if (steps < 0 || steps > 10_000) return [];
  return Array.from({ length: steps + 1 }, (_, i) => Number((first + i * by).toPrecision(12)));
}

/** How many steps a range has where none is given; the first that makes round steps. */
const USUAL_STEPS = [14, 15, 13, 16, 12];
const ROUND_STEPS = [100, 50, 25, 10, 5, 1];

/** A step for a range that is refined afterwards. */
function usualStep(range: number): number {
  const whole = (x: number) => Math.abs(x - Math.round(x)) < WHOLE;
  const round = ROUND_STEPS.flatMap((by) => USUAL_STEPS.filter((n) => whole(range / n / by)));
  return Math.abs(range) / (round[0] ?? USUAL_STEPS[0]!);
}
