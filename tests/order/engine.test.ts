/**
 * Convergence of a whole engine point with the mesh. The full curves are run by `npm run prove`.
 */
import { describe, expect, it } from 'vitest';
import { inLanes } from '../../sim/engine/lanes.ts';
import { runPoint, settleSpeeds } from '../../sim/engine/point.ts';
import { demo, meshed } from '../scenario.ts';
import { smoothEngine } from './smoothEngine.ts';

const { engine } = demo('hill-climb');

describe('hill-climb at the default mesh', () => {
  it.each([4600, 6200, 7800])(
    'changes at %d rpm by less than half a hundredth when it is halved',
    (speed) => {
      const [coarse, fine] = [1, 0.5].map(
        (factor) => runPoint(meshed(engine, factor), speed).volumetricEfficiency,
      );
      expect(Math.abs(coarse! / fine! - 1)).toBeLessThan(5e-3);
    },
  );
});

describe('an engine of smooth ducts', () => {
  it('nears its volumetric efficiency at about second order', () => {
    // Shocks of the blow-down and the limiter at wave crests keep it a little below two. Figures of each
    // mesh as they are: what is carried on beyond the finest has no order of its own.
    const [a, b, c] = [2, 1, 0.5].map((factor) => {
      const spec = meshed(smoothEngine(engine), factor, 2e-5);
      const [point] = settleSpeeds(spec, [6200], 'unlike', inLanes);
      if (point instanceof Error) throw point;
      return point!.finest.volumetricEfficiency;
    }) as [number, number, number];
    const order = Math.log2((a - b) / (b - c));
    expect(order).toBeGreaterThan(1.4);
    expect(order).toBeLessThan(2.6);
    // And the default mesh is within 0.05 % of the limit that the sequence foretells.
    const limit = c + (c - b) / (2 ** order - 1);
    expect(Math.abs(b / limit - 1)).toBeLessThan(5e-4);
  });
});
