/**
 * Which set-ups the answer turns on, and how well their curves must be known: refined until halving
 * every stretch once more has moved no mean by 0.2 %, no worst loss by half a point and no floor's
 * verdict, or until the narrowest stretch is reached.
 */
import { bestOf } from '../decision/choice.ts';
import { leastMargin } from '../decision/floor.ts';
import { percentOver, type WeighedLength } from '../decision/tradeOff.ts';
import { allPoints } from '../sweep/sweep.ts';
import type { Curves } from './curves.ts';
import { type Pains, USUAL } from './refinement.ts';

/** Means that coarse speeds may have taken for worse than the best [share of it]. */
const IN_CONTEST = 0.03;
/** Means so near the best that the price decides [share of it]. */
const NEARLY_BEST = 0.01;

/** By how much a floor may be missed at coarse speeds and hold all the same [%]. */
const FLOOR_DOUBT = 1;

/** What the last halvings may move: a mean [%], a worst loss [points]. */
export const MOST_MOVED = { mean: 0.2, loss: 0.5 };

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

/** Whether points are computed between the speeds, and which set-ups may win. */
interface Rules {
  refine: boolean;
  mayWin(name: number): boolean;
}

export class Contest {
  private readonly rules: Rules;
  private readonly curves: Curves;

  constructor(rules: Rules, curves: Curves) {
    this.rules = rules;
    this.curves = curves;
  }

  /** What may win, weighed. */
  choices(): WeighedLength[] {
    return this.curves.weighed().filter((one) => this.rules.mayWin(one.length));
  }

  /** Resolves the lengths in contest in the bands until no other comes near the best. */
  async resolve(): Promise<void> {
    if (!this.rules.refine) return;
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
    if (!this.rules.refine) return undefined;
    let pains = USUAL;
    for (let left = MOST_TRIES; ; left--) {
      await this.resolve();
      const dear = this.nearlyBest();
      const others = this.inContest().filter((length) => !dear.includes(length));
      await Promise.all([
        this.curves.refine(others, 'bands', pains),
        this.curves.refine(dear, 'all', pains),
      ]);
      const moves = this.moves();
      const resolution = this.resolution(moves);
      if (resolution.resolved || left === 1) return resolution;
      pains = this.more(pains, moves);
    }
  }

  /** More pains where the last ones did not do: all over for means, at their speeds for losses. */
  private more({ tolerance, closer, closest }: Pains, moves: readonly Move[]): Pains {
    const restless = moves.filter(({ loss, floors }) => floors || loss >= MOST_MOVED.loss);
    const calm = moves.every(({ mean }) => mean < MOST_MOVED.mean);
    return {
      tolerance: calm && restless.length > 0 ? tolerance : tolerance / 2,
      closer: [...closer, ...restless.flatMap(({ weighed }) => decisive(weighed))],
      closest: closest / 2,
    };
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

  /** What the last halvings moved of every length that is refined. */
  private moves(): Move[] {
    const { curves } = this;
    const baseline = curves.before(curves.baseline);
    return curves.all
      .filter(({ resolved }) => resolved)
      .map((curve) => {
        const [now, before] = [curves.weigh(curve), curves.weigh(curves.before(curve), baseline)];
        const loss = now.known === 'all' ? now.worstLossPercent - before.worstLossPercent : 0;
        return {
          weighed: now,
          mean: Math.abs(percentOver(now.bandMean, before.bandMean)),
          loss: Math.max(Math.abs(loss), Math.abs(now.bandLossPercent - before.bandLossPercent)),
          floors: now.floors.some(
            ({ marginPercent }, i) => marginPercent >= 0 !== before.floors[i]!.marginPercent >= 0,
          ),
        };
      });
  }

  private resolution(moves: readonly Move[]): Resolution {
    const refined = this.curves.all.filter(({ resolved }) => resolved);
    const most = (figures: number[]) => Math.max(0, ...figures.filter(Number.isFinite));
    const meanPercent = most(moves.map(({ mean }) => mean));
    const lossPoints = most(moves.map(({ loss }) => loss));
    const floors = moves.some((one) => one.floors);
    const open = this.curves.open();
    const still = meanPercent < MOST_MOVED.mean && lossPoints < MOST_MOVED.loss && !floors;
    return {
      step: Math.min(...refined.map(narrowest)),
      meanPercent,
      lossPoints,
      floors,
      resolved: open.length === 0 && still,
      open,
      points: refined.reduce((sum, { between = [] }) => sum + between.length, 0),
    };
  }
}

/** What the last halvings moved of one length: its mean [%], its losses [points], a floor's verdict. */
interface Move {
  weighed: WeighedLength;
  mean: number;
  loss: number;
  floors: boolean;
}

/** The speeds that the figures of a length stand at [rpm]. */
function decisive({ known, worstLossSpeed, bandLossSpeed, floors }: WeighedLength): number[] {
  const speeds = [...(known === 'all' ? [worstLossSpeed] : []), bandLossSpeed];
  const held = floors.flatMap(({ floor, near }) => [floor.speed, near.speed]);
  return [...speeds, ...held].filter((speed) => speed !== undefined);
}

function narrowest(curve: Parameters<typeof allPoints>[0]): number {
  const speeds = allPoints(curve).map(({ speed }) => speed);
  return Math.min(...speeds.slice(1).map((speed, i) => speed - speeds[i]!));
}

/** What several contests moved at most, as one; what is open names each by itself. */
export function together(all: readonly Resolution[]): Resolution {
  const most = (of: (one: Resolution) => number) => Math.max(...all.map(of));
  return {
    step: Math.min(...all.map(({ step }) => step)),
    meanPercent: most(({ meanPercent }) => meanPercent),
    lossPoints: most(({ lossPoints }) => lossPoints),
    floors: all.some(({ floors }) => floors),
    resolved: all.every(({ resolved }) => resolved),
    open: [],
    points: all.reduce((sum, { points }) => sum + points, 0),
  };
}
