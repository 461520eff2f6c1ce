/** A box over the trumpets recommended, worked out when asked. */
import { type AirboxStudy, airboxStudyOf, withLength } from '../../sim/index.ts';
import { URGENCY } from '../compute/pool.ts';
import { askedStudy } from './asked.ts';
import { pool } from './pool.ts';

export const inTheBox = askedStudy<AirboxStudy>(({ scenario, study }, runner, seen, stop) => {
  const { engine, airbox, speeds, target, refine, sweep, lengthUnit } = scenario;
  const fitted = withLength(engine, study.full?.recommended.length ?? engine.intake.trumpet.length);
  const { lengths } = sweep;
  const question = { engine: fitted, airbox, speeds, target, refine, lengths, lengthUnit };
  return airboxStudyOf(question, { ...runner, task: pool.tasks(URGENCY.asked, stop) }, seen);
});
