/** Keys of the scenario to vary in place of the length. */
import { z } from 'zod';
import { section } from '../leaf.ts';
import { type Axis, readAxis } from '../range.ts';
import type { Reading } from '../reading.ts';

const PATH = 'sweep.vary';

export const varySection = section('One key to vary.', {
  key: z
    .string()
    .min(1)
    .max(200)
    .meta({ description: 'The key with its sections, for example intake.trumpet.diameter.' }),
  values: z.string().min(1).max(2000).meta({
    description:
      'The values: a list, "42 mm, 45 mm, 48 mm", or a range with its step, "42 mm .. 48 mm / 2 mm".',
  }),
})
  .array()
  .min(1)
  .max(2)
  .meta({ description: 'One key of this file, or two, to vary in place of the length.' })
  .optional();

/** The keys to vary that can be read; each with its values. */
export function variedKeys(reading: Reading): Axis[] {
  return Array.from({ length: reading.rows(PATH) }, (_, row) => axisAt(reading, row)).filter(
    (axis) => axis !== undefined && 'values' in axis,
  ) as Axis[];
}

export function checkVary(reading: Reading): void {
  for (let row = 0; row < reading.rows(PATH); row++) {
    const axis = axisAt(reading, row);
    if (axis === undefined || 'values' in axis) continue;
    const at = axis.problem.includes('no key') ? 'key' : 'values';
    reading.problem(`${PATH}.${row}.${at}`, axis.problem, axis.remedy, axis.limit);
  }
  const [first, second] = [0, 1].map((row) => reading.text(`${PATH}.${row}.key`));
  if (first === undefined || first !== second) return;
  reading.problem(`${PATH}.1.key`, 'the same key is varied twice', 'vary another, or one alone');
}

function axisAt(reading: Reading, row: number) {
  const key = reading.text(`${PATH}.${row}.key`);
  const values = reading.text(`${PATH}.${row}.values`);
  return key && values ? readAxis(reading.schema, key, values) : undefined;
}
