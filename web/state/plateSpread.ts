/** What one plate that is off does, when asked. */
import { type SpreadStudy, spreadStudy } from '../../sim/index.ts';
import { askedStudy } from './asked.ts';

export const plateSpread = askedStudy<SpreadStudy>(({ scenario }, runner, seen) =>
  spreadStudy(scenario, runner, seen),
);
