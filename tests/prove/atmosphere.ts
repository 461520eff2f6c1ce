/** Standard atmosphere, moist air, power correction. */

import {
  powerCorrectionDin70020,
  powerCorrectionIso1585,
  powerCorrectionSaeJ1349,
} from '../../sim/decision/powerCorrection.ts';
import {
  geopotentialAltitude,
  moistAirDensity,
  saturationVapourPressure,
  standardAtmosphere,
  vapourFraction,
} from '../../sim/gas/atmosphere.ts';
import { componentOf, DRY_AIR } from '../../sim/gas/component.ts';
import { viscosity } from '../../sim/gas/viscosity.ts';
import { airAndProducts } from '../gases.ts';
import { absolute, type Check, type Group, relative } from './check.ts';

const gas = airAndProducts();

/** Z [m], T [K], p [Pa], density [kg/m3], speed of sound [m/s], viscosity [Pa s]. */
const GEOMETRIC = [
  [0, 288.15, 101325.0, 1.225, 340.294, 1.7894e-5],
  [500, 284.9, 95461.3, 1.1673, 338.37, 1.7737e-5],
  [1000, 281.651, 89876.3, 1.11166, 336.435, 1.7579e-5],
  [2000, 275.154, 79501.4, 1.00655, 332.532, 1.726e-5],
  [3000, 268.659, 70121.2, 0.90925, 328.584, 1.6938e-5],
] as const;

const geometricChecks: Check[] = GEOMETRIC.flatMap(([Z, T, p, rho, a, mu]): Check[] => {
  const air = () => standardAtmosphere(geopotentialAltitude(Z));
  const row = (quantity: string, published: number, share: number, run: () => number): Check => ({
    what: `at ${Z} m geometric altitude: ${quantity}`,
    source: 'standardAtmosphere',
    published,
    tolerance: relative(share),
    run,
  });
  return [
    row('T [K]', T, 1e-5, () => air().temperature),
    row('p [Pa]', p, 1e-5, () => air().pressure),
    row('density [kg/m3]', rho, 1e-4, () => moistAirDensity(air().pressure, air().temperature, 0)),
    // The standard has gamma 1.4; ours follows the polynomials.
    row('speed of sound [m/s]', a, 1e-3, () => gas.soundSpeed(T, 0, 0)),
    row('viscosity [Pa s]', mu, 1e-4, () => viscosity(T)),
  ];
});

/** H [m], T [K], p [Pa], density [kg/m3]. */
const geopotentialChecks: Check[] = (
  [
    [500, 284.9, 95460.84, 1.1673],
    [1000, 281.65, 89874.56, 1.1116],
    [1500, 278.4, 84556.0, 1.0581],
    [2000, 275.15, 79495.2, 1.0065],
    [3000, 268.65, 70108.5, 0.9091],
  ] as const
).flatMap(([H, T, p, rho]): Check[] => [
  {
    what: `at ${H} m geopotential altitude: T [K]`,
    source: 'standardAtmosphere',
    published: T,
    tolerance: relative(1e-6),
    run: () => standardAtmosphere(H).temperature,
  },
  {
    what: `at ${H} m geopotential altitude: p [Pa]`,
    source: 'standardAtmosphere',
    published: p,
    tolerance: relative(1e-6),
    run: () => standardAtmosphere(H).pressure,
  },
  {
    what: `at ${H} m geopotential altitude: density [kg/m3]`,
    source: 'standardAtmosphere',
    published: rho,
    tolerance: relative(1e-4),
    run: () =>
      moistAirDensity(standardAtmosphere(H).pressure, standardAtmosphere(H).temperature, 0),
  },
]);

/** t [degC], p [Pa], RH, density [kg/m3], vapour fraction, density of the ideal mixture. */
const MOIST = [
  [20, 101325, 0, 1.20456, 0, 1.2041],
  [20, 101325, 0.5, 1.19931, 0.011589, 1.19882],
  [25, 101325, 0.5, 1.17732, 0.015706, 1.17688],
  [25, 99000, 0, 1.15712, 0, 1.15674],
] as const;

const moistChecks: Check[] = [
  ...MOIST.flatMap(([t, p, RH, real, x, ideal]): Check[] => {
    const at = `air of ${t} degC, ${p} Pa, humidity ${RH}`;
    const density = () => moistAirDensity(p, t + 273.15, RH);
    return [
      {
        what: `${at}: density [kg/m3]`,
        source: 'cipm',
        published: real,
        tolerance: relative(1e-3),
        run: density,
      },
      {
        what: `${at}: density of the ideal mixture [kg/m3]`,
        source: 'cipm',
        published: ideal,
        tolerance: relative(1e-4),
        run: density,
      },
      {
        what: `${at}: mole fraction of vapour`,
        source: 'cipm',
        published: x,
        tolerance: absolute(1e-6),
        run: () => vapourFraction(p, t + 273.15, RH),
      },
    ];
  }),
  ...(
    [
      [20, 2339.2],
      [25, 3169.8],
    ] as const
  ).map(
    ([t, p]): Check => ({
      what: `saturation pressure of water at ${t} degC [Pa]`,
      source: 'cipm',
      published: p,
      tolerance: relative(1e-4),
      run: () => saturationVapourPressure(t + 273.15),
    }),
  ),
  {
    what: 'dry air: molar mass [g/mol]',
    source: 'standardAtmosphere',
    published: 28.9644,
    tolerance: relative(2e-4),
    run: () => componentOf(DRY_AIR).molarMass * 1e3,
  },
];

/** Pressure [mbar], t [degC], factors. */
const CORRECTIONS = [
  [990, 25, 1.0, 1.0, 1.0319],
  [1013.25, 20, 0.9632, 0.9627, 0.9998],
  [980, 30, 1.022, 1.0224, 1.0512],
  [950, 35, 1.0701, 1.0718, 1.0933],
  [1000, 15, 0.9684, 0.968, 1.0043],
  [1013, 15, 0.9537, 0.9531],
  // Outside the range of ISO 1585, 0.93 to 1.07: the formula alone.
  [850, 20, 1.1828, 1.1886],
] as const;

const STANDARDS = [
  ['SAE J1349', 'saeJ1349', powerCorrectionSaeJ1349],
  ['ISO 1585', 'iso1585', powerCorrectionIso1585],
  ['DIN 70020', 'din70020', powerCorrectionDin70020],
] as const;

const correctionChecks: Check[] = CORRECTIONS.flatMap(([mbar, t, ...factors]) =>
  STANDARDS.slice(0, factors.length).map(
    ([name, source, factor], i): Check => ({
      what: `power correction ${name} at ${mbar} mbar, ${t} degC`,
      source,
      published: factors[i]!,
      tolerance: absolute(1e-4),
      run: () => factor(mbar * 100, t + 273.15),
    }),
  ),
);

export const atmosphere: Group = {
  name: 'Atmosphere and moist air',
  checks: [...geometricChecks, ...geopotentialChecks, ...moistChecks, ...correctionChecks],
};
