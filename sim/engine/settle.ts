/**
 * Cycles of one speed on one mesh until trapped mass and pressure at valve closing repeat. Like a run
 * (cycle.ts) it takes no steps itself.
 */
import { FILM_SETTLED } from '../spray/spray.ts';
import type { SprayCycle } from '../spray/sprayTally.ts';
import { type Audit, audit, type Balance, stored } from './audit.ts';
import { type LineCycle, Run } from './cycle.ts';
import type { EngineModel } from './plan.ts';

/** When a cycle counts as like the last. */
export interface SettleRule {
  /** They lie within this of each other in trapped mass and pressure of every line [-]. */
  limit: number;
  /** Cycles after which it is given up. */
  most: number;
}

/** How a speed ended on a mesh. */
export interface SettledState {
  /** What each line did over the last cycle. */
  lines: LineCycle[];
  audit: Audit;
  settled: boolean;
  cycles: number;
  spray?: SprayCycle;
}

export class Settling {
  readonly run: Run;
  private readonly rule: SettleRule;
  private last: LineCycle[] = [];
  private cycles = 0;
  private before: Balance = { mass: 0, energy: 0 };

  constructor(model: EngineModel, speed: number, rule: SettleRule) {
    this.run = new Run(model, speed);
    this.rule = rule;
  }

  /** Begins, the model holding a state already; `fuelled`: its charge has fuel. */
  begin(fuelled: boolean): void {
    this.run.start(fuelled);
    this.cycle();
  }

  /** At a stop of the run, with the model up to date; the end of it, or undefined to go on. */
  arrive(): SettledState | undefined {
    const reports = this.run.arrive();
    if (!reports) return undefined;
    const { limit, most } = this.rule;
    const last = this.last;
    const alike = last.every((line, i) => spread([line, reports[i]!]) < limit);
    this.last = reports;
    this.cycles++;
    const { cycles } = this;
    const settled = cycles >= 2 && alike && sprayRepeats(this.run);
    if (!settled && cycles < most) {
      this.cycle();
      return undefined;
    }
    const spray = this.run.sprays[0]?.cycle;
    const state = { lines: reports, audit: audit(this.run, this.before), settled, cycles };
    return spray ? { ...state, spray } : state;
  }

  private cycle(): void {
    this.before = stored(this.run);
    this.run.beginCycle();
  }
}

/** How far apart cycles lie in trapped mass or pressure, whichever is more [-]. */
function spread(cycles: readonly LineCycle[]): number {
  const relative = (values: number[]) => Math.max(...values) / Math.min(...values) - 1;
  return Math.max(
    relative(cycles.map(({ trapped }) => trapped.air)),
    relative(cycles.map(({ trapped }) => trapped.pressure)),
  );
}

/** Whether the mixture is held and the films lie still. */
function sprayRepeats({ sprays }: Run): boolean {
  return sprays.every(({ cycle }) => {
    if (!cycle) return true;
    const { delivered, needed, filmImbalance } = cycle;
    return filmImbalance < FILM_SETTLED && Math.abs(delivered - needed) < FILM_SETTLED * needed;
  });
}
