/** Our plate beside the throttles of two mean-value engines of the literature: sizes and shapes, no exact agreement. */

import { flowFunction } from '../../sim/loss/nozzle.ts';
import { growthAt, plateGrowth, throttleArea } from '../../sim/loss/throttlePlate.ts';
import { chokedThrottle, pumped, steady, throttled } from './cases/meanValueEngine.ts';
import { absolute, type Check, type Group, relative } from './check.ts';

/** Air before the plate: 1 bar, R T of 288 K. */
const [BEFORE, HEAT] = [1e5, 287.05 * 288];
/** Bore and stop are what fits the published throttle best in steps of half a millimetre and half a degree. */
const PLATE = { bore: 0.05, shaftDiameter: 0.008, closedAngle: 6.5, rimGap: 0, openLoss: 0.2 };
const WHO = 'butterfly of 50 mm on a shaft of 8 mm that seals at 6.5 deg';

/** Air past it [g/s], so far above its stop [deg], at a pressure ratio. */
function passed(above: number): (ratio: number) => number {
  const angle = PLATE.closedAngle + above;
  const [area, growth] = [throttleArea(PLATE, angle), plateGrowth(PLATE, angle)];
  return (ratio) =>
    (1e3 * BEFORE * area * growthAt(growth, ratio) * flowFunction(ratio, 1.4)) / Math.sqrt(HEAT);
}

/** As the fit itself gives it, a slip of its coefficients apart. */
const FIT = [
  [5, 5.055],
  [10, 11.967],
  [20, 37.931],
  [40, 125.193],
  [60, 234.366],
  [90, 373.06],
] as const;
const fitChecks = FIT.map(
  ([above, published]): Check => ({
    what: `published throttle ${above} deg open, choked: its fit as the checks use it [g/s]`,
    source: 'crossleyCook',
    published,
    tolerance: relative(1e-4),
    by: 'copy',
    run: () => chokedThrottle(above),
  }),
);

const plateChecks = [10, 20, 30, 40, 50, 60].map(
  (above): Check => ({
    what: `${WHO}, ${above} deg above it, half the pressure behind: air [g/s]`,
    source: 'crossleyCook',
    published: Number(chokedThrottle(above).toPrecision(6)),
    // Two sizes are fitted; what is left, -5.8 to +6.4 %, is the shape of a cubic against that of a plate.
    tolerance: relative(0.07),
    run: () => passed(above)(0.5),
  }),
);

const NARROW = 5;
const nearStop: Check = {
  what: `guard of a known disagreement, no proof: ${WHO}, ${NARROW} deg above it: air over the published`,
  source: 'crossleyCook',
  published: 0.962,
  tolerance: absolute(5e-4),
  run: () => passed(NARROW)(0.5) / chokedThrottle(NARROW),
};

/** Speed [rad/s] and throttle [deg] of the published steady point. */
const [SPEED, THETA] = [209.5, 8.9];
const fitted = (p: number) => chokedThrottle(THETA) * throttled(p);
const steadyChecks: Check[] = [
  {
    what: 'published engine, 8.9 deg, 209.5 rad/s: pressure at which its fits agree [bar]',
    source: 'crossleyCook',
    published: 0.536,
    tolerance: absolute(5e-4),
    by: 'copy',
    run: () => steady(fitted, SPEED),
  },
  {
    what: 'the same: air [g/s]',
    source: 'crossleyCook',
    published: 10.04,
    tolerance: absolute(5e-3),
    by: 'copy',
    run: () => pumped(steady(fitted, SPEED), SPEED),
  },
  {
    what: `the published engine behind our ${WHO}: pressure [bar]`,
    source: 'crossleyCook',
    published: 0.536,
    // As its plate, which passes 4.5 % more there.
    tolerance: relative(0.07),
    run: () => steady(passed(THETA), SPEED),
  },
  {
    what: 'the published engine behind our butterfly: air [g/s]',
    source: 'crossleyCook',
    published: 10.04,
    tolerance: relative(0.07),
    run: () => pumped(steady(passed(THETA), SPEED), SPEED),
  },
];

/** Flow over that at the ratio 0.4125, below which the published law has none of it grow. */
const SHAPE = [
  [0.5, 0.9887, 0.9705],
  [0.6, 0.9473, 0.9454],
  [0.7, 0.8718, 0.9245],
  [0.8, 0.7517, 0.9068],
  [0.9, 0.5586, 0.8916],
  [0.95, 0.4043, 0.8847],
] as const;
const CHOKES = 0.4125;

/**
 * Two growing coefficients: a law fitted to an engine under way, whose pressure pulsates and is a mean, and
 * our plate, whose jet grows as Perry's orifice does.
 */
const shapeChecks = SHAPE.map(
  ([ratio, published, over]): Check => ({
    what: `guard of a known disagreement, no proof: the same plate 10 deg above its stop, flow at ${ratio} over that at ${CHOKES}, over the ${published} of a fitted engine`,
    source: 'meanValue',
    published: over,
    tolerance: absolute(5e-4),
    run: () => {
      const flow = passed(10);
      return flow(ratio) / flow(CHOKES) / published;
    },
  }),
);

export const meanValue: Group = {
  name: 'Mean-value engines',
  checks: [...fitChecks, ...plateChecks, nearStop, ...steadyChecks, ...shapeChecks],
};
