/** Riemann problems, shocks, nozzles, friction, heat, finite-amplitude waves. */

import { fanningFactor } from '../../sim/loss/friction.ts';
import { criticalRatio, flowFunction } from '../../sim/loss/nozzle.ts';
import { AIR_R } from '../gases.ts';
import { behindWave, stoppedGas } from './cases/leavingWave.ts';
import {
  P0 as NOZZLE_P0,
  T0 as NOZZLE_T0,
  shockedNozzle,
  subsonicThroat,
} from './cases/nozzleFlow.ts';
import { densityError, exactTube, plateau, SHOCK_TUBES } from './cases/shockTube.ts';
import { DIAMETER, endMach, endTotal, LENGTH, P0, steadyPipe, T0 } from './cases/steadyPipe.ts';
import { breakingDistance } from './cases/steepening.ts';
import { absolute, allBy, type Check, type Group, once, relative } from './check.ts';

const starChecks: Check[] = SHOCK_TUBES.flatMap((tube) => {
  const [pressure, velocity, left, right] = tube.star;
  const { source } = tube;
  const within = relative(tube.digits);
  const what = (quantity: string) => `${tube.name}: ${quantity}, exact solver`;
  return [
    {
      what: what('p*'),
      source,
      published: pressure,
      tolerance: within,
      run: () => exactTube(tube).pStar,
    },
    {
      what: what('u*'),
      source,
      published: velocity,
      tolerance: absolute(tube.digits * Math.max(Math.abs(velocity), 1)),
      run: () => exactTube(tube).uStar,
    },
    {
      what: what('density left of the contact'),
      source,
      published: left,
      tolerance: within,
      run: () => exactTube(tube).rhoStarLeft,
    },
    {
      what: what('density right of the contact'),
      source,
      published: right,
      tolerance: within,
      run: () => exactTube(tube).rhoStarRight,
    },
  ];
});

const sod = SHOCK_TUBES[0]!;

/** Scheme on 200 cells; blast waves are far beyond what engines need, and get 2 %. */
const plateauChecks: Check[] = [
  [SHOCK_TUBES[0]!, 5e-3],
  [SHOCK_TUBES[1]!, 5e-3],
  [SHOCK_TUBES[3]!, 2e-2],
].flatMap(([tube, tolerance]): Check[] => {
  const { name, source, star } = tube as (typeof SHOCK_TUBES)[number];
  const solved = once(() => plateau(tube as (typeof SHOCK_TUBES)[number], 200));
  const within = relative(tolerance as number);
  return [
    {
      what: `${name}: p*, scheme on 200 cells`,
      source,
      published: star[0],
      tolerance: within,
      run: () => solved().pressure,
    },
    {
      what: `${name}: u*, scheme on 200 cells`,
      source,
      published: star[1],
      tolerance: within,
      run: () => solved().velocity,
    },
  ];
});

const schemeChecks: Check[] = [
  ...plateauChecks,
  {
    what: 'Sod: L1 error of density, scheme on 200 cells (published: the exact solution)',
    source: 'sod',
    published: 0,
    tolerance: absolute(0.01),
    run: () => densityError(sod, 200),
  },
];

/** M, p/p0, A/A* of isentropic flow, gamma 1.4. */
const ISENTROPIC = [
  [0.1, 0.993031, 5.821829],
  [0.2, 0.972497, 2.96352],
  [0.3, 0.93947, 2.035065],
  [0.4, 0.895614, 1.59014],
  [0.5, 0.843019, 1.339844],
  [0.6, 0.784004, 1.1882],
  [0.8, 0.656022, 1.03823],
  [1.0, 0.528282, 1.0],
] as const;

const isentropicChecks: Check[] = ISENTROPIC.map(([mach, pressure, area]) => ({
  what: `isentropic nozzle, M = ${mach}: A/A* from p/p0 = ${pressure}`,
  source: 'naca1135',
  published: area,
  // p/p0 is printed to six digits; near M = 0.1 that is 1e-4 of A/A*.
  tolerance: relative(1e-4),
  run: () => flowFunction(criticalRatio(1.4), 1.4) / flowFunction(pressure, 1.4),
}));

/** Shock Mach number, p2/p1, rho2/rho1 (NACA 1135, table II). */
const SHOCKS = [
  [1.2, 1.513333, 1.341615],
  [1.5, 2.458333, 1.862069],
  [2.0, 4.5, 2.666667],
  [2.5, 7.125, 3.333333],
  [3.0, 10.333333, 3.857143],
] as const;

