/** Which sensor tells the air, on the trumpets recommended, worked out when asked. */
import { type MeterStudy, meterQuestion, meterStudyOf } from '../../sim/index.ts';
import { URGENCY } from '../compute/pool.ts';
import { askedStudy } from './asked.ts';
import { pool } from './pool.ts';

export const metering = askedStudy<MeterStudy>(({ scenario, study }, runner, seen, stop) => {
  const length = study.full?.recommended.length ?? scenario.engine.intake.trumpet.length;
  const question = meterQuestion(scenario, length);
  return meterStudyOf(question, { ...runner, task: pool.tasks(URGENCY.asked, stop) }, seen);
});
