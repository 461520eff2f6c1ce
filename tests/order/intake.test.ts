/**
 * Convergence of volumetric efficiency with the mesh on an intake with flare, taper and plate, exhaust
 * and timing as smooth as smoothEngine.ts makes them: what the intake's changes of area cost. Over several
 * speeds at once, since at a single one errors of either sign may cancel. Walls give no heat: gas that an exhaust
 * has cooled lies beside gas that it has not, a contact, and contacts have an order of their own (docs/theory.md).
 */
import { expect, it } from 'vitest';
import { runSpeeds } from '../../sim/engine/point.ts';
import { NonPhysicalStateError } from '../../sim/errors.ts';
import { demo, meshed } from '../scenario.ts';
import { smoothEngine } from './smoothEngine.ts';

const SPEEDS = [4200, 5000, 5800, 6600, 7400, 8200];

it('is of second order with flare, taper and plate', () => {
  const { engine } = demo('hill-climb');
  const smooth = smoothEngine(engine);
  const { trumpet, port } = engine.intake;
  const tapered = { ...smooth, pipeHeat: 0, intake: { ...smooth.intake, trumpet, port } };
  expect(trumpet.bellmouth.overhang).toBeGreaterThan(0);
  expect(port.innerDiameter).toBeLessThan(port.outerDiameter);
  const curve = (cell: number) =>
    runSpeeds(meshed(tapered, cell / engine.numerics.intakeCell, 2e-5), SPEEDS).map((point) => {
      if (point instanceof NonPhysicalStateError) throw point;
      return point.volumetricEfficiency;
    });
  const [a, b, c] = [0.02, 0.01, 0.005].map(curve) as [number[], number[], number[]];
  const apart = (x: number[], y: number[]) => Math.hypot(...x.map((value, i) => value - y[i]!));
  expect(Math.log2(apart(a, b) / apart(b, c))).toBeGreaterThan(1.8);
  // Halving 10 mm changes each by less than 0.05 %.
  b.forEach((value, i) => {
    expect(Math.abs(value / c[i]! - 1)).toBeLessThan(5e-4);
  });
});
