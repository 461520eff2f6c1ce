/** A wall in front of the mouth: what it adds to end correction and entry loss. */
import { describe, expect, it } from 'vitest';
import { END_CORRECTION_UNFLANGED } from '../../sim/loss/endCorrection.ts';
import {
  WALL_CORRECTION_TABLE,
  WALL_LOSS_TABLE,
  wallCorrection,
  wallLoss,
} from '../../sim/loss/facingWall.ts';
import { mouthLengthLimit } from './axisymmetricPotential.ts';

describe('end correction before a wall', () => {
  const free = mouthLengthLimit({});

  it('solver gives the free end of Levine & Schwinger (1948)', () => {
    expect(Math.abs(free - END_CORRECTION_UNFLANGED)).toBeLessThan(0.001);
  });

  it.each([4, 2, 1, 0.6, 0.4, 0.2, 0.1])('is that of potential flow, wall at %f radii', (h) => {
    const added = mouthLengthLimit({ wall: h }) - free;
    expect(Math.abs(wallCorrection(h, 1) / added - 1)).toBeLessThan(0.02);
  });

  it('runs straight between rows to within 3 %', () => {
    // Half-way in a/h between rows, where the table is worst.
    for (const radiusOverClearance of [0.75, 3.75, 7.5]) {
      const h = 1 / radiusOverClearance;
      const added = mouthLengthLimit({ wall: h }) - free;
      expect(Math.abs(wallCorrection(h, 1) / added - 1)).toBeLessThan(0.03);
    }
  });

  it('tends to the image of the mouth far away: a / 8c', () => {
    // From first principles: a second sink of strength pi a^2 at twice the distance.
    expect(wallCorrection(4, 1) / (1 / 32)).toBeCloseTo(1.12, 1);
    expect(WALL_CORRECTION_TABLE.correction[0]).toBe(0);
  });
});

describe('entry loss before a wall', () => {
  it('follows the tables of intake hoods', () => {
    // Duct-design handbooks after Idelchik: straight 2.63, 1.83, 1.53, 1.39, 1.31, 1.19, 1.08,
    // 1.06, 1.00 and bell 1.32, 0.77, 0.60, 0.48, 0.41, 0.30, 0.28, 0.25, 0.25 at c/D of 0.1, 0.2,
    // 0.3, 0.4, 0.5, 0.6, 0.8, 1, 4.
    const straight = [2.63, 1.83, 1.53, 1.39, 1.31, 1.19, 1.08, 1.06, 1.0];
    const bell = [1.32, 0.77, 0.6, 0.48, 0.41, 0.3, 0.28, 0.25, 0.25];
    WALL_LOSS_TABLE.clearanceOverBore.forEach((ratio, i) => {
      expect(wallLoss(ratio, 1, false)).toBeCloseTo(straight[i]! - 1.0, 9);
      expect(wallLoss(ratio, 1, true)).toBeCloseTo(bell[i]! - 0.25, 9);
    });
  });

  it('vanishes far away', () => {
    expect(wallLoss(10, 0.045, true)).toBe(0);
    expect(wallLoss(10, 0.045, false)).toBe(0);
  });
});
