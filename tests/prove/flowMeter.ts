/** Flow meters in flow that pulsates as a sine, and what a climb takes of the air. */
import { climbed } from '../../sim/decision/airSense.ts';
import { readingOverMean } from '../../sim/decision/flowMeter.ts';
import { absolute, type Check, type Group } from './check.ts';

/** Relative amplitude; then by difference of pressure, straight, by powers 0.5 and 0.25, averaged. */
const TABLE = [
  [0.2, 1.01, 1, 0.995, 0.9924],
  [0.5, 1.0607, 1, 0.967, 0.95],
  [1, 1.2247, 1, 0.8106, 0.677],
  [1.5, 1.4577, 1.1763, 0.983, 0.872],
  [2, 1.7321, 1.436, 1.241, 1.128],
  [3, 2.3452, 2.017, 1.795, 1.66],
] as const;

const AVERAGED = Number.POSITIVE_INFINITY;
const LAWS = [
  ['the mean of a difference of pressure', 'pulsatingFlow', { exponent: 2, lag: AVERAGED }],
  ['what is blind to direction, quick and straight', 'rectifiedSine', { exponent: 1, lag: 0 }],
  ['a slow signal by the power 0.5', 'hotElement', { exponent: 0.5, lag: AVERAGED }],
  ['a slow signal by the power 0.25', 'hotElement', { exponent: 0.25, lag: AVERAGED }],
] as const;

/** Even times of one cycle; the kinks of a flow that turns want many. */
const SAMPLES = 20_000;
const sine = (a: number) =>
  Array.from({ length: SAMPLES }, (_, i) => 1 + a * Math.sin((2 * Math.PI * (i + 0.5)) / SAMPLES));

const rows = TABLE.flatMap(([a, ...published]) =>
  LAWS.map(
    ([what, source, law], i): Check => ({
      what: `flow 1 + ${a} sin: reading of ${what} over the mean`,
      source,
      published: published[i]!,
      tolerance: absolute(1e-3),
      run: () => readingOverMean(sine(a), law, 0.02),
    }),
  ),
);

const exact: Check = {
  what: 'flow 1 + sin: reading of a slow signal by the power 0.5 over the mean, 8/pi^2',
  source: 'hotElement',
  published: 8 / Math.PI ** 2,
  tolerance: absolute(1e-6),
  run: () => readingOverMean(sine(1), { exponent: 0.5, lag: AVERAGED }, 0.02),
};

const climbs = (
  [
    ['past a choked plate, p / sqrt(T)', 'choked', -15.1],
    ['by density, p / T', 'density', -13.6],
  ] as const
).map(
  ([what, key, published]): Check => ({
    what: `sea level to 1500 m: change of the air ${what} [%]`,
    source: 'standardAtmosphere',
    published,
    // Half a unit of the last digit told.
    tolerance: absolute(0.05),
    run: () => 100 * (climbed(1500)[key] - 1),
  }),
);

export const flowMeter: Group = { name: 'Flow meters', checks: [...rows, exact, ...climbs] };
