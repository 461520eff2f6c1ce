/** End correction and reflection against ka; natural frequencies, closed form and as solved. */

import { circleArea } from '../../sim/duct/profile.ts';
import { END_CORRECTION_FLANGED, END_CORRECTION_UNFLANGED } from '../../sim/loss/endCorrection.ts';
import { reflectionFlanged, reflectionUnflanged } from '../acoustics/endReflection.ts';
import {
  closedConeFrequency,
  helmholtzFrequency,
  naturalFrequencies,
  quarterWaveFrequency,
} from '../acoustics/resonance.ts';
import { arrival } from './cases/arrival.ts';
import { plainTrumpet } from './cases/engine.ts';
import {
  correctionLevineSchwinger,
  LEVINE_SCHWINGER,
  magnitudeLevineSchwinger,
} from './cases/levineSchwinger.ts';
import {
  cone,
  openEndReflection,
  ring,
  ringDuct,
  ringVolume,
  SOUND,
  withCorrection,
} from './cases/ringing.ts';
import { absolute, type Check, type Group, relative } from './check.ts';

const endChecks: Check[] = [
  {
    what: 'unflanged end, ka -> 0: l/a used (50-digit quadrature; the printed 0.6133 is a rounding of 1948)',
    by: 'copy',
    source: 'levineSchwinger',
    published: 0.612701,
    tolerance: absolute(5e-5),
    run: () => END_CORRECTION_UNFLANGED,
  },
  {
    what: 'unflanged end, ka -> 0: l/a by our own quadrature',
    source: 'levineSchwinger',
    published: 0.612701,
    tolerance: absolute(5e-6),
    run: () => correctionLevineSchwinger(0),
  },
  ...LEVINE_SCHWINGER.flatMap(([ka, magnitude, correction]): Check[] => [
    {
      what: `unflanged end, ka = ${ka}: |R| of the fit of Davies et al. 1980`,
      source: 'levineSchwinger',
      published: magnitude,
      tolerance: absolute(0.0025),
      run: () => reflectionUnflanged(ka).magnitude,
    },
    {
      what: `unflanged end, ka = ${ka}: l/a of the fit of Davies et al. 1980`,
      source: 'levineSchwinger',
      published: correction,
      tolerance: absolute(0.004),
      run: () => reflectionUnflanged(ka).correction,
    },
    {
      what: `unflanged end, ka = ${ka}: |R| by our own quadrature`,
      source: 'levineSchwinger',
      published: magnitude,
      tolerance: absolute(1e-5),
      run: () => magnitudeLevineSchwinger(ka),
    },
    {
      what: `unflanged end, ka = ${ka}: l/a by our own quadrature`,
      source: 'levineSchwinger',
      published: correction,
      tolerance: absolute(1e-5),
      run: () => correctionLevineSchwinger(ka),
    },
  ]),
  {
    what: 'end in an infinite flange, ka -> 0: l/a used',
    by: 'copy',
    source: 'nomura',
    published: 0.8217,
    tolerance: absolute(1e-4),
    run: () => END_CORRECTION_FLANGED,
  },
  ...(
    [
      [0.1, 0.9904, 0.8167],
      [0.5, 0.8204, 0.7058],
      [1.0, 0.5548, 0.486],
    ] as const
  ).flatMap(([ka, magnitude, correction]): Check[] => [
    {
      what: `flanged end, ka = ${ka}: |R|`,
      source: 'norrisSheng',
      published: magnitude,
      tolerance: absolute(5e-5),
      run: () => reflectionFlanged(ka).magnitude,
    },
    {
      what: `flanged end, ka = ${ka}: l/a`,
      source: 'norrisSheng',
      published: correction,
      tolerance: absolute(5e-5),
      run: () => reflectionFlanged(ka).correction,
    },
  ]),
  ...(
    [
      [0.1, 243, 0.99507],
      [0.2, 485, 0.98086],
    ] as const
  ).map(
    ([ka, frequency, published]): Check => ({
      what: `the solver's open end throws back of a pulse at ka = ${ka} (45 mm bore, ${frequency} Hz)`,
      by: 'solver',
      source: 'levineSchwinger',
      published,
      // A constant-pressure end reflects all: that is its known error.
      tolerance: absolute(0.02),
      run: () => openEndReflection(frequency),
    }),
  ),
];

/** L, a [m], then f [Hz] with no correction, unflanged 0.6133 a, flanged 0.8217 a; c = 343.2 m/s. */
const QUARTER_WAVE = [
  [0.3, 0.021, 286.0, 274.23, 270.44],
  [0.35, 0.0225, 245.14, 235.84, 232.84],
  [0.4, 0.0225, 214.5, 207.35, 205.02],
  [0.5, 0.0225, 171.6, 166.99, 165.48],
] as const;

