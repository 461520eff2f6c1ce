/**
 * A chamber with nothing to it is the open air: endless, the mouths in it breathe as in the open. And it
 * loses nothing, in TypeScript and in lanes. No source: identities.
 */
import { describe, expect, it } from 'vitest';
import { solo } from '../../sim/engine/driver.ts';
import { runPoint, runSpeeds } from '../../sim/engine/point.ts';
import type { EngineSpecification } from '../../sim/specification.ts';
import { demo, meshed } from '../scenario.ts';

const engine = meshed(demo('hill-climb').engine, 2.5, 2e-4);

function inChamber(volume: number): EngineSpecification {
  const inlet = {
    length: 0.4,
    outerDiameter: 0.08,
    innerDiameter: 0.08,
    wallTemperature: engine.ambient.temperature,
    roughness: 1.5e-6,
    bendLoss: 0,
  };
  const chamber = { volume, inlet, inletLoss: 1 };
  return { ...engine, intake: { ...engine.intake, chamber } };
}

describe('trumpets in a chamber', () => {
  it('breathe as in the open where it is endless, and otherwise where it is not', () => {
    const speed = 6600;
    const open = runPoint(engine, speed, { solved: 'all' });
    const endless = runPoint(inChamber(1e4), speed);
    const small = runPoint(inChamber(8e-3), speed);
    expect(open.settled && endless.settled).toBe(true);
    for (const key of ['volumetricEfficiency', 'pressureAtClosing', 'indicatedTorque'] as const) {
      expect(Math.abs(endless[key] / open[key] - 1)).toBeLessThan(5e-4);
      expect(Math.abs(small[key] / open[key] - 1)).toBeGreaterThan(5e-3);
    }
  });

  it('lose no mass and no energy, and come to the same in lanes', () => {
    const speeds = [5000, 7000];
    const points = runSpeeds(inChamber(8e-3), speeds);
    expect(points).toEqual(runSpeeds(inChamber(8e-3), speeds, solo));
    for (const point of points) {
      if (point instanceof Error) throw point;
      expect(point.settled).toBe(true);
      expect(point.audit.massError).toBeLessThan(1e-10);
      expect(point.audit.energyError).toBeLessThan(1e-6);
    }
  });
});
