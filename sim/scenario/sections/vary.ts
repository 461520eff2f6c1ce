/** Keys of the scenario to vary in place of the length. */
import { list, optional, section, text } from '../key.ts';
import { type Axis, type RangeProblem, readAxis } from '../range.ts';
import type { ScenarioView } from '../schema.ts';

const varied = section('One key to vary.', {
  key: text('The key with its sections, for example intake.trumpet.diameter.', 200),
  values: text(
    'The values: a list, "42 mm, 45 mm, 48 mm", or a range with its step, "42 mm .. 48 mm / 2 mm".',
    2000,
  ),
});

export const varySection = optional(
  list(varied, 'One key of this file, or two, to vary in place of the length.', { most: 2 }),
);

/** The keys to vary that can be read; each with its values. */
export function variedKeys(view: ScenarioView): Axis[] {
  return axesOf(view).filter((axis) => axis !== undefined && 'values' in axis) as Axis[];
}

export function checkVary(view: ScenarioView): void {
  const { rows } = view.sweep.vary;
  for (const [i, axis] of axesOf(view).entries()) {
    if (axis === undefined || 'values' in axis) continue;
    const at = axis.problem.includes('no key') ? rows[i]!.key : rows[i]!.values;
    at.problem(axis.problem, axis.remedy, axis.limit);
  }
  const [first, second] = rows;
  if (second?.key.given === undefined || second.key.given !== first?.key.given) return;
  second.key.problem('the same key is varied twice', 'vary another, or one alone');
}

/** Axes by their row of the file, so that each is read once for all engines of a file. */
const AXES = new WeakMap<object, Axis | RangeProblem>();

function axesOf({ here: root, sweep: { vary } }: ScenarioView) {
  return vary.rows.map(({ here: { data }, key, values }) => {
    if (!key.given || !values.given) return undefined;
    const axis = AXES.get(data as object) ?? readAxis(root.key, key.given, values.given);
    AXES.set(data as object, axis);
    return axis;
  });
}
