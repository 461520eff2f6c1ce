/** One plate that is off: what of the air it is, what a gauge shows of it, and what it does to the mixture. */
import { jointMixture, spreadOf } from '../../sim/decision/mixtureShares.ts';
import { portFilling } from '../../sim/decision/portFilling.ts';
import { butterflyOpenArea } from '../../sim/loss/butterfly.ts';
import { convert } from '../../sim/scenario/dimension.ts';
import { hillClimb } from './cases/engine.ts';
import { absolute, type Check, relative } from './check.ts';
import type { SourceName } from './sources.ts';

const PLATE = { bore: 0.045, shaftDiameter: 0.009, closedAngle: 10, rimGap: 0 };
const openAt = (above: number) => butterflyOpenArea(PLATE, 10 + above);

/** Degrees above the stop, growth of the open area with 0.2 deg [%]. */
const GROWTH = [
  [1, 21.1],
  [2, 11.0],
  [5, 4.8],
  [10, 2.7],
  [20, 1.5],
  [30, 1.0],
] as const;
/** 1.88 mm2 of effective area with a coefficient: growth and loss of air with 0.2 deg [%]. */
const IDLE = [
  [0.8, 44, -43],
  [0.7, 39, -38],
  [1, 54, -53],
] as const;

/** The plate [deg above its stop] that leaves an open area [m2]. */
function openingOf(area: number): number {
  let [low, high] = [0, 5];
  for (let i = 0; i < 50; i++) {
    const middle = 0.5 * (low + high);
    if (openAt(middle) < area) low = middle;
    else high = middle;
  }
  return low;
}

/** What of the plate is 2 % of the air that passes at that idle [deg]. */
function twoPerCent(): number {
  const area = 1.88e-6 / 0.8;
  return openingOf(1.02 * area) - openingOf(area);
}

/** Growth of air [%] with 10 mmHg less of 250 mmHg of mean vacuum, one port a plate, at a speed [rpm]. */
function airOfTenMillimetres(speed: number): number {
  const { intake, ...rest } = hillClimb();
  const [feed, mmHg] = [{ pressure: 101325, temperature: 293.15 }, 133.322];
  const engine = { ...rest, intake: { ...intake, feed } };
  const at = (vacuum: number) => {
    let [low, high] = [intake.throttle.closedAngle + 0.1, 60];
    for (let i = 0; i < 40; i++) {
      const middle = 0.5 * (low + high);
      if (feed.pressure - portFilling(engine, speed, middle).mean > vacuum * mmHg) low = middle;
      else high = middle;
    }
    return portFilling(engine, speed, low).flow;
  };
  return 100 * (at(245) / at(255) - 1);
}

const gaugeChecks: Check[] = [1000, 3000].map((speed) => ({
  what: `10 mmHg of 250 mmHg of mean vacuum behind its own plate, ${speed} rpm: air [%]`,
  source: 'speedDensity',
  published: [2.0, 2.2],
  // The band is printed to two digits.
  tolerance: absolute(0.05),
  run: () => airOfTenMillimetres(speed),
}));

const mercuryCheck: Check = {
  what: '30.0 kPa of vacuum, as a gauge in millimetres of mercury shows it',
  source: 'mercury',
  published: 225.0,
  tolerance: absolute(0.05),
  run: () => convert(30, 'kPa', 'mmHg'),
};

const plateSource: SourceName = 'butterfly';

const plateChecks: Check[] = [
  ...GROWTH.map(
    ([above, growth]): Check => ({
      what: `45 mm plate ${above} deg above its stop, 0.2 deg more: growth of the opening [%]`,
      source: plateSource,
      published: growth,
      // Printed to two or three digits, the last of which is 5 % of the smallest.
      tolerance: absolute(0.051),
      run: () => 100 * (openAt(above + 0.2) / openAt(above) - 1),
    }),
  ),
  {
    what: '45 mm plate that idles on 1.88 mm2 with a coefficient of 0.8: deg above its stop',
    source: plateSource,
    published: 0.47,
    tolerance: absolute(5e-3),
    run: () => openingOf(1.88e-6 / 0.8),
  },
  {
    what: 'the same: 2 % of its air in degrees of plate',
    source: plateSource,
    published: 0.01,
    // Printed to one digit.
    tolerance: absolute(0.001),
    run: twoPerCent,
  },
  {
    what: 'the same: 2 % of its air at a lever of 20 mm [um]',
    source: 'plateLever',
    // 3.5 as printed, of the degrees rounded to 0.01.
    published: 3.5,
    tolerance: relative(0.1),
    run: () => twoPerCent() * (Math.PI / 180) * 20e3,
  },
  ...IDLE.flatMap(([coefficient, more, less]) =>
    ([more, less] as const).map((change): Check => {
      const by = Math.sign(change) * 0.2;
      return {
        what: `the same with a coefficient of ${coefficient}: air with the plate ${by} deg off [%]`,
        source: plateSource,
        published: change,
        tolerance: absolute(0.5),
        run: () => {
          const above = openingOf(1.88e-6 / coefficient);
          return 100 * (openAt(above + by) / openAt(above) - 1);
        },
      };
    }),
  ),
];

/** Air of one cylinder of four above the others [-], its lambda, theirs, standard deviation. */
const SPREADS = [
  [0.44, 1.297, 0.901, 0.172],
  [0.2, 1.143, 0.952, 0.083],
  [0.05, 1.037, 0.988, 0.021],
] as const;

const spreadChecks: Check[] = SPREADS.flatMap(([more, own, others, deviation]) => {
  const lambdas = () => {
    const air = [1 + more, 1, 1, 1];
    const joint = jointMixture(air, [1, 1, 1, 1]);
    return air.map((one) => one / joint);
  };
  const check = (what: string, published: number, run: () => number): Check => ({
    what: `one cylinder of four with ${100 * more} % more air, equal fuel, lambda 1 together: ${what}`,
    source: 'airBalance',
    published,
    tolerance: absolute(6e-4),
    run,
  });
  return [
    check('its lambda', own, () => lambdas()[0]!),
    check('theirs', others, () => lambdas()[1]!),
    check('standard deviation', deviation, () => spreadOf(lambdas())),
  ];
});

export const plateOffChecks: readonly Check[] = [
  ...plateChecks,
  ...gaugeChecks,
  mercuryCheck,
  ...spreadChecks,
];