/** Gas that runs against a shut end is brought to rest by the shock that the end sends back. */
const shockChecks: Check[] = SHOCKS.flatMap(([mach, pressure, density]): Check[] => {
  const solved = once(() => stoppedGas(mach));
  return [
    {
      what: `gas stopped by a shut end, shock of M = ${mach}: p2/p1, scheme on 400 cells`,
      source: 'naca1135',
      published: pressure,
      tolerance: relative(5e-3),
      run: () => solved().pressure,
    },
    {
      what: `gas stopped by a shut end, shock of M = ${mach}: rho2/rho1, scheme on 400 cells`,
      source: 'naca1135',
      published: density,
      tolerance: relative(5e-3),
      run: () => solved().density,
    },
  ];
});

const shocked = once(shockedNozzle);
const CHOKED = (0.684731 * NOZZLE_P0) / Math.sqrt(AIR_R * NOZZLE_T0);

const nozzleChecks: Check[] = [
  {
    what: 'nozzle A = 1 + 2.2 (x - 1.5)^2 at pe/p0 = 0.6784, 100 cells: place of the shock, within a cell',
    source: 'anderson',
    published: 2.09933,
    tolerance: absolute(0.03),
    run: () => shocked().shockPlace,
  },
  {
    what: 'same nozzle: Mach number at the exit',
    source: 'anderson',
    published: 0.143076,
    tolerance: relative(5e-3),
    run: () => shocked().exitMach,
  },
  {
    what: 'same nozzle: total pressure behind the shock over that before it',
    source: 'anderson',
    published: 0.688171,
    tolerance: relative(5e-3),
    run: () => shocked().totalPressureRatio,
  },
  {
    what: 'same nozzle: mass flow over p0 / sqrt(R T0) psi*',
    source: 'naca1135',
    published: 1,
    tolerance: relative(1e-3),
    run: () => shocked().flow / CHOKED,
  },
  ...ISENTROPIC.filter(([mach]) => [0.3, 0.5, 0.6].includes(mach)).flatMap(
    ([mach, pressure, area]): Check[] => {
      const throat = once(() => subsonicThroat(area));
      return [
        {
          what: `same nozzle below choking: p/p0 at the throat, M = ${mach}`,
          source: 'naca1135',
          published: pressure,
          tolerance: relative(5e-3),
          run: () => throat().pressure,
        },
        {
          what: `same nozzle below choking: M at the throat, A/A* = ${area}`,
          source: 'naca1135',
          published: mach,
          tolerance: relative(5e-3),
          run: () => throat().mach,
        },
      ];
    },
  ),
];

/** M, 4 f L* / D, p/p*, T/T*, p/p0: Fanno flow, gamma 1.4. */
export const FANNO = {
  0.2: { length: 14.533266, p: 5.455447, T: 1.190476, head: 0.972497 },
  0.3: { length: 5.299253, p: 3.619057, T: 1.178782, head: 0.93947 },
  0.4: { length: 2.308493, p: 2.695819, T: 1.162791, head: 0.895614 },
  0.5: { length: 1.06906, p: 2.13809, T: 1.142857, head: 0.843019 },
  0.6: { length: 0.490822, p: 1.763364, T: 1.119403, head: 0.784004 },
  // p/p0 = (1 + M^2 / 5)^-3.5.
  0.7: { length: 0.208139, p: 1.493452, T: 1.092896, head: 0.720928 },
} as const;

/** Inlet and outlet Mach number, and what takes the pressure: wall friction or a spread loss. */
const FANNO_RUNS = [
  [0.3, 0.5, 'friction'],
  [0.2, 0.6, 'friction'],
  [0.4, 0.7, 'friction'],
  [0.3, 0.6, 'spread loss'],
] as const;

const fannoChecks: Check[] = FANNO_RUNS.flatMap(([from, to, by]): Check[] => {
  const [inlet, outlet] = [FANNO[from], FANNO[to]];
  const heads = inlet.length - outlet.length;
  const solved = once(() => {
    const back = (P0 * inlet.head * outlet.p) / inlet.p;
    const byFriction = by === 'friction';
    return steadyPipe({
      cells: 80,
      back,
      time: 0.25,
      options: byFriction ? {} : { lossPerLength: () => heads / LENGTH },
      fanning: byFriction ? (heads * DIAMETER) / (4 * LENGTH) : 0,
    });
  });
  const what = (quantity: string) => `Fanno, M ${from} to ${to} by ${by}: ${quantity}`;
  const tolerance = relative(5e-3);
  return [
    {
      what: what('M in'),
      source: 'fanno',
      published: from,
      tolerance,
      run: () => endMach(solved().endState('low')),
    },
    {
      what: what('M out'),
      source: 'fanno',
      published: to,
      tolerance,
      run: () => endMach(solved().endState('high')),
    },
    {
      what: what('T out / T in'),
      source: 'fanno',
      published: outlet.T / inlet.T,
      tolerance,
      run: () => {
        const [low, high] = [solved().endState('low'), solved().endState('high')];
        return high[2]! / high[0]! / (low[2]! / low[0]!);
      },
    },
  ];
});

