/**
 * Convergence of volumetric efficiency with the mesh on an intake with flare, taper and plate, exhaust
 * and timing as smooth as smoothEngine.ts makes them: what the intake's changes of area cost. Over several
 * speeds at once, since at a single one errors of either sign may cancel. Gas that the exhaust's wall has
 * cooled beside gas that it has not is a contact, whose own order is below one, so the order is asked of
 * walls that give no heat; with their heat it is lower (docs/theory.md).
 */
import { describe, expect, it } from 'vitest';
import { runSpeeds } from '../../sim/engine/point.ts';
import { NonPhysicalStateError } from '../../sim/errors.ts';
import { demo, meshed } from '../scenario.ts';
import { smoothEngine } from './smoothEngine.ts';

const SPEEDS = [4200, 5000, 5800, 6600, 7400, 8200];

const { engine } = demo('hill-climb');
const smooth = smoothEngine(engine);
const { trumpet, port } = engine.intake;

/** Curves on cells of 20, 10 and 5 mm, and the order that they show. */
function convergence(pipeHeat: number) {
  const tapered = { ...smooth, pipeHeat, intake: { ...smooth.intake, trumpet, port } };
  const curve = (cell: number) =>
    runSpeeds(meshed(tapered, cell / engine.numerics.intakeCell, 2e-5), SPEEDS).map((point) => {
      if (point instanceof NonPhysicalStateError) throw point;
      return point.volumetricEfficiency;
    });
  const [a, b, c] = [0.02, 0.01, 0.005].map(curve) as [number[], number[], number[]];
  const apart = (x: number[], y: number[]) => Math.hypot(...x.map((value, i) => value - y[i]!));
  return { b, c, order: Math.log2(apart(a, b) / apart(b, c)) };
}

describe('with flare, taper and plate', () => {
  it('is of second order; halving 10 mm changes each speed by less than 0.05 %', () => {
    expect(trumpet.bellmouth.overhang).toBeGreaterThan(0);
    expect(port.innerDiameter).toBeLessThan(port.outerDiameter);
    const { b, c, order } = convergence(0);
    expect(order).toBeGreaterThan(1.8);
    for (const change of changes(b, c)) expect(change).toBeLessThan(5e-4);
  });

  it('with the heat of walls is of first order at least, by 0.07 % at 10 mm', () => {
    const { b, c, order } = convergence(1);
    console.log(`order with the heat of walls: ${order.toFixed(2)}`);
    expect(order).toBeGreaterThan(1);
    expect(Math.max(...changes(b, c))).toBeLessThan(7e-4);
  });
});

const changes = (b: number[], c: number[]) => b.map((value, i) => Math.abs(value / c[i]! - 1));
