/**
 * How long a manifold takes to fill, and how far a small one empties: the closed formula against an engine whose
 * throttle, pumping and filling were published as fits (cases/meanValueEngine.ts), and against round numbers.
 */
import { chokedFlow, turnsToFill, valveRipple } from '../../sim/decision/idleAir.ts';
import { flowFunction } from '../../sim/loss/nozzle.ts';
import { pumped, pumpedSlope, throttled } from './cases/meanValueEngine.ts';
import { absolute, type Check, type Group, relative } from './check.ts';

const [VOLUME, HEAT] = [2e-3, 287.05 * 288];

/** Time constant [s] by our formula: swept volume times filling from how both flows change with the pressure. */
function fillingTime(rpm: number, p: number): number {
  const n = (2 * Math.PI * rpm) / 60;
  const out = pumpedSlope(p, n);
  const area = pumped(p, n) / throttled(p);
  const into = p <= 0.5 ? 0 : ((1 - 2 * p) / Math.sqrt(p - p * p)) * area;
  const swept = (((out - into) * 1e-3) / 1e5) * HEAT * (120 / rpm);
  return (turnsToFill(VOLUME, swept, 1) * 60) / rpm;
}

const linearised: Check[] = (
  [
    [2000, 0.536, 0.142],
    [2000, 0.769, 0.074],
    [800, 0.515, 0.44],
    [3000, 0.877, 0.023],
  ] as const
).map(([rpm, p, published]) => ({
  what: `two litres of manifold, ${rpm} rpm, ${p} bar: time to one e-th [s]`,
  source: 'crossleyCook',
  published,
  // As printed, to three digits.
  tolerance: relative(0.02),
  run: () => fillingTime(rpm, p),
}));

const inTurns: Check[] = (
  [
    [2000, 0.536, 4.7],
    [800, 0.515, 5.9],
  ] as const
).map(([rpm, p, published]) => ({
  what: `two litres of manifold, ${rpm} rpm, ${p} bar: turns to one e-th`,
  source: 'crossleyCook',
  published,
  tolerance: absolute(0.05),
  run: () => (fillingTime(rpm, p) * rpm) / 60,
}));

const published: Check = {
  what: 'volume whose pressure rises by 0.41328 bar/s for each g/s at 288 K [l]',
  source: 'crossleyCook',
  published: 2,
  tolerance: relative(1e-3),
  by: 'copy',
  run: () => (1e-3 * HEAT * 1e3) / (0.41328 * 1e5),
};

/** Flow past a plate over its choked flow, the fit against the nozzle. */
const nozzleChecks: Check[] = (
  [
    [0.6, 0.9798],
    [0.7, 0.9165],
    [0.8, 0.8],
    [0.9, 0.6],
    [0.95, 0.4359],
  ] as const
).map(([ratio, published]) => ({
  what: `flow past a plate over its choked flow at ${ratio} of ambient`,
  source: 'crossleyCook',
  published,
  // A parabola that chokes at 0.5, where a nozzle chokes at 0.528: 0.9 to 3.1 % apart.
  tolerance: relative(0.035),
  run: () => flowFunction(ratio, 1.4) / flowFunction(0.5, 1.4),
}));

const MILLISECONDS = [
  ['3 l behind one plate, 2 l swept, filling 0.8, 900 rpm', 0.003, 0.002, 0.8, 900, 250],
  ['3 l behind one plate, 2 l swept, filling 0.9, 3000 rpm', 0.003, 0.002, 0.9, 3000, 66.7],
  ['150 cm3 behind each of four plates, filling 0.9, 3000 rpm', 150e-6, 500e-6, 0.9, 3000, 13.3],
] as const;

const roundNumbers: Check[] = MILLISECONDS.map(
  ([what, volume, swept, filling, rpm, published]) => ({
    what: `${what}: time to one e-th [ms]`,
    source: 'airMass',
    published,
    // Rounded to a tenth.
    tolerance: absolute(0.05),
    run: () => (turnsToFill(volume, swept, filling) * 60e3) / rpm,
  }),
);

const turnsOfThree: Check = {
  what: '3 l behind one plate, 2 l swept, filling 0.9: turns to one e-th',
  source: 'airMass',
  published: 3.33,
  tolerance: absolute(5e-3),
  run: () => turnsToFill(0.003, 0.002, 0.9),
};

const IDLE = { pressure: 101325, temperature: 300, gasConstant: 287.05 };
const [CHARGE, IDLE_SPEED] = [0.45e-3, 900];

/** Volume [cm3], swing [kPa]: all of a cycle's air gone at once, the port filling at one rate between. */
const swings: Check[] = (
  [
    [100, 51.7],
    [150, 34.4],
    [300, 17.2],
  ] as const
).map(([volume, published]) => ({
  what: `0.45 g/s at 900 rpm drawn at once from ${volume} cm3 at 300 K: swing [kPa]`,
  source: 'airMass',
  published,
  tolerance: absolute(0.06),
  run: () => {
    const once = { flow: Number.POSITIVE_INFINITY, frequency: IDLE_SPEED / 120, deadTime: 0 };
    return valveRipple(once, CHARGE, volume * 1e-6, IDLE) / 1e3;
  },
}));

const portTime: Check = {
  what: '150 cm3 behind 1.88 mm2 of effective area at 300 K, choked: time to fill [s]',
  source: 'airMass',
  published: 0.4,
  tolerance: absolute(5e-3),
  run: () =>
    (150e-6 * IDLE.pressure) / (IDLE.gasConstant * IDLE.temperature) / chokedFlow(1.88e-6, IDLE),
};

export const filling: Group = {
  name: 'Filling of a manifold',
  checks: [
    ...roundNumbers,
    turnsOfThree,
    published,
    ...linearised,
    ...inTurns,
    ...nozzleChecks,
    ...swings,
    portTime,
  ],
};
