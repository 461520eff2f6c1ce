/** Which keys are varied, with which values. */

import type { VariedKey } from '../../decision/variants.ts';
import { InputError } from '../../errors.ts';
import type { Axis } from '../../scenario/range.ts';
import { readVariedKey } from '../../scenario/readValue.ts';
import { isCondition } from '../../scenario/schema.ts';
import type { Variants } from '../../scenario/variants.ts';
import { refused } from '../options.ts';
import type { Asked, StudyOption } from '../study.ts';

export const VARY_OPTION: StudyOption = {
  flags: '--vary <KEY=VALUES>',
  help: 'vary another key in place of the length; twice for two keys. Values: a list, or FIRST..LAST/STEP, for example intake.trumpet.diameter=42mm..48mm/2mm',
  many: true,
};

/** Keys to vary with their values: as asked, or as the file says; none where neither does. */
export function askedVary({ options, scenario }: Asked): readonly Axis[] {
  const texts = Array.isArray(options.vary) ? options.vary : [];
  if (texts.length === 0) return scenario.sweep.vary ?? [];
  if (texts.length > 2) throw new InputError('--vary: one key or two, not more');
  const axes = texts.map((text) => {
    const axis = readVariedKey(text);
    if ('values' in axis) return axis;
    throw refused(`--vary ${text}`, axis);
  });
  if (axes[0]!.path === axes[1]?.path) {
    throw new InputError(`--vary: ${axes[0]!.path} is varied twice`);
  }
  return axes;
}

/**
 * Refuses keys that change no engine: their rows would all be alike.
 *
 * @param variants one engine a combination of values, the last key running fastest
 * @throws InputError
 */
export function refuseInert(axes: readonly Axis[], variants: Variants): void {
  axes.forEach(({ path, texts }, k) => {
    const stride = axes.slice(k + 1).reduce((size, axis) => size * axis.texts.length, 1);
    const engines = texts.map((_, i) => variants.at(i * stride));
    if (texts.length < 2 || engines.some((engine) => engine !== engines[0])) return;
    const instead = path.startsWith('injectors.')
      ? '; inject --vary tries keys of the injectors'
      : '';
    throw new InputError(`--vary ${path}: changes nothing that is computed here${instead}`);
  });
}

type ConditionedAxis = Axis & Pick<VariedKey, 'condition'>;

/** Keys with what is a condition marked; a condition beside a choice first. */
export function withConditions(axes: readonly Axis[]): ConditionedAxis[] {
  const keys = axes.map(
    (axis): ConditionedAxis => (isCondition(axis.path) ? { ...axis, condition: true } : axis),
  );
  return keys.sort((a, b) => Number(b.condition ?? false) - Number(a.condition ?? false));
}
