/** What one plate that is off does, when asked. */
import { type SpreadStudy, spreadStudy } from '../../sim/index.ts';
import { URGENCY } from '../compute/pool.ts';
import { askedStudy } from './asked.ts';
import { pool } from './pool.ts';

export const plateSpread = askedStudy<SpreadStudy>(({ scenario }, runner, seen, stop) =>
  spreadStudy(scenario, { ...runner, task: pool.tasks(URGENCY.asked, stop) }, seen),
);