const quarterWaveChecks: Check[] = QUARTER_WAVE.flatMap(([length, radius, ...frequencies]) =>
  ([0, 0.6133, 0.8217] as const).flatMap((correction, i): Check[] => {
    const frequency = frequencies[i]!;
    const what = `closed-open pipe ${length} m, a = ${radius} m, corrected by ${correction} a: f1 [Hz]`;
    const corrected = length + correction * radius;
    return [
      {
        what: `${what}, closed form`,
        source: 'quarterWave',
        published: frequency,
        tolerance: absolute(0.006),
        run: () => quarterWaveFrequency(corrected, SOUND),
      },
      {
        what: `${what}, transfer matrix`,
        source: 'quarterWave',
        published: frequency,
        tolerance: absolute(0.006),
        run: () => {
          const section = { length, diameter1: 2 * radius, diameter2: 2 * radius };
          const closing = { volume: 0, endCorrection: corrected - length, limit: 500 };
          return naturalFrequencies([section], closing, { density: 1.2041, soundSpeed: SOUND })[0]!;
        },
      },
      {
        what: `${what}, as the solver rings`,
        by: 'solver',
        source: 'quarterWave',
        published: frequency,
        tolerance: relative(5e-3),
        run: () => ring(withCorrection(length, radius, correction), frequency),
      },
    ];
  }),
);

const modeChecks: Check[] = [3, 5].map((ratio, i) => ({
  what: `closed-open pipe 0.35 m, a = 0.0225 m, corrected by 0.6133 a: mode ${i + 2} over mode 1, transfer matrix`,
  source: 'quarterWave',
  published: ratio,
  tolerance: relative(1e-6),
  run: () => {
    const section = { length: 0.35, diameter1: 0.045, diameter2: 0.045 };
    const closing = { volume: 0, endCorrection: 0.6133 * 0.0225, limit: 1500 };
    const modes = naturalFrequencies([section], closing, { density: 1.2041, soundSpeed: SOUND });
    return modes[i + 1]! / modes[0]!;
  },
}));

const drawnChecks: Check[] = [
  {
    what: 'plain trumpet drawn 0.35 m long, a = 0.0225 m, as the engine meshes it: f1 [Hz] as the solver rings',
    by: 'solver',
    source: 'quarterWave',
    published: 235.84,
    tolerance: relative(5e-3),
    run: () => {
      const { duct, inertia } = plainTrumpet(0.35, 0.045);
      return ringDuct(duct, 235.84, inertia);
    },
  },
  {
    what: 'the same: acoustic length beyond what is drawn over the radius (inertia of the mouth, added to it)',
    by: 'solver',
    source: 'levineSchwinger',
    published: 0.6133,
    tolerance: relative(2e-3),
    run: () => {
      const { duct, inertia } = plainTrumpet(0.35, 0.045);
      return (duct.mesh.length + inertia - 0.35) / 0.0225;
    },
  },
];

const coneChecks: Check[] = (
  [
    [0.022, 0.022, 245.143],
    [0.019, 0.025, 273.014],
  ] as const
).flatMap(([narrow, wide, frequency]): Check[] => {
  const what = `cone of radii ${narrow * 1e3} and ${wide * 1e3} mm, 0.35 m, narrow end closed: f1 [Hz]`;
  return [
    ...(narrow === wide
      ? []
      : [
          {
            what: `${what}, closed form`,
            source: 'cone',
            published: frequency,
            tolerance: absolute(1e-3),
            run: () => closedConeFrequency(0.35, narrow, wide, SOUND),
          } satisfies Check,
        ]),
    {
      what: `${what}, as the solver rings`,
      by: 'solver',
      source: 'cone',
      published: frequency,
      tolerance: relative(5e-3),
      run: () => ring(cone(0.35, narrow, wide), frequency),
    },
  ];
});

const NECK = 0.01;
const helmholtzChecks: Check[] = [
  ...(
    [
      [0, 136.92],
      [0.6133 + 0.8217, 120.69],
      [2 * 0.8488, 118.3],
    ] as const
  ).map(
    ([corrections, frequency]): Check => ({
      what: `resonator 1 l, neck 20 mm x 50 mm corrected by ${+corrections.toFixed(4)} a: f [Hz], closed form`,
      source: 'helmholtz',
      published: frequency,
      tolerance: absolute(0.01),
      run: () => helmholtzFrequency(circleArea(0.02), 0.05 + corrections * NECK, 1e-3, SOUND),
    }),
  ),
  {
    what: 'resonator 1 l, neck 20 mm x 50 mm corrected by 1.435 a: f [Hz], as the solver rings',
    by: 'solver',
    source: 'helmholtz',
    published: 120.69,
    // The neck's own compliance, left out by the formula, takes (k L')^2 / 6 = 0.3 %.
    tolerance: relative(0.02),
    run: () => ringVolume(1e-3, NECK, 0.05 + (0.6133 + 0.8217) * NECK, 120.69),
  },
];

const arrivalChecks: Check[] = [
  {
    what: 'sound along 300 mm at 343 m/s: arrives after [ms], as the solver carries it',
    by: 'solver',
    source: 'travel',
    published: 0.8746,
    // One of the 200 cells that carry it.
    tolerance: relative(0.005),
    run: () => 1000 * arrival(0.3, 343),
  },
  ...(
    [
      [600, 3],
      [3000, 16],
    ] as const
  ).map(
    ([speed, published]): Check => ({
      what: `the same at ${speed} rpm: turn of the crank meanwhile [deg]`,
      by: 'solver',
      source: 'travel',
      published,
      // Half a unit of the last digit told.
      tolerance: absolute(0.5),
      run: () => 6 * speed * arrival(0.3, 343),
    }),
  ),
];

export const pipeAcoustics: Group = {
  name: 'Pipe acoustics',
  checks: [
    ...endChecks,
    ...quarterWaveChecks,
    ...modeChecks,
    ...drawnChecks,
    ...coneChecks,
    ...helmholtzChecks,
    ...arrivalChecks,
  ],
};
