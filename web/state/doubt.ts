/** How sure the answer is: the spreads of the inputs carried through to the gain, when asked. */
import { type Doubt, doubtOf, USUAL_UNCERTAINTY } from '../../sim/index.ts';
import { askedStudy } from './asked.ts';
import { pool } from './pool.ts';

export const doubt = askedStudy<Doubt>(async ({ scenario, source, study }, runner, seen, stop) => {
  const { uncertainty = USUAL_UNCERTAINTY } = scenario;
  const { full } = study;
  if (!full) throw new Error('the answer itself is not there yet');
  const sample = await pool.doubt(source, uncertainty, stop);
  return doubtOf(full, scenario, sample, runner, seen);
});
