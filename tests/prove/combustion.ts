/** Heat transfer, burn, compression, thermodynamics of air and burned gas. */
import { wiebeBurn } from '../../sim/cylinder/wiebe.ts';
import { componentOf, DRY_AIR } from '../../sim/gas/component.ts';
import { Gas } from '../../sim/gas/gas.ts';
import {
  formationEnthalpy,
  heatCapacityMolar,
  SPECIES,
  type SpeciesName,
} from '../../sim/gas/species.ts';
import { airAndProducts, perfectAir } from '../gases.ts';
import { motor, wallCoefficient } from './cases/motored.ts';
import { absolute, type Check, type Group, relative } from './check.ts';

const gas = airAndProducts();

const cylinderChecks: Check[] = [
  {
    what: 'Woschni: B 86 mm, 2000 kPa, 800 K, w 34.2 m/s [W/m2 K]',
    source: 'woschni',
    published: 994.6,
    tolerance: relative(5e-3),
    run: () => wallCoefficient(0.086, { pressure: 2e6, temperature: 800 }, 34.2),
  },
  ...(
    [
      [0.25, 1 - Math.exp(-5 * 0.25 ** 3)],
      [0.5, 1 - Math.exp(-5 * 0.5 ** 3)],
      [0.75, 1 - Math.exp(-5 * 0.75 ** 3)],
    ] as const
  ).map(
    ([part, share]): Check => ({
      what: `Wiebe, a = 5, m = 2: burned after ${part} of the duration, share of all that burns`,
      source: 'wiebe',
      published: share / (1 - Math.exp(-5)),
      tolerance: absolute(1e-9),
      run: () => {
        const burn = wiebeBurn(9, 25);
        return burn.share(burn.start + part * (burn.end - burn.start));
      },
    }),
  ),
  {
    what: 'cylinder turned shut and adiabatic, ratio 12.4, gamma 1.4: pressure ratio, as solved',
    by: 'solver',
    source: 'adiabatic',
    published: 12.4 ** 1.4,
    tolerance: relative(2e-3),
    run: () => Math.max(...motor(perfectAir(), 0.8).map((seen) => seen.pressure)) / 1e5,
  },
];

/** T, then cp of H2O, CO2, CO, O2, N2 [J/mol K] of the polynomials, and of JANAF where given. */
const SPECIES_NAMES: readonly SpeciesName[] = ['H2O', 'CO2', 'CO', 'O2', 'N2'];
const POLYNOMIALS = [
  [298.15, 33.588, 37.135, 29.141, 29.378, 29.071],
  [500, 35.214, 44.62, 29.811, 31.084, 29.636],
  [1000, 41.295, 54.321, 33.163, 34.883, 32.762],
  [1500, 47.291, 58.396, 35.211, 36.575, 34.805],
  [2000, 51.752, 60.359, 36.247, 37.796, 35.988],
  [2500, 54.806, 61.413, 36.816, 38.907, 36.646],
  [3000, 56.791, 62.172, 37.209, 39.996, 37.028],
] as const;
const JANAF = [
  [298.15, 33.59, 37.129, 29.142],
  [500, 35.226, 44.627, 29.794],
  [1000, 41.268, 54.308, 33.183],
  [1500, 47.09, 58.379, 35.217],
  [2000, 51.18, 60.35, 36.25],
  [2500, 53.904, 61.471, 36.836],
  [3000, 55.748, 62.229, 37.217],
] as const;
const JANAF_MEMORY: readonly (readonly [SpeciesName, number, number])[] = [
  ['O2', 298.15, 29.376],
  ['O2', 1000, 34.87],
  ['N2', 298.15, 29.124],
  ['N2', 1000, 32.697],
  ['N2', 2000, 35.971],
];

const molar = (name: SpeciesName, T: number) => heatCapacityMolar(SPECIES[name], T);

