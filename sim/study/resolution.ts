/** How sure the figures of curves are between the speeds of a file: in words, and in a document. */
import { rippleSpacing, widestStep } from '../decision/ripple.ts';
import { inTarget, type Target } from '../decision/target.ts';
import type { WeighedLength } from '../decision/tradeOff.ts';
import { percent, rpm } from '../report/figures.ts';
import { counted, fixed, listed, plain } from '../report/numbers.ts';
import type { EngineSpecification } from '../specification.ts';
import type { Resolution } from './contest.ts';
import { inTens } from './verdict.ts';

interface Resolved {
  resolution?: Resolution;
  /** Speeds of the file [rpm]. */
  speeds: readonly number[];
  target: Target;
}

/** How well the curves are known between the speeds; `what`: lengths, variants. */
export function resolutionWords({ resolution }: Resolved, what: string): string {
  if (!resolution?.resolved) return '';
  const { step, meanPercent, lossPoints, points } = resolution;
  return (
    `Resolved to ${rpm(step)}: ${counted(points, 'point')} between the speeds of the file, for the ` +
    `${what} in contest; their last halving moved no mean by more than ${percent(meanPercent, 2)} and ` +
    `no worst loss by more than ${fixed(lossPoints, 2)} points.`
  );
}

/** Says where the curves are not known between the speeds; `named`: what a set-up is called. */
export function resolutionCautions(
  { resolution, speeds, target }: Resolved,
  named: (name: number) => string,
): string[] {
  if (resolution?.resolved) return [];
  if (!resolution) {
    const inBand = speeds.filter((speed) => inTarget(target, speed)).length;
    return [
      `Computed at the ${speeds.length} speeds listed alone, ${inBand} of them in the band: between them the ` +
        'curve ripples, and losses can hide there. Give speeds as a range to have it resolved.',
    ];
  }
  const { step, meanPercent, lossPoints, floors, open } = resolution;
  const where = open.length > 0 ? `, above all of ${listed(open.map(named))}` : '';
  return [
    `Not resolved: at a distance of ${rpm(step)} the figures still move${where}: means by up to ` +
      `${percent(meanPercent, 2)}, worst losses by up to ${fixed(lossPoints, 1)} points` +
      `${floors ? ', and a floor changes its verdict' : ''}. Take them as no better than that.`,
  ];
}

/**
 * Says where speeds that are taken as they come are too far apart to see the ripple; nothing where they are not.
 *
 * @param remedy what computes between them
 */
export function rippleCautions(
  engines: readonly EngineSpecification[],
  speeds: readonly number[],
  remedy?: string,
): string[] {
  const steps = engines.flatMap((engine) =>
    speeds.slice(1).map((to, i) => {
      const from = speeds[i]!;
      return { from, step: to - from, shares: (to - from) / widestStep(engine, from), engine };
    }),
  );
  const first = steps[0];
  if (!first) return [];
  const worst = steps.reduce((a, b) => (b.shares > a.shares ? b : a), first);
  if (worst.shares <= 1) return [];
  const spacing = rpm(inTens(rippleSpacing(worst.engine, worst.from)));
  return [
    `Computed at these ${counted(speeds.length, 'speed')} alone: from ${rpm(worst.from)} on curves ripple about every ${spacing}, ` +
      `too near for steps of ${rpm(worst.step)}. What lies between is not known${remedy ? `; ${remedy}` : ', and not in the means'}.`,
  ];
}

/** How well curves are known, for a JSON document. */
export function resolutionDocument({
  step,
  meanPercent,
  lossPoints,
  resolved,
  points,
}: Resolution) {
  return {
    resolved,
    step_rpm: step,
    points,
    band_mean_moved_percent: plain(meanPercent),
    worst_loss_moved_points: plain(lossPoints),
  };
}

/** What a curve is known at, for the remark of a table. */
export const knownRemark = (known: WeighedLength['known']): string[] =>
  known === 'sweep' ? ['coarse'] : known === 'bands' ? ['coarse outside'] : [];

/** What those remarks mean; nothing where no curve was refined. */
export const knownNotes = (resolution: Resolution | undefined): string[] =>
  resolution
    ? [
        'Coarse: out of contest, so computed at the speeds of the file alone; what it loses between them is not known. Coarse outside: the same of its price.',
      ]
    : [];
