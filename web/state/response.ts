/** How quickly torque follows the plates at the lowest speed, worked out when asked. */
import { type ResponseStudy, responseStudyOf, usualResponse } from '../../sim/index.ts';
import { URGENCY } from '../compute/pool.ts';
import { askedStudy } from './asked.ts';
import { pool } from './pool.ts';

export const following = askedStudy<ResponseStudy>(({ scenario }, runner, seen, stop) => {
  const question = usualResponse(scenario, scenario.speeds[0]!);
  return responseStudyOf(question, { ...runner, task: pool.tasks(URGENCY.asked, stop) }, seen);
});
