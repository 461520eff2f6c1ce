/** Mixture from exhaust gas, what a probe sees of one cylinder, what a spread costs. */
import { lambdaOfGas } from '../../sim/mixture/exhaustGas.ts';
import { mixtureTorque, spreadLoss } from '../../sim/mixture/mixtureTorque.ts';
import { swingLeft } from '../../sim/mixture/probeLag.ts';
import { dryExhaust, wetExhaust } from './cases/dryExhaust.ts';
import { absolute, type Check, type Group, relative } from './check.ts';
import { plateOffChecks } from './plateOff.ts';

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

/** Which of these gases; lambda by carbon and oxygen alone. */
const SPINDT = [
  [0, 0.9754],
  [1, 1.0731],
  [3, 1.0032],
  [4, 0.8948],
  [5, 1.1385],
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
  ...SPINDT.map(
    ([at, lambda]): Check => ({
      what: `lambda of dry gas, ${GASES[at][0]}, by another method`,
      source: 'spindt',
      published: lambda,
      // What the two methods agree to.
      tolerance: relative(5e-3),
      run: () => ofGas(GASES[at]),
    }),
  ),
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

export const mixture: Group = {
  name: 'Mixture by cylinder',
  checks: [
    ...roundTrips,
    ...gasChecks,
    ...richChecks,
    ...probeChecks,
    ...costChecks,
    ...plateOffChecks,
  ],
};
