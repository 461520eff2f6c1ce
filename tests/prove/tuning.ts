/** Induction tuning formulas and published worked examples. */
import { helmholtzFrequency } from '../acoustics/resonance.ts';
import { engelmanTunedSpeed } from '../acoustics/tunedSpeed.ts';
import { resonatorPair, ringChamber, type Sizes } from './cases/chamberRinging.ts';
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

/** A three-litre plenum on 250 mm of 40 mm inlet, and one thin runner to a litre: plugs short against the wave. */
const PLENUM: Sizes = {
  chamber: 3e-3,
  cylinder: 1e-3,
  inlet: { length: 0.25, bore: 0.04 },
  runner: { length: 0.25, bore: 0.03 },
};

/** End correction of the inlet's mouth that the formula takes [radii]; Levine & Schwinger. */
const MOUTH = 0.6133;

const plenumChecks: Check[] = resonatorPair(PLENUM, MOUTH).map(
  ({ frequency, ratio }, i): Check => ({
    what: `plenum 3 l, inlet 250 x 40 mm, runner 250 x 30 mm to 1 l: ${['lower', 'upper'][i]} frequency as the solver rings [Hz]`,
    by: 'solver',
    source: 'helmholtzPair',
    published: Number(frequency.toFixed(2)),
    // The air of the pipes has spring too, an eighth of the volumes here, which the formula leaves out.
    tolerance: relative(0.05),
    run: () => ringChamber(PLENUM, frequency, ratio),
  }),
);

export const tuning: Group = {
  name: 'Induction tuning formulas',
  checks: [...engelmanChecks, ...plenumChecks],
};
