/** How sure the answer is: the spreads of the inputs carried through to the gain, when asked. */
import { type Doubt, USUAL_UNCERTAINTY, uncertaintyStudy } from '../../sim/index.ts';
import { askedStudy } from './asked.ts';
import { pool } from './pool.ts';

export const doubt = askedStudy<Doubt>(async ({ scenario, source, study }, runner, seen, stop) => {
  const { speeds, target, uncertainty = USUAL_UNCERTAINTY } = scenario;
  const { full } = study;
  if (!full) throw new Error('the answer itself is not there yet');
  const { inputs, samples, seed } = await pool.doubt(source, uncertainty, stop);
  const question = {
    inputs: inputs.map(({ path }) => path),
    samples,
    recommended: full.recommended.length,
    baseline: full.baseline.length,
    speeds,
    target,
  };
  return { study: await uncertaintyStudy(question, runner, seen), inputs, seed };
});
