/** The end that lets waves pass. Breaking of waves is in tests/prove/gasDynamics.ts. */
import { describe, expect, it } from 'vitest';
import type { DuctEnd } from '../../sim/boundary/ductEnd.ts';
import { nonReflecting } from '../../sim/boundary/node.ts';
import { OpenAir } from '../../sim/boundary/reservoir.ts';
import { oneDuct, pipe, runFor } from '../network.ts';
import {
  waveGas as gas,
  PRESSURE,
  SOUND,
  simpleWave,
  TEMPERATURE,
} from '../prove/cases/steepening.ts';

const GAMMA = 1.4;

describe('non-reflecting end', () => {
  it.each([0.001, 0.01, 0.03])(
    'sends back less than a hundredth of a pulse of dp/p0 = %f',
    (amplitude) => {
      const duct = pipe(1, 0.05, 200);
      duct.fillEach(gas, (x) => {
        const pulse = Math.exp(-(((x - 0.5) / 0.06) ** 2));
        return simpleWave((amplitude * SOUND * pulse) / GAMMA);
      });
      const outside = new OpenAir(gas, { pressure: PRESSURE, temperature: TEMPERATURE });
      const letThrough = (end: DuctEnd) => nonReflecting(end, outside);
      const net = oneDuct(duct, { gas }, { low: letThrough, high: letThrough });
      // The pulse leaves after 0.5 m; what comes back would stand half-way again after 1 m.
      runFor(net, 1 / SOUND);
      const left = Math.max(...duct.prim.p.map((p) => Math.abs(p - PRESSURE)));
      expect(left / (amplitude * PRESSURE)).toBeLessThan(0.01);
    },
  );
});
