/** Whether and how the doubt is carried through. */
import { type Uncertainty, USUAL_UNCERTAINTY } from '../../scenario/sections/uncertainty.ts';
import { askedValue, textOf } from '../options.ts';
import type { Asked, StudyOption } from '../study.ts';

export const DOUBT_OPTIONS: readonly StudyOption[] = [
  {
    flags: '--uncertainty',
    help: 'carry the spreads of the inputs through: bands, odds, what to measure',
  },
  {
    flags: '--samples <number>',
    help: 'engines drawn from the spreads (default: 64, or as the file says)',
  },
  { flags: '--seed <number>', help: 'whole number that fixes the sample (default: 1)' },
];

/** As asked, or as the file says; undefined where neither does. */
export function askedUncertainty({ options, scenario }: Asked): Uncertainty | undefined {
  const [samples, seed] = [textOf(options, 'samples'), textOf(options, 'seed')];
  if (options.uncertainty !== true && samples === undefined && seed === undefined) {
    return scenario.uncertainty;
  }
  return {
    ...(scenario.uncertainty ?? USUAL_UNCERTAINTY),
    ...(samples !== undefined && {
      samples: askedValue('--samples', 'uncertainty.samples', samples),
    }),
    ...(seed !== undefined && { seed: askedValue('--seed', 'uncertainty.seed', seed) }),
  };
}
