/** The time loop leaves next to nothing on the heap: thousands of steps, then a collection. */
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { expect, it } from 'vitest';
import { Run } from '../../sim/engine/cycle.ts';
import { engineModel } from '../../sim/engine/plan.ts';
import { demo } from '../scenario.ts';

it('keeps its heap steady over cycles', () => {
  setFlagsFromString('--expose-gc');
  const collect = runInNewContext('gc') as () => void;
  const held = () => {
    collect();
    return process.memoryUsage().heapUsed;
  };
  const model = engineModel(demo('hill-climb').engine);
  const run = new Run(model, 6000);
  run.start(false);
  for (let i = 0; i < 2; i++) run.cycle();
  const before = held();
  const steps = model.network.steps;
  for (let i = 0; i < 4; i++) run.cycle();
  expect(model.network.steps - steps).toBeGreaterThan(2000);
  expect(held() - before).toBeLessThan(200_000);
});
