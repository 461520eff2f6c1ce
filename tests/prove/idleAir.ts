/** Air at idle by closed formulas: holes, fillings, one plate off, spark. */
import {
  chokedFlow,
  dutyFor,
  oneApart,
  turnsToFill,
  valveRipple,
} from '../../sim/decision/idleAir.ts';
import { circleArea } from '../../sim/duct/profile.ts';
import { fuelNamed } from '../../sim/gas/fuel.ts';
import { throttleArea } from '../../sim/loss/throttlePlate.ts';
import { bestSpark, mixtureTorque, retardLoss } from '../../sim/mixture/mixtureTorque.ts';
import { convert } from '../../sim/scenario/dimension.ts';
import { absolute, type Check, type Group, relative } from './check.ts';

const AIR = { pressure: 101325, temperature: 293.15, gasConstant: 287.05 };
const DRILLED = 0.82;
const SHUT = { bore: 0.045, shaftDiameter: 0.009, closedAngle: 10, rimGap: 0, openLoss: 0.3 };

const holeChecks: Check[] = (
  [
    ['1 mm2 of effective area', 1e-6, 0.23917],
    ['drilling of 1 mm, Cd 0.82', DRILLED * circleArea(0.001), 0.154],
    // Of a two-litre engine that wants 1.83 g/s, 0.445 g/s each.
    ['four drillings of 1.7 mm, Cd 0.82', 4 * DRILLED * circleArea(0.0017), 1.78],
  ] as const
).map(([what, area, published]) => ({
  what: `${what}, choked at 101.325 kPa, 20 degC: flow [g/s]`,
  source: 'nozzleFlow',
  published,
  tolerance: relative(3e-3),
  run: () => 1e3 * chokedFlow(area, AIR),
}));

/** Pressure [kPa], temperature [K], what 1 mm2 of effective area passes there [g/s]. */
const elsewhere = (
  [
    [101.325, 288.15, 0.24124],
    [84.556, 278.4, 0.20481],
  ] as const
).map(
  ([kPa, temperature, published]): Check => ({
    what: `1 mm2 of effective area, choked at ${kPa} kPa, ${temperature} K: flow [g/s]`,
    source: 'nozzleFlow',
    published,
    tolerance: relative(1e-4),
    run: () => 1e3 * chokedFlow(1e-6, { ...AIR, pressure: 1e3 * kPa, temperature }),
  }),
);

/** A bypass for the air of one plate 0.2 deg off, 0.83 mm2 of effective area. */
const bypassCheck: Check = {
  what: 'drilling of 1.13 mm, Cd 0.82: effective area [mm2]',
  source: 'nozzleFlow',
  published: 0.83,
  // Bore and area are printed to a hundredth.
  tolerance: relative(0.01),
  run: () => {
    const drilled = { ...SHUT, bleed: { bore: 0.00113, open: 1 } };
    return 1e6 * (throttleArea(drilled, SHUT.closedAngle) - throttleArea(SHUT, SHUT.closedAngle));
  },
};

/** Swept volume [l], petrol at idle with no load [US gal/h], air a litre [g/s]. */
const IDLING = [
  [2, 0.16, 0.91],
  [4.6, 0.39, 0.97],
] as const;
const idlingChecks = IDLING.map(
  ([litres, gallons, air]): Check => ({
    what: `${litres} l idling on ${gallons} US gal/h of our petrol, stoichiometric: air a litre [g/s]`,
    source: 'doeIdle',
    published: air,
    // Our petrol is 3 % lighter at 25 degC and wants 1 % more air than that of the source.
    tolerance: relative(0.03),
    run: () => {
      const { density, stoichiometricAirFuelRatio } = fuelNamed('petrol');
      const fuel = convert(gallons, 'gal/hour', 'm^3/s') * density;
      return (1e3 * fuel * stoichiometricAirFuelRatio) / litres;
    },
  }),
);

/** Air of one above the others, then lambda of it and of them. */
const apartChecks = (
  [
    [0.44, 1.297, 0.901],
    [0.2, 1.143, 0.952],
    [0.05, 1.037, 0.988],
  ] as const
).flatMap(([share, one, others]): Check[] =>
  (
    [
      ['it', one, 'one'],
      ['each other', others, 'others'],
    ] as const
  ).map(([who, published, key]) => ({
    what: `one of four with ${100 * share} % more air, equal fuel: lambda of ${who}`,
    source: 'airBalance',
    published,
    tolerance: absolute(6e-4),
    run: () => oneApart(share, 4)[key],
  })),
);

