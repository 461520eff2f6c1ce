/** The end's limits; published rows are in tests/prove/pipeAcoustics.ts. */
import { describe, expect, it } from 'vitest';
import { END_CORRECTION_FLANGED } from '../../sim/loss/endCorrection.ts';
import { reflectionFlanged, reflectionUnflanged } from '../acoustics/endReflection.ts';

describe('flanged end', () => {
  it('tends to the flanged limit, below the piston in a baffle 8/(3 pi)', () => {
    expect(reflectionFlanged(0).correction).toBeCloseTo(END_CORRECTION_FLANGED, 3);
    expect(END_CORRECTION_FLANGED).toBeLessThan(8 / (3 * Math.PI));
  });

  it('radiates as half a sphere at low frequency: |R| = 1 - ka^2', () => {
    const ka = 0.05;
    expect((1 - reflectionFlanged(ka).magnitude) / ka ** 2).toBeCloseTo(1, 1);
  });
});

it.each([-0.1, 1.6, Number.NaN])('refuses ka = %f', (ka) => {
  expect(() => reflectionUnflanged(ka)).toThrow(RangeError);
  expect(() => reflectionFlanged(ka)).toThrow(RangeError);
});
