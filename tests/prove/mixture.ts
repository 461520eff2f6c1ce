/** Mixture from exhaust gas, what a probe sees of one cylinder, what a spread costs, one plate that is off. */
import { jointMixture, spreadOf } from '../../sim/decision/mixtureShares.ts';
import { portFilling } from '../../sim/decision/portFilling.ts';
import { butterflyOpenArea } from '../../sim/loss/butterfly.ts';
import { lambdaOfGas } from '../../sim/mixture/exhaustGas.ts';
import { mixtureTorque, spreadLoss } from '../../sim/mixture/mixtureTorque.ts';
import { swingLeft } from '../../sim/mixture/probeLag.ts';
import { dryExhaust, wetExhaust } from './cases/dryExhaust.ts';
import { hillClimb } from './cases/engine.ts';
import { absolute, type Check, type Group, relative } from './check.ts';
import type { SourceName } from './sources.ts';

const PETROL = { hydrogen: 1.7261, oxygen: 0.0176 };

/** Lambda, then CO, CO2, O2, H2 [%] of dry gas of CH1.85 with the water-gas constant 3.5. */
const ROUND_TRIP = [
  [0.8, 7.608, 10.328, 0, 2.885],
  [0.85, 5.623, 11.61, 0, 1.938],
  [0.9, 3.687, 12.88, 0, 1.159],
  [0.95, 1.81, 14.127, 0, 0.521],
  [1.05, 0, 14.562, 1.065, 0],
  [1.1, 0, 13.858, 2.027, 0],
  [1.2, 0, 12.636, 3.696, 0],
] as const;

const roundTrips: Check[] = ROUND_TRIP.flatMap(([lambda, CO, CO2, O2, H2]): Check[] => [
  {
    what: `dry gas of CH1.85 burned at lambda ${lambda}, back to lambda`,
    source: 'atomBalance',
    published: lambda,
    tolerance: absolute(1e-4),
    run: () => lambdaOfGas(dryExhaust(1.85, lambda), { hydrogen: 1.85, oxygen: 0 }),
  },
  ...Object.entries({ CO, CO2, O2, H2 })
    .filter(([, share]) => share > 0)
    .map(
      ([name, share]): Check => ({
        what: `dry gas of CH1.85 burned at lambda ${lambda}: ${name} [%]`,
        source: 'atomBalance',
        published: share,
        tolerance: absolute(6e-4),
        run: () => 100 * dryExhaust(1.85, lambda)[name as 'CO'],
      }),
    ),
]);

/** CO, CO2, O2 [%], HC [ppm hexane], carbon atoms where they are not hexane's, lambda. */
const GASES = [
  ['1.2 CO, 13.5 CO2, 0.3 O2, 45 ppm', 1.2, 13.5, 0.3, 45, undefined, 0.9763],
  ['lean misfire, 0.01 CO, 13.78 CO2, 2.29 O2, 834 ppm', 0.01, 13.78, 2.29, 834, undefined, 1.0773],
  ['the same, twelve carbon atoms', 0.01, 13.78, 2.29, 834, 12, 1.0409],
  ['0.5 CO, 14.7 CO2, 0.5 O2, 100 ppm', 0.5, 14.7, 0.5, 100, undefined, 1.0047],
  ['4 CO, 12 CO2, 0.4 O2, 250 ppm', 4, 12, 0.4, 250, undefined, 0.8949],
  ['0.1 CO, 13 CO2, 2.8 O2, 60 ppm', 0.1, 13, 2.8, 60, undefined, 1.1437],
] as const;

const ofGas = ([, CO, CO2, O2, HC, carbon]: (typeof GASES)[number]) =>
  lambdaOfGas({ CO: CO / 100, CO2: CO2 / 100, O2: O2 / 100, HC: HC / 1e6, NO: 0 }, PETROL, carbon);

const gasChecks: Check[] = [
  ...GASES.map(
    (gas): Check => ({
      what: `lambda of dry gas, ${gas[0]}`,
      source: gas[5] === 12 ? 'singerHarley' : 'brettschneider',
      published: gas[6],
      tolerance: absolute(1e-4),
      run: () => ofGas(gas),
    }),
  ),
  {
    what: 'the first of these gases, as an example prints it: about 0.98',
    source: 'brettschneiderPrinted',
    published: [0.975, 0.985],
    tolerance: absolute(0),
    run: () => ofGas(GASES[0]),
  },
];

/** Lambda, then CO2, CO, H2O, H2 of wet gas of CH1.87 with the water-gas constant 3.7. */
const RICH = [
  [0.7, 0.0678, 0.1043, 0.1137, 0.0472],
  [0.8, 0.0897, 0.0674, 0.1221, 0.0248],
  [0.9, 0.112, 0.0326, 0.1253, 0.0099],
] as const;

const richChecks: Check[] = RICH.flatMap(([lambda, CO2, CO, H2O, H2]) =>
  Object.entries({ CO2, CO, H2O, H2 }).map(
    ([name, share]): Check => ({
      what: `wet gas of CH1.87 at lambda ${lambda}, water-gas constant 3.7: share of ${name}`,
      source: 'mit261',
      published: share,
      tolerance: absolute(1e-4),
      run: () => wetExhaust(1.87, lambda, 3.7)[name as 'CO'],
    }),
  ),
);

const probeChecks: Check[] = (
  [
    [900, 0.391],
    [3000, 0.126],
    [6000, 0.0635],
  ] as const
).map(([speed, left]) => ({
  what: `share of one cylinder's swing that a probe of 50 ms shows at ${speed} rpm`,
  source: 'firstOrder',
  published: left,
  tolerance: relative(5e-3),
  run: () => swingLeft(speed, 0.05),
}));

/** Charge [g], speed [rpm], torque at 14.6:1 [N m], share that 5 % of lambda costs [%]. */
const TORQUES = [
  [0.4, 2000, 131.0, 0.35],
  [0.25, 1000, 68.6, 0.66],
  [0.2, 1000, 48.07, undefined],
  [0.15, 800, 27.13, 1.7],
] as const;

const costChecks: Check[] = [
  {
    what: 'torque that a spread of 0.73 in the air-fuel ratio costs [N m]',
    source: 'crossleyCook',
    published: 0.453,
    tolerance: relative(0.01),
    run: () => spreadLoss(0.73 / 14.6),
  },
  ...TORQUES.flatMap(([charge, speed, torque, share]): Check[] => {
    const ours = () => mixtureTorque(charge / 1e3, speed, 1);
    const torqueCheck: Check = {
      what: `torque of the surface at ${charge} g, ${speed} rpm, best spark, 14.6:1 [N m]`,
      source: 'crossleyCook',
      published: torque,
      tolerance: relative(1e-3),
      run: ours,
    };
    if (share === undefined) return [torqueCheck];
    return [
      torqueCheck,
      {
        what: `share of it that a spread of 5 % costs, ${charge} g and ${speed} rpm [%]`,
        source: 'crossleyCook',
        published: share,
        // The value is printed to two digits.
        tolerance: relative(0.02),
        run: () => (100 * spreadLoss(0.05)) / ours(),
      },
    ];
  }),
];

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

export const mixture: Group = {
  name: 'Mixture by cylinder',
  checks: [
    ...roundTrips,
    ...gasChecks,
    ...richChecks,
    ...probeChecks,
    ...costChecks,
    ...plateChecks,
    ...gaugeChecks,
    ...spreadChecks,
  ],
};