const fillingChecks: Check[] = [
  {
    what: '3 l behind one plate, 2 l swept, filling 0.8: turns to one e-th',
    source: 'airMass',
    published: 3.75,
    tolerance: relative(1e-9),
    // One plate feeds all four, two inductions a turn: V / (eta Vd / 2) turns.
    run: () => turnsToFill(0.003, 0.002, 0.8),
  },
  {
    what: '150 cm3 behind each of four plates, 500 cm3 swept, filling 0.9: turns to one e-th',
    source: 'airMass',
    published: 0.67,
    tolerance: absolute(5e-3),
    run: () => turnsToFill(150e-6, 500e-6, 0.9),
  },
  {
    what: 'valve of 4 g/s at 50 Hz with 2 ms dead for 1 g/s: share of the period driven',
    source: 'airMass',
    published: 0.35,
    tolerance: absolute(1e-12),
    run: () => dutyFor({ flow: 4e-3, frequency: 50, deadTime: 2e-3 }, 1e-3),
  },
  {
    what: 'the same into 200 cm3 at 20 degC: ripple [kPa]',
    source: 'airMass',
    // 1e-3 x 0.75 x 287.05 x 293.15 / (50 x 2e-4).
    published: 6.3111,
    tolerance: relative(1e-4),
    run: () => valveRipple({ flow: 4e-3, frequency: 50, deadTime: 2e-3 }, 1e-3, 2e-4, AIR) / 1e3,
  },
];

/** Charge [g], then what 5, 10, 15, 20, 30 deg after the best spark lose [N m]. */
const SPARK = [
  [0.15, [0.26, 1.03, 2.32, 4.12, 9.27]],
  [0.2, [0.32, 1.28, 2.88, 5.12, 11.52]],
  [0.4, [0.57, 2.28, 5.13, 9.12]],
] as const;

const sparkChecks = SPARK.flatMap(([grams, lost]) =>
  lost.map((published, i): Check => {
    const late = [5, 10, 15, 20, 30][i]!;
    return {
      what: `torque of the surface, ${grams} g a cylinder, spark ${late} deg late: lost [N m]`,
      source: 'crossleyCook',
      published,
      // Half a unit of the last digit told.
      tolerance: absolute(0.005),
      run: () => retardLoss(grams / 1e3, late),
    };
  }),
);

/** Charge [g], speed [rpm], then what 5, 10, 15, 20, 30 deg after the best spark lose [%]. */
const SHARES = [
  [0.15, 800, ['1.0', '3.8', '8.5', '15', '34']],
  [0.4, 2000, ['0.4', '1.7', '3.9', '7.0']],
] as const;

const shareChecks = SHARES.flatMap(([grams, speed, lost]) =>
  lost.map((published, i): Check => {
    const late = [5, 10, 15, 20, 30][i]!;
    return {
      what: `torque of the surface, ${grams} g a cylinder, ${speed} rpm, spark ${late} deg late: lost [%]`,
      source: 'crossleyCook',
      published: Number(published),
      // Told to a tenth or to a unit, of losses that were rounded before.
      tolerance: absolute(published.includes('.') ? 0.06 : 0.5),
      run: () => (100 * retardLoss(grams / 1e3, late)) / mixtureTorque(grams / 1e3, speed, 1),
    };
  }),
);

const bestChecks: Check[] = [
  {
    what: 'spark of most torque of the surface, 0.15 g a cylinder, 800 rpm [deg before top dead centre]',
    source: 'crossleyCook',
    published: 33.1,
    tolerance: absolute(0.05),
    run: () => bestSpark(0.00015, 800),
  },
  {
    what: 'air over fuel of most torque of the surface',
    source: 'crossleyCook',
    published: 12.888,
    tolerance: absolute(5e-4),
    run: richest,
  },
];

/** The crest of a parabola through three mixtures. */
function richest(): number {
  const [lean, middle, rich] = [1.1, 1, 0.9].map((lambda) =>
    mixtureTorque(0.0004, 2000, lambda),
  ) as [number, number, number];
  return 14.6 * (1 + (0.05 * (lean - rich)) / (2 * middle - lean - rich));
}

export const idleAir: Group = {
  name: 'Idle air',
  checks: [
    ...holeChecks,
    ...elsewhere,
    bypassCheck,
    ...idlingChecks,
    ...apartChecks,
    ...fillingChecks,
    ...sparkChecks,
    ...shareChecks,
    ...bestChecks,
  ],
};
