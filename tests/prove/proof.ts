/** Every published check, run and set out. */

import { atmosphere } from './atmosphere.ts';
import { type Group, type Outcome, outcomeOf } from './check.ts';
import { combustion } from './combustion.ts';
import { entryLoss } from './entryLoss.ts';
import { filling } from './filling.ts';
import { flowMeter } from './flowMeter.ts';
import { fuel } from './fuel.ts';
import { gasDynamics } from './gasDynamics.ts';
import { idleAir } from './idleAir.ts';
import { independent } from './independent.ts';
import { linkage } from './linkage.ts';
import { meanValue } from './meanValue.ts';
import { mixture } from './mixture.ts';
import { pipeAcoustics } from './pipeAcoustics.ts';
import { pressureLines } from './pressureLines.ts';
import { sound } from './sound.ts';
import { throttle } from './throttle.ts';
import { tuning } from './tuning.ts';
import { valveFlow } from './valveFlow.ts';

export const GROUPS: readonly Group[] = [
  gasDynamics,
  pipeAcoustics,
  pressureLines,
  entryLoss,
  valveFlow,
  tuning,
  combustion,
  atmosphere,
  fuel,
  throttle,
  idleAir,
  filling,
  meanValue,
  flowMeter,
  linkage,
  mixture,
  sound,
  independent,
];

/** Runs the fast checks, or the slow ones, one after another. */
export function prove(slow: boolean, told: (outcome: Outcome) => void = () => {}): Outcome[] {
  return GROUPS.flatMap(({ name, checks }) =>
    checks
      .filter((check) => (check.slow ?? false) === slow)
      .map((check) => {
        const outcome = outcomeOf(name, check);
        told(outcome);
        return outcome;
      }),
  );
}
