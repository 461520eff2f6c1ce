/** The answer of a command on a cheap demo from points that are known (golden/points.ts): what is said of them is asked, not the solver. */
import { type Answered, answerOf, callsOf } from '../golden/calls.ts';
import type { GoldenDemo } from '../golden/cheap.ts';
import { knownWorkers, readPoints } from '../golden/points.ts';

export function knownAnswer(demo: GoldenDemo, name: string): Promise<Answered> {
  const call = callsOf(demo).find((one) => one.name === name);
  if (!call) throw new Error(`no call ${name} of ${demo} in golden/calls.ts`);
  return answerOf(demo, call, (scenario) => knownWorkers(scenario, readPoints(demo)));
}
