/** Inertial length of plain and flared mouths: the table against potential flow, and that against others. */
import { describe, expect, it } from 'vitest';
import { END_CORRECTION_FLANGED, END_CORRECTION_UNFLANGED } from '../../sim/loss/endCorrection.ts';
import {
  flareLength,
  LIP_TABLE,
  MOUTH_LENGTH_SPREAD,
  MOUTH_LENGTH_TABLE,
  mouthLength,
} from '../../sim/loss/mouthLength.ts';
import { mouthLengthLimit } from './axisymmetricPotential.ts';

const { depth: depths, overhang: overhangs, beyond } = MOUTH_LENGTH_TABLE;

/** Bore of radius 1, so that lengths are in bore radii. */
const ours = (depth: number, overhang: number, lip = 0) =>
  mouthLength({ bore: 2, depth, overhang, lip });

describe('potential flow into a mouth', () => {
  it('gives the plain end of Levine & Schwinger (1948)', () => {
    // 0.6127010 by quadrature of their integral.
    expect(Math.abs(mouthLengthLimit({}) - END_CORRECTION_UNFLANGED)).toBeLessThan(1e-4);
  });

  it.each([
    [45, 12, 12, 23.4],
    [52, 22, 15, 32.8],
    [45, 20, 20, 27.7],
    [45, 30, 20, 34.4],
  ])(
    'bore %f, %f deep, %f wide [mm]: as finite volumes on steps',
    (bore, depth, overhang, theirs) => {
      // Another method (finite volumes on a stepped wall, SciPy), run outside this program; the last
      // digit of each is known to 0.3 mm.
      const a = bore / 2;
      const length = a * mouthLengthLimit({ depth: depth / a, overhang: overhang / a });
      expect(Math.abs(length - theirs)).toBeLessThan(0.3);
      expect(Math.abs(mouthLength({ bore, depth, overhang }) / length - 1)).toBeLessThan(
        MOUTH_LENGTH_SPREAD,
      );
    },
  );

  it.each([0.2, 0.5, 1])(
    'a thin flange of %f radii: a little below a thick wall as wide',
    (flange) => {
      // Thick wall, outer radius b: Dalmont, Nederveen & Joly, J. Sound Vib. 244 (2001) 505, from memory.
      const x = 1 / (1 + flange);
      const thick =
        END_CORRECTION_FLANGED +
        x * (END_CORRECTION_UNFLANGED - END_CORRECTION_FLANGED) +
        0.057 * x * (1 - x ** 5);
      const thin = mouthLengthLimit({ overhang: flange });
      expect(thin).toBeLessThan(thick);
      expect(thick - thin).toBeLessThan(0.01);
    },
  );
});

describe('the table of mouth lengths', () => {
  it.each(depths.map((depth, i) => [depth, i]))('row of depth %f is potential flow', (depth, i) => {
    overhangs.forEach((overhang, j) => {
      const length = mouthLengthLimit({ depth, overhang }, depth === 0 ? 80 : 40);
      expect(Math.abs(length - flareLength(2, depth, overhang) - beyond[i]![j]!)).toBeLessThan(
        2e-3,
      );
    });
  });

  it.each(LIP_TABLE.overhang.map((overhang, i) => [overhang, i]))(
    'lips on an overhang of %f are potential flow',
    (overhang, i) => {
      LIP_TABLE.lip.forEach((lip, j) => {
        const flare = { depth: overhang, overhang };
        const added = mouthLengthLimit({ ...flare, lip }) - mouthLengthLimit(flare);
        expect(Math.abs(added - LIP_TABLE.added[i]![j]!)).toBeLessThan(1e-3);
      });
    },
  );

  it('is within its spread half-way between rows', () => {
    for (let i = 1; i < depths.length; i++) {
      for (let j = 1; j < overhangs.length; j++) {
        const depth = (depths[i - 1]! + depths[i]!) / 2;
        const overhang = (overhangs[j - 1]! + overhangs[j]!) / 2;
        const exact = mouthLengthLimit({ depth, overhang }, 20);
        expect(Math.abs(ours(depth, overhang) / exact - 1)).toBeLessThan(MOUTH_LENGTH_SPREAD);
      }
    }
  });

  it('goes over into the plain end, and grows with depth, overhang of a cut end, and lip', () => {
    expect(ours(0, 0)).toBeCloseTo(END_CORRECTION_UNFLANGED, 4);
    expect(ours(0.5, 1e-9)).toBeCloseTo(0.5 + END_CORRECTION_UNFLANGED, 4);
    expect(ours(0.6, 0.5)).toBeGreaterThan(ours(0.5, 0.5));
    expect(ours(0, 0.3)).toBeGreaterThan(ours(0, 0.2));
    expect(ours(0.5, 0.5, 0.1)).toBeGreaterThan(ours(0.5, 0.5));
  });
});
