/** How quickly air follows plates at idle: the closed formula against the solver. */
import { expect, it } from 'vitest';
import { sweptVolume } from '../../sim/cylinder/crank.ts';
import { turnsToFill } from '../../sim/decision/idleAir.ts';
import { portVolume } from '../../sim/decision/portFilling.ts';
import { movePlates } from '../../sim/engine/plateMove.ts';
import { pedalled, withPlates } from '../../sim/engine/platesAtRest.ts';
import { readScenario } from '../../sim/scenario/read.ts';
import { coarse } from '../../sim/study/signal/tapped.ts';
import { demoText } from '../toy.ts';

const { engine: filed, idle } = readScenario(demoText('road-four'), 'road-four.yaml');

it('driven plates opened for the load: what is missing of the new charge dies away as the closed formula says', () => {
  const numerics = { ...coarse(filed.numerics), settle: 1e-3, maximumCycles: 80 };
  const engine = { ...filed, numerics };
  const { closedAngle } = pedalled(engine);
  const [from, to] = [closedAngle + 0.76, closedAngle + 0.95];
  const move = { engine: withPlates(engine, from), speed: idle!.speed, to, between: [] };
  const { charges, rest } = movePlates({ ...move, seconds: 0, cycles: 3 });
  const [before, after] = rest.map(({ filling }) => filling) as [number, number];
  const { count } = engine.cylinder;
  const missing = charges.map(({ filling }) => (after - filling) / (after - before));
  // From a cylinder's charge to its next, two turns on; the first waves are over by then.
  const kept = missing.slice(count, 2 * count).map((share, i) => share / missing[i]!);
  const turns = kept.map((share) => -2 / Math.log(share));
  const mean = turns.reduce((sum, one) => sum + one, 0) / count;
  const formula = turnsToFill(portVolume(engine), sweptVolume(engine.cylinder));
  expect(Math.abs(mean / formula - 1)).toBeLessThan(0.1);
}, 60_000);
