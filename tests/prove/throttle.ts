/** Open area of the plate. */

import { circleArea } from '../../sim/duct/profile.ts';
import { butterflyOpenArea } from '../../sim/loss/butterfly.ts';
import { absolute, type Check, type Group } from './check.ts';

const BORE = 0.045;
const openShare = (closedAngle: number, shaft: number, angle: number) =>
  butterflyOpenArea({ bore: BORE, shaftDiameter: shaft * BORE, closedAngle }, angle) /
  circleArea(BORE);

/** Plate angle; open share for psi0 5, d/D 0.18; psi0 10, d/D 0.2; psi0 0, d/D 0.2; no shaft, psi0 5. */
const RELATIVE = [
  [0, 0, 0, 0, 0],
  [1, 0.001675, 0.003218, 0.000152, 0.001679],
  [2, 0.003653, 0.006739, 0.000607, 0.003662],
  [5, 0.011401, 0.019105, 0.003792, 0.01143],
  [10, 0.030305, 0.045642, 0.015139, 0.030384],
] as const;
const ABSOLUTE = [
  [20, 0.056563, 0.045642, 0.06008, 0.056718],
  [30, 0.130262, 0.12011, 0.133401, 0.130667],
  [50, 0.352992, 0.344961, 0.35475, 0.354757],
  [60, 0.494322, 0.487246, 0.494744, 0.49809],
  [70, 0.646936, 0.639537, 0.644321, 0.656673],
] as const;
const PLATES = [
  [5, 0.18],
  [10, 0.2],
  [0, 0.2],
  [5, 0],
] as const;

const areaCheck = (closed: number, shaft: number, angle: number, open: number): Check => ({
  what: `plate that seals at ${closed} deg, d/D = ${shaft}: open share at ${angle} deg`,
  source: 'butterfly',
  published: open,
  tolerance: absolute(1e-5),
  run: () => openShare(closed, shaft, angle),
});

const areaChecks: Check[] = [
  ...RELATIVE.flatMap(([above, ...row]) =>
    PLATES.map(([closed, shaft], i) => areaCheck(closed, shaft, closed + above, row[i]!)),
  ),
  // 20 deg of the second plate is its row 10 deg above the stop.
  ...ABSOLUTE.flatMap(([angle, ...row]) =>
    PLATES.flatMap(([closed, shaft], i) =>
      angle === closed + 10 ? [] : [areaCheck(closed, shaft, angle, row[i]!)],
    ),
  ),
  areaCheck(5, 0.18, 85, 0.772061),
  areaCheck(10, 0.2, 85, 0.74706),
  areaCheck(0, 0.2, 85, 0.74706),
  ...(
    [
      [1, 5.1],
      [2, 10.7],
    ] as const
  ).map(
    ([above, area]): Check => ({
      what: `45 mm plate that seals at 10 deg, d/D = 0.2: open area ${above} deg above the stop [mm2]`,
      source: 'butterfly',
      published: area,
      tolerance: absolute(0.05),
      run: () => openShare(10, 0.2, 10 + above) * circleArea(BORE) * 1e6,
    }),
  ),
];

export const throttle: Group = { name: 'Throttle', checks: areaChecks };
