/** Individual bodies beside one throttle and a plenum, of the trumpets recommended, worked out when asked. */
import { type PlenumStudy, plenumStudyOf, withLength } from '../../sim/index.ts';
import { URGENCY } from '../compute/pool.ts';
import { askedStudy } from './asked.ts';
import { pool } from './pool.ts';

export const besidePlenum = askedStudy<PlenumStudy>(({ scenario, study }, runner, seen, stop) => {
  const { engine, plenum, speeds, target, refine, lengthUnit } = scenario;
  const length = study.full?.recommended.length ?? engine.intake.trumpet.length;
  const question = {
    engine: withLength(engine, length),
    plenum,
    speeds,
    target,
    refine,
    lengthUnit,
  };
  return plenumStudyOf(question, { ...runner, task: pool.tasks(URGENCY.asked, stop) }, seen);
});
