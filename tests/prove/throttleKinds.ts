/** Slides and barrels: open area, loss in slow flow. */
import { circleArea } from '../../sim/duct/profile.ts';
import { slideOpenArea } from '../../sim/loss/slide.ts';
import { plateLoss } from '../../sim/loss/throttlePlate.ts';
import { absolute, type Check, relative } from './check.ts';

const BORE = 0.045;
const slide = {
  ...{ kind: 'slide' as const, bore: BORE, shaftDiameter: 0, closedAngle: 0 },
  ...{ rimGap: 0, openLoss: 0.17 },
} as const;
/** Eighths of a gate's way shut; open share of the bore, loss in dynamic heads. */
const GATE = [
  [3, 0.74, 0.81],
  [4, 0.609, 2.06],
  [5, 0.466, 5.52],
  [6, 0.315, 17],
  [7, 0.159, 97.8],
] as const;
/** The lever's angle [deg] at which a slide leaves that share. */
function angleOf(share: number): number {
  let [low, high] = [0, 90];
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2;
    if (slideOpenArea(slide, middle) < share * circleArea(BORE)) low = middle;
    else high = middle;
  }
  return low;
}
const gateChecks = GATE.flatMap(([eighths, share, heads]): Check[] => [
  {
    what: `slide: disc of the bore's diameter ${eighths}/8 of the way across it, open share`,
    source: 'weisbachGate',
    published: share,
    tolerance: absolute(1e-3),
    run: () => 1 - slideOpenArea(slide, (90 * eighths) / 8) / circleArea(BORE),
  },
  {
    what: `slide that leaves the share ${share} of the bore: loss in dynamic heads`,
    source: 'weisbachGate',
    published: heads,
    // Ours is up to 18 % low, 9 % of area: the gate's guides besides its edge.
    tolerance: relative(0.18),
    run: () => plateLoss(slide, angleOf(share)),
  },
]);

/** A cock that is shut at 82.5 deg from open. */
const cock = {
  ...{ kind: 'barrel' as const, bore: BORE, shaftDiameter: 0, closedAngle: 7.5, rimGap: 0 },
  ...{ openLoss: 0.05, barrelDiameter: BORE / Math.sin((41.25 * Math.PI) / 180) },
} as const;
const COCK = [
  [20, 1.56],
  [30, 5.47],
  [40, 17.3],
  [50, 52.6],
  [60, 206],
] as const;
const cockChecks = COCK.map(
  ([fromOpen, heads]): Check => ({
    what: `barrel ${fromOpen} deg from open, shut at 82.5: loss in dynamic heads`,
    source: 'weisbachGate',
    published: heads,
    // Two windows one behind the other, without the turn between them: up to 30 % low, 16 % of area.
    tolerance: relative(0.3),
    run: () => plateLoss(cock, 90 - fromOpen),
  }),
);

export const kindChecks: readonly Check[] = [...gateChecks, ...cockChecks];
