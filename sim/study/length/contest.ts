/**
 * Which lengths the answer turns on, and how well their curves must be known: refined until halving
 * every stretch once more has moved no mean by 0.2 %, no worst loss by half a point and no floor's
 * verdict, or until the narrowest stretch is reached.
 */
import { bestOf } from '../../decision/choice.ts';
import { leastMargin } from '../../decision/floor.ts';
import { fits } from '../../decision/shelf.ts';
import { percentOver, type WeighedLength } from '../../decision/tradeOff.ts';
import { allPoints } from '../../sweep/sweep.ts';
import { USUAL } from '../refinement.ts';
import type { LengthQuestion } from './compute.ts';
import type { LengthCurves } from './curves.ts';

/** Means that coarse speeds may have taken for worse than the best [share of it]. */
const IN_CONTEST = 0.03;
/** Means so near the best that the price decides [share of it]. */
const NEARLY_BEST = 0.01;

/** By how much a floor may be missed at coarse speeds and hold all the same [%]. */
const FLOOR_DOUBT = 1;

/** What the last halvings may move: a mean [%], a worst loss [points]. */
const MOST_MOVED = { mean: 0.2, loss: 0.5 };

/** How often a closer look is taken where figures still move. */
const MOST_TRIES = 4;

export interface Resolution {
  /** Narrowest distance of speeds computed [rpm]. */
  step: number;
  /** What the last halvings moved most: a mean in the bands [%], a worst loss [points]. */
  meanPercent: number;
  lossPoints: number;
  /** Whether a floor's verdict changed with them. */
  floors: boolean;
  /** Whether all that is within what is allowed and no curve is left in doubt. */
  resolved: boolean;
  /** Lengths whose curves are in doubt at the narrowest distance [m]. */
  open: number[];
  /** Points computed for it. */
  points: number;
}

export class Contest {
  private readonly question: LengthQuestion;
  private readonly curves: LengthCurves;

  constructor(question: LengthQuestion, curves: LengthCurves) {
    this.question = question;
    this.curves = curves;
  }

  /** What can be fitted, weighed. */
  choices(): WeighedLength[] {
    return this.curves.weighed().filter((one) => fits(one.length, this.question.fit));
  }

  /** Resolves the lengths in contest in the bands until no other comes near the best. */
  async resolve(): Promise<void> {
    if (!this.question.refine) return;
    for (;;) {
      const { baseline } = this.curves;
      const open = new Set(
        [baseline.length, ...this.inContest()].filter((length) => {
          return this.curves.at(length).resolved === undefined;
        }),
      );
      if (open.size === 0) return;
      await this.curves.refine([...open], 'bands');
    }
  }

  /** Resolves what is left, the nearly best over all speeds, and says how well it is known. */
  async conclude(): Promise<Resolution | undefined> {
    if (!this.question.refine) return undefined;
    let pains = USUAL;
    for (let left = MOST_TRIES; ; left--) {
      await this.resolve();
      const dear = this.nearlyBest();
      const others = this.inContest().filter((length) => !dear.includes(length));
      await Promise.all([
        this.curves.refine(others, 'bands', pains),
        this.curves.refine(dear, 'all', pains),
      ]);
      const resolution = this.resolution();
      if (resolution.resolved || left === 1) return resolution;
      const { tolerance, closest } = pains;
      pains = { tolerance: tolerance / 2, closer: this.decisive(), closest: closest / 2 };
    }
  }

  /** The speeds that the figures of the answer stand at [rpm]. */
  private decisive(): number[] {
    const known = this.curves.weighed().filter(({ known }) => known && known !== 'sweep');
    const speeds = known.flatMap((one) => [
      ...(one.known === 'all' ? [one.worstLossSpeed] : []),
      one.bandLossSpeed,
      one.leastSpeed,
    ]);
    return speeds.filter((speed) => speed !== undefined);
  }

  private inContest(): number[] {
    const { choices, best, open } = this.field();
    const level = (1 - IN_CONTEST) * choices[best]!.bandMean;
    const near = choices.filter((one, i) => {
      return Math.abs(i - best) <= 1 || (open(one) && one.bandMean >= level);
    });
    return near.map(({ length }) => length);
  }

  private nearlyBest(): number[] {
    const { choices, best, open } = this.field();
    const chosen = choices[best]!;
    const level = (1 - NEARLY_BEST) * chosen.bandMean;
    const near = choices.filter((one) => open(one) && one.bandMean >= level);
    const lengths = [this.curves.baseline, chosen, ...near].map(({ length }) => length);
    return [...new Set(lengths)];
  }

  /** The choices, the best of them, and whether floors leave one open. */
  private field() {
    const choices = this.choices();
    const best = bestOf(choices);
    const held = leastMargin(choices[best]!.floors) >= 0;
    const open = ({ floors }: WeighedLength) => !held || leastMargin(floors) >= -FLOOR_DOUBT;
    return { choices, best, open };
  }

  private resolution(): Resolution {
    const { curves } = this;
    const refined = curves.all.filter(({ resolved }) => resolved);
    const baseline = curves.before(curves.baseline);
    const moves = refined.map((curve) => {
      const [now, before] = [curves.weigh(curve), curves.weigh(curves.before(curve), baseline)];
      const loss = now.known === 'all' ? now.worstLossPercent - before.worstLossPercent : 0;
      return {
        mean: Math.abs(percentOver(now.bandMean, before.bandMean)),
        loss: Math.max(Math.abs(loss), Math.abs(now.bandLossPercent - before.bandLossPercent)),
        floors: now.floors.some(
          ({ marginPercent }, i) => marginPercent >= 0 !== before.floors[i]!.marginPercent >= 0,
        ),
      };
    });
    const most = (figures: number[]) => Math.max(0, ...figures.filter(Number.isFinite));
    const meanPercent = most(moves.map(({ mean }) => mean));
    const lossPoints = most(moves.map(({ loss }) => loss));
    const floors = moves.some((one) => one.floors);
    const open = curves.open();
    return {
      step: Math.min(...refined.map(narrowest)),
      meanPercent,
      lossPoints,
      floors,
      resolved:
        open.length === 0 &&
        meanPercent < MOST_MOVED.mean &&
        lossPoints < MOST_MOVED.loss &&
        !floors,
      open,
      points: refined.reduce((sum, { between = [] }) => sum + between.length, 0),
    };
  }
}

function narrowest(curve: Parameters<typeof allPoints>[0]): number {
  const speeds = allPoints(curve).map(({ speed }) => speed);
  return Math.min(...speeds.slice(1).map((speed, i) => speed - speeds[i]!));
}