/** M, T0/T0*, p/p*: Rayleigh flow, gamma 1.4. */
const RAYLEIGH = {
  0.2: { total: 0.173554, p: 2.272727, head: 0.972497 },
  0.3: { total: 0.34686, p: 2.131439, head: 0.93947 },
  0.4: { total: 0.529027, p: 1.960784, head: 0.895614 },
  0.5: { total: 0.691358, p: 1.777778, head: 0.843019 },
} as const;

const rayleighChecks: Check[] = (
  [
    [0.2, 0.3],
    [0.3, 0.5],
  ] as const
).flatMap(([from, to]): Check[] => {
  const [inlet, outlet] = [RAYLEIGH[from], RAYLEIGH[to]];
  const solved = once(() => {
    const heat = 3.5 * AIR_R * T0 * (outlet.total / inlet.total - 1);
    const back = (P0 * inlet.head * outlet.p) / inlet.p;
    return steadyPipe({ cells: 80, back, time: 0.25, heat });
  });
  const what = (quantity: string) => `Rayleigh, M ${from} to ${to} by heat alone: ${quantity}`;
  const tolerance = relative(1e-2);
  return [
    {
      what: what('M in'),
      source: 'rayleigh',
      published: from,
      tolerance,
      run: () => endMach(solved().endState('low')),
    },
    {
      what: what('M out'),
      source: 'rayleigh',
      published: to,
      tolerance,
      run: () => endMach(solved().endState('high')),
    },
    {
      what: what('T0 out / T0 in'),
      source: 'rayleigh',
      published: outlet.total / inlet.total,
      tolerance,
      run: () => endTotal(solved().endState('high')) / endTotal(solved().endState('low')),
    },
  ];
});

const frictionChecks: Check[] = (
  [
    [1e5, 0, 0.01799],
    [1e5, 1e-3, 0.022175],
    [5e4, 0, 0.020891],
  ] as const
).map(([reynolds, roughness, darcy]) => ({
  what: `Darcy friction factor at Re = ${reynolds}, e/D = ${roughness}`,
  source: 'colebrook',
  published: darcy,
  // Haaland's form is used, stated to 2 % of Colebrook.
  tolerance: relative(0.03),
  run: () => 4 * fanningFactor(reynolds, roughness),
}));

const steepeningChecks: Check[] = (
  [
    [0.05, 100, 12.746, 0.05],
    [0.1, 100, 6.373, 0.05],
    [0.1, 200, 3.187, 0.05],
    [0.2, 200, 1.593, 0.1],
    [0.2, 400, 0.797, 0.1],
    [0.3, 400, 0.531, 0.1],
  ] as const
).map(([amplitude, frequency, distance, tolerance]) => ({
  what: `sine of dp/p0 = ${amplitude} at ${frequency} Hz breaks after [m]`,
  source: 'riemann',
  published: distance,
  tolerance: relative(tolerance),
  run: () => breakingDistance(amplitude, frequency, distance),
}));

/** p/p0 = (1 + (gamma - 1)/2 u/a0)^(2 gamma/(gamma - 1)) of a wave that leaves a boundary. */
const simpleWaveChecks: Check[] = [-0.05, -0.2, 0.05].map((u) => ({
  what: `simple wave that leaves a boundary: p/p0 at u/a0 = ${u}`,
  source: 'riemann',
  published: (1 + 0.2 * u) ** 7,
  tolerance: relative(1e-9),
  run: () => behindWave(u),
}));

export const gasDynamics: Group = {
  name: 'Gas dynamics',
  checks: [
    ...starChecks,
    ...allBy('solver', schemeChecks),
    ...isentropicChecks,
    ...allBy('solver', [...shockChecks, ...nozzleChecks, ...fannoChecks, ...rayleighChecks]),
    ...frictionChecks,
    ...allBy('solver', [...simpleWaveChecks, ...steepeningChecks]),
  ],
};
