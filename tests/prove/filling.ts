/**
 * How long a manifold takes to fill: the closed formula against an engine whose throttle, pumping and filling
 * were published as fits, and against round numbers.
 *
 *   g(p) = 2 sqrt(p - p^2) above 0.5, else 1    m = -0.366 + 0.08979 N p - 0.0337 N p^2 + 0.0001 N^2 p    dp/dt = 0.41328 (m_in - m)
 *
 *   p  manifold over ambient [bar]   N  [rad/s]   m  [g/s]; so 2.00 litres at 288 K
 */
import { turnsToFill } from '../../sim/decision/idleAir.ts';
import { flowFunction } from '../../sim/loss/nozzle.ts';
import { absolute, type Check, type Group, relative } from './check.ts';

const [VOLUME, HEAT] = [2e-3, 287.05 * 288];

const throttle = (p: number) => (p <= 0.5 ? 1 : 2 * Math.sqrt(p - p * p));
const pumped = (p: number, n: number) =>
  -0.366 + 0.08979 * n * p - 0.0337 * n * p * p + 0.0001 * n * n * p;

/** Time constant [s] by our formula: swept volume times filling from how both flows change with the pressure. */
function fillingTime(rpm: number, p: number): number {
  const n = (2 * Math.PI * rpm) / 60;
  const out = 0.08979 * n - 0.0674 * n * p + 0.0001 * n * n;
  const area = pumped(p, n) / throttle(p);
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

/** Flow past a plate over its choked flow, the fit against the nozzle. */
const throttled: Check[] = (
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

export const filling: Group = {
  name: 'Filling of a manifold',
  checks: [...roundNumbers, ...linearised, ...throttled],
};
