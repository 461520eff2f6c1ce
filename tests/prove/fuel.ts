/** Fuels: combustion, latent heat, vapour pressure, cooling of the mixture, drops at rest. */
import { combustionProducts } from '../../sim/gas/combustionProducts.ts';
import { DRY_AIR, massOf, totalMoles } from '../../sim/gas/component.ts';
import { type FuelName, fuelNamed } from '../../sim/gas/fuel.ts';
import { airAndProducts } from '../gases.ts';
import { dropLife } from './cases/restingDrop.ts';
import { absolute, type Check, type Group, once, relative } from './check.ts';

const gas = airAndProducts();
const AIR_CP = gas.heatCapacityPressure(300, 0, 0);
const AIR_MASS = massOf(DRY_AIR) / totalMoles(DRY_AIR);

/** M [g/mol], Tb [K], hfg at Tb and at 298 K [kJ/kg], stoichiometric air, pv at 20 and 37.8 degC [kPa]. */
const PURE: [FuelName, number, number, number, number, number, number, number][] = [
  ['iso-octane', 114.229, 372.37, 269.5, 307.6, 15.13, 5.15, 11.79],
  ['n-heptane', 100.202, 371.55, 317.1, 365.0, 15.18, 4.73, 11.18],
  ['toluene', 92.139, 383.78, 360.1, 412.5, 13.5, 2.91, 7.12],
  ['ethanol', 46.068, 351.44, 837.0, 918.6, 9.0, 5.86, 15.95],
  ['methanol', 32.042, 337.75, 1098.9, 1168.2, 6.47, 13.0, 31.94],
];

const pureChecks: Check[] = PURE.flatMap(
  ([name, M, Tb, atBoiling, at298, afr, pv20, pv38]): Check[] => {
    const fuel = fuelNamed(name);
    return [
      {
        what: `${name}: molar mass [g/mol]`,
        by: 'copy',
        source: 'yaws',
        published: M,
        tolerance: relative(1e-4),
        run: () => fuel.molarMass * 1e3,
      },
      {
        what: `${name}: stoichiometric air per fuel by mass`,
        source: 'atomBalance',
        published: afr,
        tolerance: relative(3e-3),
        run: () => fuel.stoichiometricAirFuelRatio,
      },
      {
        what: `${name}: latent heat at ${Tb} K [kJ/kg]`,
        by: 'copy',
        source: 'yaws',
        published: atBoiling,
        tolerance: relative(0.03),
        run: () => fuel.latentHeat(Tb) / 1e3,
      },
      {
        what: `${name}: latent heat at 298 K [kJ/kg]`,
        by: 'copy',
        source: 'yaws',
        published: at298,
        tolerance: relative(0.03),
        run: () => fuel.latentHeat(298.15) / 1e3,
      },
      {
        what: `${name}: vapour pressure at 20 degC [kPa]`,
        by: 'copy',
        source: 'poling',
        published: pv20,
        tolerance: relative(2e-3),
        run: () => fuel.vapourPressure(293.15) / 1e3,
      },
      {
        what: `${name}: vapour pressure at 37.8 degC [kPa]`,
        by: 'copy',
        source: 'poling',
        published: pv38,
        tolerance: relative(2e-3),
        run: () => fuel.vapourPressure(310.95) / 1e3,
      },
      {
        what: `${name}: vapour pressure at its boiling point ${Tb} K [kPa]`,
        by: 'copy',
        source: 'yaws',
        published: 101.325,
        tolerance: relative(5e-3),
        run: () => fuel.vapourPressure(Tb) / 1e3,
      },
    ];
  },
);

const vapourChecks: Check[] = (
  [
    ['iso-octane', 188.41],
    ['n-heptane', 165.2],
    ['toluene', 103.75],
    ['ethanol', 65.21],
    ['methanol', 44.06],
  ] as [FuelName, number][]
).map(([name, cp]) => ({
  what: `${name}: cp of the vapour at 298 K [J/mol K]`,
  by: 'copy',
  source: 'poling',
  published: cp,
  tolerance: relative(5e-3),
  run: () => fuelNamed(name).vapourHeatCapacity(298.15) * fuelNamed(name).molarMass,
}));

const heatChecks: Check[] = (
  [
    ['iso-octane', 44.3],
    ['toluene', 40.6],
    ['ethanol', 26.9],
    ['methanol', 20.0],
  ] as [FuelName, number][]
).map(([name, heat]) => ({
  what: `${name}: lower heating value [MJ/kg]`,
  by: 'copy',
  source: 'heatingValues',
  published: heat,
  tolerance: relative(6e-3),
  run: () => fuelNamed(name).lowerHeatingValue / 1e6,
}));

