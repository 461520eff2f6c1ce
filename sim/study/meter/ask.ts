/** What is asked of a scenario. */
import { leadChamber } from '../../fittings.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import { withLength } from '../../sweep/sweep.ts';
import type { MeterQuestion } from './compute.ts';

/** With the trumpets of a length [m]. */
export function meterQuestion(scenario: Scenario, length: number): MeterQuestion {
  const { airbox, meter, idle } = scenario;
  const engine = withLength(scenario.engine, length);
  const { count } = engine.cylinder;
  const share = leadChamber(airbox, count).cylinders / count;
  return { engine, airbox, meter, ...(idle && { idleAir: share * idle.air }) };
}
