/** Entry loss against edge radius, projecting ends, walls before the mouth; discharge as solved. */
import {
  dischargeFromLoss,
  entryLossProjecting,
  entryLossRounded,
  entryLossRoundedSpread,
} from '../../sim/loss/entryLoss.ts';
import { WALL_LOSS_TABLE, wallLoss } from '../../sim/loss/facingWall.ts';
import { mouthDischarge } from './cases/mouth.ts';
import { absolute, type Check, type Group, relative } from './check.ts';
import type { SourceName } from './sources.ts';

const IDELCHIK = [
  [0, 0.5],
  [0.01, 0.44],
  [0.02, 0.37],
  [0.03, 0.31],
  [0.04, 0.26],
  [0.05, 0.22],
  [0.06, 0.2],
  [0.08, 0.15],
  [0.12, 0.09],
  [0.16, 0.06],
  [0.2, 0.03],
] as const;

const roundedChecks: Check[] = IDELCHIK.map(([ratio, loss]) => ({
  what: `rounded flush entry, r/D = ${ratio}: K used`,
  by: 'copy',
  source: 'idelchikRounded',
  published: loss,
  // The column used: what is tested is that it was copied and is read rightly.
  tolerance: absolute(1e-9),
  run: () => entryLossRounded(ratio),
}));

/** Fit printed with the table, stated as accurate to 10 %. */
const printedFit = (x: number) =>
  235.03 * x ** 4 - 194.09 * x ** 3 + 56.739 * x ** 2 - 7.8163 * x + 0.5;

const fitChecks: Check[] = [0.005, 0.015, 0.035, 0.07, 0.09, 0.1, 0.11].map((ratio) => ({
  what: `rounded flush entry between rows, r/D = ${ratio}: K used, against the printed fit`,
  source: 'idelchikRounded',
  published: printedFit(ratio),
  tolerance: relative(0.1),
  run: () => entryLossRounded(ratio),
}));

/** Extremes of all handbooks at a ratio: what the stated spread of the entry loss must span. */
const spreadChecks: Check[] = (
  [
    [0.02, 'low', 0.28, 'crane'],
    [0.02, 'high', 0.397, 'rennels'],
    [0.05, 'high', 0.297, 'rennels'],
    [0.1, 'low', 0.082, 'miller'],
    [0.1, 'high', 0.203, 'rennels'],
    [0.15, 'low', 0.04, 'crane'],
    [0.15, 'high', 0.149, 'rennels'],
    [0.2, 'high', 0.115, 'rennels'],
  ] as [number, 'low' | 'high', number, SourceName][]
).map(([ratio, edge, loss, source]) => ({
  what: `rounded flush entry, r/D = ${ratio}: ${edge} edge of the spread carried`,
  by: 'copy',
  source,
  published: loss,
  tolerance: absolute(1e-9),
  run: () => entryLossRoundedSpread(ratio)[edge],
}));

const projectingChecks: Check[] = [
  {
    what: 'thin pipe that projects: K',
    source: 'borda',
    published: 1,
    tolerance: absolute(1e-9),
    run: () => entryLossProjecting(0),
  },
  ...(
    [
      [0.008, 0.88],
      [0.016, 0.77],
      [0.024, 0.68],
      [0.03, 0.61],
      [0.04, 0.54],
      [0.05, 0.5],
      [0.2, 0.5],
    ] as const
  ).map(
    ([ratio, loss]): Check => ({
      what: `pipe that projects half a diameter or more, wall / D = ${ratio}: K`,
      by: 'copy',
      source: 'idelchikProjecting',
      published: loss,
      tolerance: absolute(1e-9),
      run: () => entryLossProjecting(ratio),
    }),
  ),
  {
    what: '45 mm stub of 1.5 mm wall that projects 22.5 mm: K',
    by: 'copy',
    source: 'idelchikProjecting',
    published: 0.587,
    tolerance: absolute(5e-4),
    run: () => entryLossProjecting(1.5 / 45),
  },
];

/** Loss of hoods before a wall over that of the same hood in the open, at c/D. */
const STRAIGHT_HOOD = [2.63, 1.83, 1.53, 1.39, 1.31, 1.19, 1.08, 1.06, 1.0];
const BELL_HOOD = [1.32, 0.77, 0.6, 0.48, 0.41, 0.3, 0.28, 0.25, 0.25];

const wallChecks: Check[] = WALL_LOSS_TABLE.clearanceOverBore.flatMap((ratio, i): Check[] =>
  (['straight', 'bell'] as const).map((hood) => {
    const column = hood === 'bell' ? BELL_HOOD : STRAIGHT_HOOD;
    return {
      what: `wall before a ${hood} mouth at ${ratio} D: K added`,
      source: 'hoods',
      published: column[i]! - column[column.length - 1]!,
      tolerance: absolute(1e-9),
      run: () => wallLoss(ratio, 1, hood === 'bell'),
    };
  }),
);

const dischargeChecks: Check[] = [
  ...(
    [
      [1, 1 / Math.SQRT2],
      [0.78, 0.7495],
      [0.5, 0.8165],
      [0.28, 0.8839],
      [0.15, 0.9325],
      [0.09, 0.9578],
      [0.04, 0.9806],
      [0.03, 0.9853],
    ] as const
  ).map(
    ([loss, coefficient]): Check => ({
      what: `discharge coefficient of an entry of K = ${loss}`,
      source: 'bernoulli',
      published: coefficient,
      tolerance: absolute(6e-5),
      run: () => dischargeFromLoss(loss),
    }),
  ),
  ...(
    [
      [1, 1 / Math.SQRT2],
      [0.5, 0.8165],
      [0.09, 0.9578],
    ] as const
  ).map(
    ([loss, coefficient]): Check => ({
      what: `pipe that draws still air through K = ${loss}: flow over ideal, as solved`,
      by: 'solver',
      source: 'bernoulli',
      published: coefficient,
      tolerance: relative(5e-3),
      run: () => mouthDischarge(loss),
    }),
  ),
];

export const entryLoss: Group = {
  name: 'Entry loss',
  checks: [
    ...roundedChecks,
    ...fitChecks,
    ...spreadChecks,
    ...projectingChecks,
    ...wallChecks,
    ...dischargeChecks,
  ],
};
