/**
 * An engine that has settled on one mesh goes on almost as it was on a finer one: only what the mesh
 * itself changes differs. Whatever is not handed over shows in the first cycle.
 */
import { expect, it } from 'vitest';
import { Run } from '../../sim/engine/cycle.ts';
import { engineModel, type Solved } from '../../sim/engine/plan.ts';
import { takeOver } from '../../sim/engine/takeOver.ts';
import { demo, meshed } from '../scenario.ts';

it.each<[number, Solved]>([
  [5400, 'unlike'],
  [8200, 'unlike'],
  [6600, 'all'],
])('at %i rpm, %s solved', (speed, solved) => {
  const { engine } = demo('hill-climb');
  const coarse = new Run(engineModel(meshed(engine, 2), solved), speed);
  coarse.start(false);
  for (let cycle = 1; cycle < 12; cycle++) coarse.cycle();
  const last = coarse.cycle()[0]!;
  const fine = new Run(engineModel(engine, solved), speed);
  takeOver(fine.model.network, coarse.model.network);
  fine.start(true);
  const first = fine.cycle()[0]!;
  expect(Math.abs(first.trapped.air / last.trapped.air - 1)).toBeLessThan(0.01);
  expect(Math.abs(first.work / last.work - 1)).toBeLessThan(0.02);
});