const blendChecks: Check[] = [
  {
    what: 'E85: stoichiometric air per fuel by mass',
    source: 'atomBalance',
    published: 9.8,
    tolerance: relative(5e-3),
    run: () => fuelNamed('E85').stoichiometricAirFuelRatio,
  },
  {
    what: 'E85: latent heat at 298 K [kJ/kg]',
    by: 'copy',
    source: 'atomBalance',
    published: 837,
    tolerance: relative(0.03),
    run: () => fuelNamed('E85').latentHeat(298.15) / 1e3,
  },
  {
    what: 'petrol: stoichiometric air against CH1.87',
    source: 'atomBalance',
    published: 14.6,
    // The surrogate is a little richer in hydrogen.
    tolerance: relative(0.015),
    run: () => fuelNamed('petrol').stoichiometricAirFuelRatio,
  },
  {
    what: 'petrol: latent heat at 298 K [kJ/kg]',
    by: 'copy',
    source: 'nrel',
    published: [325, 375],
    tolerance: absolute(0),
    run: () => fuelNamed('petrol').latentHeat(298.15) / 1e3,
  },
  {
    what: 'petrol: density at 25 degC [kg/m3]; 720 to 775 at 15 degC less 0.8 kg/m3 K',
    by: 'copy',
    source: 'en228',
    published: [712, 767],
    tolerance: absolute(0),
    run: () => fuelNamed('petrol').density,
  },
  {
    what: 'iso-octane burned with its air: heat over lower heating value',
    source: 'atomBalance',
    published: 1,
    tolerance: absolute(1e-9),
    run: () => {
      const fuel = fuelNamed('iso-octane');
      return combustionProducts(fuel, 1).heat / fuel.lowerHeatingValue;
    },
  },
];

/** Full evaporation at lambda 1: drop [K] without and with the liquid cooled too, dew point [K], mole fraction. */
const COOLING: [FuelName, number, number, number, number][] = [
  ['iso-octane', 20.2, 17.7, 272.5, 0.0165],
  ['toluene', 30.4, 26.2, 288.9, 0.0228],
  ['ethanol', 101.5, 81.7, 295.2, 0.0653],
  ['methanol', 179.6, 134.2, 292.3, 0.1226],
];

const coolingChecks: Check[] = COOLING.flatMap(([name, drop, cooled, dew, fraction]): Check[] => {
  const fuel = fuelNamed(name);
  const afr = fuel.stoichiometricAirFuelRatio;
  const alcohol = name === 'ethanol' || name === 'methanol';
  const tolerance = alcohol ? relative(0.05) : absolute(2);
  const moles = () => 1 / (1 + (afr * fuel.molarMass) / AIR_MASS);
  return [
    {
      what: `${name}, all evaporated into its air: drop of temperature [K]`,
      source: 'mixtureCooling',
      published: drop,
      tolerance,
      run: () => fuel.latentHeat(298.15) / (afr * AIR_CP),
    },
    {
      what: `${name}, the same with the fuel cooled too [K]`,
      source: 'mixtureCooling',
      published: cooled,
      tolerance,
      run: () => fuel.latentHeat(298.15) / (afr * AIR_CP + fuel.liquidHeatCapacity),
    },
    {
      what: `${name}, all evaporated: mole fraction of vapour`,
      source: 'atomBalance',
      published: fraction,
      tolerance: relative(5e-3),
      run: moles,
    },
    {
      what: `${name}, all evaporated: dew point at 101.3 kPa [K]`,
      source: 'dewPoint',
      published: dew,
      tolerance: absolute(0.2),
      run: () => dewPoint((T) => fuel.vapourPressure(T), moles() * 101325),
    },
  ];
});

function dewPoint(pressure: (T: number) => number, partial: number): number {
  let [low, high] = [200, 400];
  for (let i = 0; i < 60; i++) {
    const middle = 0.5 * (low + high);
    if (pressure(middle) > partial) high = middle;
    else low = middle;
  }
  return low;
}

/** Air [K], wet bulb [K], B, K [mm2/s], life of 50 and 100 um [s]. */
const DROPS = [
  [293, 283.0, 0.121, 0.0093, 0.27, 1.08],
  [313, 294.7, 0.229, 0.0176, 0.14, 0.57],
  [333, 304.2, 0.372, 0.0282, 0.089, 0.35],
  [363, 315.6, 0.651, 0.0478, 0.052, 0.21],
] as const;

const dropChecks: Check[] = DROPS.flatMap(([T, wetBulb, B, K, life50, life100]): Check[] => {
  const small = once(() => dropLife(50e-6, T));
  const large = once(() => dropLife(100e-6, T));
  const row = (quantity: string, published: number, run: () => number): Check => ({
    what: `drop of iso-octane at rest in air of ${T} K: ${quantity}`,
    source: 'spalding',
    published,
    tolerance: relative(0.2),
    run,
  });
  return [
    row('wet bulb below the air [K]', T - wetBulb, () => T - small().wetBulb),
    row('Spalding number', B, () => small().B),
    row('rate at which d2 falls [mm2/s]', K, () => small().K),
    row('life of 50 um [s]', life50, () => small().life),
    row('life of 100 um [s]', life100, () => large().life),
  ];
});

export const fuel: Group = {
  name: 'Fuel',
  checks: [
    ...pureChecks,
    ...vapourChecks,
    ...heatChecks,
    ...blendChecks,
    ...coolingChecks,
    ...dropChecks,
  ],
};
