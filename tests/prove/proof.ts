/** Every published check, run and set out. */

import { atmosphere } from './atmosphere.ts';
import { type Group, type Outcome, outcomeOf } from './check.ts';
import { combustion } from './combustion.ts';
import { entryLoss } from './entryLoss.ts';
import { fuel } from './fuel.ts';
import { gasDynamics } from './gasDynamics.ts';
import { pipeAcoustics } from './pipeAcoustics.ts';
import { throttle } from './throttle.ts';
import { tuning } from './tuning.ts';
import { valveFlow } from './valveFlow.ts';

export const GROUPS: readonly Group[] = [
  gasDynamics,
  pipeAcoustics,
  entryLoss,
  valveFlow,
  tuning,
  combustion,
  atmosphere,
  fuel,
  throttle,
];

/** Runs the checks one after another; those marked slow only where asked for. */
export function prove(slow: boolean, told: (outcome: Outcome) => void = () => {}): Outcome[] {
  return GROUPS.flatMap(({ name, checks }) =>
    checks
      .filter((check) => slow || !check.slow)
      .map((check) => {
        const outcome = outcomeOf(name, check);
        told(outcome);
        return outcome;
      }),
  );
}
