/** What the pressure sensor sees, and what idle air can come through, worked out when asked. */
import { type JoinedIdle, joinedIdleOf, type SignalStudy, sensorStudy } from '../../sim/index.ts';
import { URGENCY } from '../compute/pool.ts';
import { askedStudy } from './asked.ts';
import type { Picture } from './picture.ts';
import { pool } from './pool.ts';

export const sensing = askedStudy<SignalStudy>(({ scenario }, runner, seen, stop) => {
  const { engine, pressureBar: spec } = scenario;
  const task = pool.tasks(URGENCY.asked, stop);
  return sensorStudy({ engine, spec: spec! }, { ...runner, task }, seen);
});

export const idling = askedStudy<JoinedIdle>(({ scenario }, runner, seen, stop) => {
  const { engine, idle: spec, pressureBar: bar } = scenario;
  const task = pool.tasks(URGENCY.asked, stop);
  return joinedIdleOf({ engine, spec: spec!, ...(bar && { bar }) }, { ...runner, task }, seen);
});

export const hasBar = ({ scenario }: Picture): boolean => scenario.pressureBar !== undefined;
export const hasIdle = ({ scenario }: Picture): boolean => scenario.idle !== undefined;
