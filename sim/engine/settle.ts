/**
 * Cycles of one speed on one mesh until the charge at valve closing repeats, or swings about
 * a mean that stays (swing.ts). Like a run (cycle.ts) it takes no steps itself.
 */
import type { TrappedCharge } from '../cylinder/cylinder.ts';
import { FILM_SETTLED, type Spray } from '../spray/spray.ts';
import type { SprayCycle } from '../spray/sprayTally.ts';
import { type Audit, audit, type Balance, stored } from './audit.ts';
import { heldBy } from './bars.ts';
import { type LineCycle, Run } from './cycle.ts';
import { Hastening } from './hasten.ts';
import type { EngineModel } from './plan.ts';
import { swingMean } from './swing.ts';

/** When a cycle counts as like the last. */
export interface SettleRule {
  /** They lie within this of each other in trapped air, pressure and burned gas of every line, and in what bars hold [-]. */
  limit: number;
  /** Cycles after which it is given up. */
  most: number;
  /** Whether films must hold a cycle by themselves; a start for a finer mesh needs not. */
  held: boolean;
  /** Whether the end is sought ahead of the cycles (hasten.ts); not with injectors or bars. */
  hastened?: boolean;
}

/** How a speed ended on a mesh. */
export interface SettledState {
  /** What each line did over the last cycle; where cycles swing about a mean, that mean. */
  lines: LineCycle[];
  audit: Audit;
  settled: boolean;
  cycles: number;
  spray?: SprayCycle;
}

/** Cycles after which what was to hasten has not. Our own choice, no source. */
const PATIENCE = 40;

export class Settling {
  readonly run: Run;
  private readonly rule: SettleRule;
  /** Cycles that came one of the other. */
  private history: LineCycle[][] = [];
  private cycles = 0;
  private hastening: Hastening | undefined;
  /** What the state reports that the cycle began with, where it was mixed. */
  private mixed: LineCycle[] | undefined;
  /** Whether films were left alone since the cycle before. */
  private leftAlone: boolean;
  private before: Balance = { mass: 0, energy: 0 };
  /** What each bar held at the end of the cycle before [kg]. */
  private inBars: readonly number[] = [];

  constructor(model: EngineModel, speed: number, rule: SettleRule) {
    this.run = new Run(model, speed);
    this.rule = rule;
    this.leftAlone = this.run.sprays.length === 0;
    if (rule.hastened && this.leftAlone && model.bars.length === 0)
      this.hastening = new Hastening(model);
  }

  /** Begins, the model holding a state already; `fuelled`: its charge has fuel; `sprays`: of a coarser mesh. */
  begin(fuelled: boolean, sprays: readonly Spray[] = []): void {
    this.run.start(fuelled);
    sprays.forEach((spray, j) => {
      this.run.sprays[j]?.takeOver(spray);
    });
    this.hastening?.begin();
    this.cycle();
  }

  /** At a stop of the run, with the model up to date; the end of it, or undefined to go on. */
  arrive(): SettledState | undefined {
    const reports = this.run.arrive();
    if (!reports) return undefined;
    const { limit, most, held } = this.rule;
    const lines = this.repeated(reports);
    const { cycles } = this;
    const still = this.barsStill(limit);
    const repeats = lines !== undefined && still && sprayRepeats(this.run);
    const settled = repeats && (this.leftAlone || !held);
    if (!settled && cycles < most) {
      this.prepare(repeats);
      this.hasten(reports);
      this.cycle();
      return undefined;
    }
    const spray = this.run.sprays[0]?.cycle;
    const state = { lines: lines ?? reports, audit: audit(this.run, this.before), settled, cycles };
    return spray ? { ...state, spray } : state;
  }

  /** What repeats, if anything does: a cycle like the one before and the state it began with; or the mean of a swing. */
  private repeated(reports: LineCycle[]): LineCycle[] | undefined {
    const { limit } = this.rule;
    const alike = (others: readonly LineCycle[] = []) =>
      others.every((line, i) => spread(line.trapped, reports[i]!.trapped) < limit);
    const last = this.history.at(-1);
    this.history.push(reports);
    this.cycles++;
    if (last && [last, this.mixed].every(alike)) return reports;
    return this.hastening ? undefined : swingMean(this.history, limit);
  }

  /** Goes ahead as long as that is worth it; then cycles have it by themselves. */
  private hasten(reports: LineCycle[]): void {
    this.mixed = this.hastening?.ahead(reports);
    if (this.cycles < PATIENCE || !this.hastening) return;
    this.hastening = undefined;
    this.history = [];
  }

  /** Whether bars hold what they held a cycle ago. */
  private barsStill(limit: number): boolean {
    const { inBars } = this;
    this.inBars = this.run.model.bars.map(heldBy);
    return this.inBars.every((now, i) => Math.abs(now / (inBars[i] ?? now) - 1) < limit);
  }

  /** Sets films ahead until a cycle repeats; then they must hold by themselves. */
  private prepare(repeats: boolean): void {
    const { sprays } = this.run;
    this.leftAlone = repeats || sprays.length === 0;
    if (!this.leftAlone) for (const spray of sprays) spray.skipAhead();
  }

  private cycle(): void {
    this.before = stored(this.run);
    this.run.beginCycle();
  }
}

/**
 * How far apart two cycles lie in trapped air, in pressure or in burned gas, whichever is most [-]. Where air
 * stands on the crest of a swing the burned gas does not.
 */
function spread(a: TrappedCharge, b: TrappedCharge): number {
  const relative = (x: number, y: number) => Math.max(x, y) / Math.min(x, y) - 1;
  return Math.max(
    relative(a.air, b.air),
    relative(a.pressure, b.pressure),
    Math.abs(a.burned - b.burned) / (b.air + b.burned + b.fuel),
  );
}

/** Whether the mixture is held and the films lie still. */
function sprayRepeats({ sprays }: Run): boolean {
  return sprays.every(({ cycle }) => {
    if (!cycle) return true;
    const { delivered, needed, filmImbalance, stockGrowth } = cycle;
    if (Math.max(filmImbalance, stockGrowth) > FILM_SETTLED) return false;
    return Math.abs(delivered - needed) < FILM_SETTLED * needed;
  });
}
