/** Flow function, choking, flow bench, inlet Mach index. */

import { benchArea } from '../../sim/cylinder/valveFlow.ts';
import { criticalRatio, flowFunction, nozzleFlux } from '../../sim/loss/nozzle.ts';
import { readQuantity } from '../../sim/scenario/quantity.ts';
import { INCH_OF_WATER } from '../../sim/units.ts';
import { AIR_R } from '../gases.ts';
import { steadyFlow, wide } from './cases/valveBench.ts';
import { absolute, type Check, type Group, relative } from './check.ts';
import { machIndexChecks } from './machIndex.ts';

const flowFunctionChecks: Check[] = [
  ...(
    [
      [0.99, 0.140662],
      [0.98, 0.197846],
      [0.95, 0.307641],
      [0.93, 0.359862],
      [0.9, 0.422581],
      [0.85, 0.501799],
      [0.8, 0.560661],
      [0.75, 0.605155],
      [0.7, 0.638317],
      [0.65, 0.661888],
      [0.6, 0.676915],
      [0.55, 0.684021],
      [0.5283, 0.684731],
    ] as const
  ).map(
    ([ratio, psi]): Check => ({
      what: `flow function at p2/p01 = ${ratio}, gamma 1.4`,
      source: 'nozzleFlow',
      published: psi,
      tolerance: absolute(1e-6),
      run: () => flowFunction(ratio, 1.4),
    }),
  ),
  ...(
    [
      [1.3, 0.545728, 0.667262],
      [1.33, 0.540364, 0.672628],
      [1.35, 0.536851, 0.676145],
      [1.4, 0.528282, 0.684731],
    ] as const
  ).flatMap(([gamma, ratio, psi]): Check[] => [
    {
      what: `pressure ratio at choking, gamma ${gamma}`,
      source: 'nozzleFlow',
      published: ratio,
      tolerance: absolute(1e-6),
      run: () => criticalRatio(gamma),
    },
    {
      what: `flow function when choked, gamma ${gamma}`,
      source: 'nozzleFlow',
      published: psi,
      tolerance: absolute(1e-6),
      run: () => flowFunction(0, gamma),
    },
  ]),
];

const BENCH_AIR = { pressure: 101325, temperature: 293.15 };
const DROP = 28 * INCH_OF_WATER;
const benchFlux = () =>
  nozzleFlux(BENCH_AIR.pressure, BENCH_AIR.temperature, AIR_R, 1.4, BENCH_AIR.pressure - DROP);
const BENCH_DENSITY = BENCH_AIR.pressure / (AIR_R * BENCH_AIR.temperature);
const benchAreaAt = (inches: number) =>
  benchArea({ ...BENCH_AIR, depression: inches * INCH_OF_WATER }, 0.01);

function pressureOf(text: string): number {
  const quantity = readQuantity(text, 'pressure');
  if (!('value' in quantity)) throw new Error(`${text} is no pressure`);
  return quantity.value;
}

const ways = [
  ['into a cylinder', true],
  ['out of a cylinder', false],
] as const;

const benchChecks: Check[] = [
  {
    what: '28 inH2O as a scenario reads it [Pa]',
    source: 'bench',
    published: 6974.5,
    tolerance: absolute(0.1),
    run: () => pressureOf('28 inH2O'),
  },
  {
    what: 'ideal mass flux at 28 inH2O, air of 20 degC, 101.325 kPa [kg/s m2]',
    source: 'bench',
    published: 124.73,
    tolerance: relative(5e-3),
    run: benchFlux,
  },
  {
    what: 'isentropic velocity at 28 inH2O [m/s]',
    source: 'bench',
    published: 109.0,
    tolerance: relative(5e-3),
    run: () => {
      const ratio = 1 - DROP / BENCH_AIR.pressure;
      return benchFlux() / (BENCH_DENSITY * ratio ** (1 / 1.4));
    },
  },
  ...(
    [
      [0.1, 1.67332],
      [0.25, 1.0583],
    ] as const
  ).map(
    ([inches, scale]): Check => ({
      // sqrt(dp) is the law of slow flow; at 10 to 28 inches of water ours grows 2.5 % less.
      what: `area that passes one flow at ${inches} inH2O over that at 0.28 inH2O`,
      source: 'bench',
      published: scale,
      tolerance: relative(5e-4),
      run: () => benchAreaAt(inches) / benchAreaAt(0.28),
    }),
  ),
  ...ways.map(
    ([way, into]): Check => ({
      what: `valve of 300 mm2 on a pipe at 28 inH2O, ${way}: flux as solved [kg/s m2]`,
      by: 'solver',
      source: 'bench',
      published: 124.73,
      tolerance: relative(5e-3),
      run: () => {
        const to = BENCH_AIR.pressure - DROP;
        return steadyFlow({ duct: wide(), from: BENCH_AIR, to, area: 3e-4, into }, 0.05) / 3e-4;
      },
    }),
  ),
  ...ways.map(
    ([way, into]): Check => ({
      what: `choked valve of 300 mm2 on a pipe, 3 bar to 1 bar, ${way}: m sqrt(R T0) / (A p0) as solved`,
      by: 'solver',
      source: 'nozzleFlow',
      published: 0.684731,
      tolerance: relative(5e-3),
      run: () => {
        const from = { pressure: 3e5, temperature: 400 };
        const flow = steadyFlow({ duct: wide(), from, to: 1e5, area: 3e-4, into }, 0.05);
        return (flow * Math.sqrt(AIR_R * 400)) / (3e-4 * 3e5);
      },
    }),
  ),
];

export const valveFlow: Group = {
  name: 'Valve flow and inlet Mach index',
  checks: [...flowFunctionChecks, ...benchChecks, ...machIndexChecks],
};
