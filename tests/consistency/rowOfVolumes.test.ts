/**
 * A box of compartments in a row settles on any cells: a volume takes half of its own longest step (step/step.ts). With
 * the whole of it the same box swung by several per cent for a hundred cycles on cells of 40 mm.
 */
import { expect, test } from 'vitest';
import { runSpeeds } from '../../sim/engine/point.ts';
import { inBox } from '../../sim/study/airbox/fitted.ts';
import { demo } from '../scenario.ts';

const SPEEDS = [5000, 8000];
const { engine, airbox } = demo('hill-climb');
const boxed = inBox(engine, { ...airbox, volume: 0.008, snorkelLength: 0.2 });

function filled(cell: number) {
  const numerics = { ...boxed.numerics, intakeCell: cell, exhaustCell: 2.5 * cell };
  return runSpeeds({ ...boxed, numerics }, SPEEDS).map((point) => {
    if (point instanceof Error) throw point;
    return point;
  });
}

test('a box over four trumpets settles on coarse cells as soon as on fine ones, to the same filling', () => {
  const fine = filled(0.016);
  filled(0.04).forEach((coarse, i) => {
    expect(coarse.settled, `${SPEEDS[i]} rpm`).toBe(true);
    expect(coarse.cycles).toBeLessThanOrEqual(5);
    const apart = coarse.volumetricEfficiency / fine[i]!.volumetricEfficiency - 1;
    expect(Math.abs(apart), `${SPEEDS[i]} rpm`).toBeLessThan(0.005);
  });
});
