/** Induction tuning formulas and published worked examples. */
import { helmholtzFrequency } from '../acoustics/resonance.ts';
import { engelmanTunedSpeed } from '../acoustics/tunedSpeed.ts';
import { absolute, type Check, type Group, relative } from './check.ts';

const INCH = 0.0254;
const PIPE = { area: 1.5 * INCH ** 2, length: 13 * INCH };
const CYLINDER = { displacement: 30.51 * INCH ** 3, compressionRatio: 11 };
const SOUND = 1125 * 0.3048;

const engelmanChecks: Check[] = [
  {
    what: "Engelman's worked example, 500 cc, R 11, 1.5 in2, 13 in, K 2.1: tuned speed [rpm]",
    source: 'engelman',
    published: 4872,
    tolerance: relative(1e-3),
    run: () => engelmanTunedSpeed(PIPE, CYLINDER, SOUND) * 60,
  },
  {
    what: 'the same: natural frequency of pipe and half-displaced cylinder [Hz]',
    source: 'engelman',
    published: 170.58,
    tolerance: absolute(0.1),
    run: () => {
      const { displacement, compressionRatio: R } = CYLINDER;
      const volume = ((displacement / 2) * (R + 1)) / (R - 1);
      return helmholtzFrequency(PIPE.area, PIPE.length, volume, SOUND);
    },
  },
];

export const tuning: Group = { name: 'Induction tuning formulas', checks: engelmanChecks };
