/** The solver beside solutions made outside it, and beside linear acoustics. */
import {
  difference,
  intakeByOthers,
  runnerByOthers,
  solveIntake,
  solveRunner,
  sweptVolumes,
} from './cases/independent.ts';
import { linearPeak, solverPeakNear } from './cases/tunedPeak.ts';
import { absolute, allBy, type Check, type Group, once, relative } from './check.ts';

const runner = once(() => ({ theirs: runnerByOthers(), ours: solveRunner(runnerByOthers()) }));
const intake = once(() => ({ theirs: intakeByOthers(), ours: solveIntake(intakeByOthers()) }));

const runnerChecks: Check[] = (['pressure', 'velocity'] as const).map((key) => ({
  what: `tapered pipe with friction on a swinging pressure: ${key} half-way along, largest difference over its range`,
  source: 'scipy',
  published: 0,
  tolerance: absolute(0.01),
  run: () => {
    const { theirs, ours } = runner();
    return difference(ours[key].sampled(theirs.time), theirs[key]);
  },
}));

const intakeChecks: Check[] = [
  ...(
    [
      ['mass in the cylinder', 'mass', 'cylinderMass'],
      ['pressure in the cylinder', 'pressure', 'cylinderPressure'],
      ['pressure at the valve', 'portPressure', 'portPressure'],
    ] as const
  ).map(
    ([words, ours, theirs]): Check => ({
      what: `one intake event from rest: ${words}, largest difference over its range`,
      source: 'scipy',
      published: 0,
      tolerance: absolute(0.01),
      run: () => {
        const both = intake();
        return difference(both.ours[ours].sampled(both.theirs.angle), both.theirs[theirs]);
      },
    }),
  ),
  {
    what: 'one intake event from rest: mass trapped over that of the swept volume',
    source: 'scipy',
    published: sweptVolumes(intakeByOthers(), intakeByOthers().cylinderMass.at(-1)!),
    tolerance: relative(2e-3),
    run: () => {
      const { theirs, ours } = intake();
      return sweptVolumes(theirs, ours.mass.sampled([theirs.case.closes])[0]!);
    },
  },
];

const linearChecks: Check[] = [0.09, 0.18, 0.26].map((length) => ({
  what: `hill-climb four, trumpet ${length * 1e3} mm: main tuned peak of the solver over that of the linear cycle`,
  source: 'linear',
  published: 1,
  tolerance: relative(0.05),
  slow: true,
  run: () => {
    const linear = linearPeak(length);
    return solverPeakNear(length, linear) / linear;
  },
}));

export const independent: Group = {
  name: 'Independent solutions',
  checks: allBy('solver', [...runnerChecks, ...intakeChecks, ...linearChecks]),
};
