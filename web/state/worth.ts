/** Whether individual bodies pay on this engine, worked out when asked. */
import { type WorthStudy, worthStudyOf } from '../../sim/index.ts';
import { URGENCY } from '../compute/pool.ts';
import { askedStudy } from './asked.ts';
import { pool } from './pool.ts';

export const isItWorth = askedStudy<WorthStudy>(({ scenario, source }, runner, seen, stop) => {
  const asked = { scenario, text: source.text, file: source.file };
  return worthStudyOf(asked, { ...runner, task: pool.tasks(URGENCY.asked, stop) }, seen);
});