const speciesChecks: Check[] = [
  ...POLYNOMIALS.flatMap(([T, ...row]) =>
    row.map(
      (cp, i): Check => ({
        what: `cp of ${SPECIES_NAMES[i]!} at ${T} K [J/mol K]`,
        by: 'copy',
        source: 'nasa',
        published: cp,
        tolerance: absolute(6e-4),
        run: () => molar(SPECIES_NAMES[i]!, T),
      }),
    ),
  ),
  ...JANAF.flatMap(([T, ...row]) =>
    row.map(
      (cp, i): Check => ({
        what: `cp of ${SPECIES_NAMES[i]!} at ${T} K [J/mol K]`,
        by: 'copy',
        source: 'janaf',
        published: cp,
        // Water above 1200 K: the polynomials follow another revision than the table.
        tolerance: relative(i === 0 && T > 1200 ? 0.019 : 3e-3),
        run: () => molar(SPECIES_NAMES[i]!, T),
      }),
    ),
  ),
  ...JANAF_MEMORY.map(
    ([name, T, cp]): Check => ({
      what: `cp of ${name} at ${T} K [J/mol K]`,
      by: 'copy',
      source: 'janafMemory',
      published: cp,
      tolerance: relative(3e-3),
      run: () => molar(name, T),
    }),
  ),
];

/** T, cp [J/kg K], gamma of dry air. */
const AIR = [
  [250, 998.5, 1.40343],
  [300, 1003.5, 1.40065],
  [400, 1015.4, 1.39409],
  [600, 1050.4, 1.37605],
  [800, 1097.7, 1.35408],
  [1000, 1142.8, 1.33542],
  [1500, 1210.2, 1.31094],
  [2000, 1251.0, 1.29779],
] as const;

/** The same of burned iso-octane at lambda 1, frozen. */
const BURNED = [
  [300, 1074, 1.371],
  [600, 1158, 1.3353],
  [900, 1253, 1.3022],
  [1200, 1327, 1.2805],
  [1500, 1381, 1.2666],
  [2000, 1442, 1.2525],
] as const;

const products = componentOf({ CO2: 8, H2O: 9, N2: 47.16 });
const burnedGas = new Gas(componentOf(DRY_AIR), products, products);

const mixtureChecks: Check[] = [
  ...AIR.flatMap(([T, cp, gamma]): Check[] => [
    {
      what: `working gas, dry air at ${T} K: cp [J/kg K]`,
      source: 'nasa',
      published: cp,
      tolerance: relative(5e-3),
      run: () => gas.heatCapacityPressure(T, 0, 0),
    },
    {
      what: `working gas, dry air at ${T} K: gamma`,
      source: 'nasa',
      published: gamma,
      tolerance: relative(1.5e-3),
      run: () => gas.gamma(T, 0, 0),
    },
  ]),
  {
    what: 'burned iso-octane: molar mass [g/mol]',
    source: 'heywoodBurned',
    published: 28.605,
    tolerance: relative(2e-4),
    run: () => products.molarMass * 1e3,
  },
  ...BURNED.flatMap(([T, cp, gamma]): Check[] => [
    {
      what: `burned iso-octane at ${T} K: cp [J/kg K]`,
      source: 'heywoodBurned',
      published: cp,
      tolerance: relative(5e-3),
      run: () => burnedGas.heatCapacityPressure(T, 1, 0),
    },
    {
      what: `burned iso-octane at ${T} K: gamma`,
      source: 'heywoodBurned',
      published: gamma,
      tolerance: relative(5e-3),
      run: () => burnedGas.gamma(T, 1, 0),
    },
  ]),
  ...[1000, 1500, 2000].map(
    (T): Check => ({
      what: `burned iso-octane at ${T} K: gamma against 1.338 - 6e-5 T + 1e-8 T^2`,
      source: 'brunt',
      published: 1.338 - 6e-5 * T + 1e-8 * T * T,
      tolerance: relative(1e-2),
      run: () => burnedGas.gamma(T, 1, 0),
    }),
  ),
];

const formation = (name: SpeciesName) => formationEnthalpy(SPECIES[name]);

const heatOfBurningChecks: Check[] = [
  {
    what: 'heat of burning CO [kJ/mol]',
    source: 'crc',
    published: 283.0,
    tolerance: relative(1e-3),
    run: () => (formation('CO') - formation('CO2')) / 1e3,
  },
  {
    what: 'heat of burning H2, water as vapour [kJ/mol]',
    source: 'crc',
    published: 241.8,
    tolerance: relative(1e-3),
    run: () => (formation('H2') - formation('H2O')) / 1e3,
  },
];

export const combustion: Group = {
  name: 'Heat transfer and combustion',
  checks: [...cylinderChecks, ...speciesChecks, ...mixtureChecks, ...heatOfBurningChecks],
};
