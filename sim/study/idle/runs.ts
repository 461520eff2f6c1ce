/** Runs of the engine at idle with a way set, and how it is set until the engine draws the air that it wants. */
import { mean, swing } from '../../acoustics/barReading.ts';
import type { JoinedCycle } from '../../engine/joinedCycle.ts';
import type { EngineSpecification } from '../../specification.ts';
import { isFailure, type PointFailure, type PointOutcome } from '../../sweep/runner.ts';
import type { SweepObserver } from '../../sweep/sweep.ts';
import type { Computer } from '../../sweep/tasks.ts';
import { throttled } from '../signal/tapped.ts';
import { askedFor, NEAR, type Tried } from './asking.ts';
import type { Context, IdleState } from './need.ts';
import { coldEngine, engineSet, type Setting, settingFor } from './settings.ts';
import type { WayName } from './ways.ts';

/** One way in one state, the first cylinder's plate, drilling or nipple off. */
export interface JoinedWay {
  name: WayName;
  state: IdleState;
  setting: Setting;
  /** Air that the engine wants, and that it draws so set, of all cylinders [kg/s]. */
  wanted: number;
  air: number;
  /** Mean pressure behind their plates [Pa]. */
  mean: number;
  /** Air of the cylinder that is off over the others', less one [-]. */
  spread: number;
  /** Lambda of it and of the others with equal fuel, the common mixture at 1 [-]. */
  lambda: { one: number; others: number };
  /** At the sensor of the pressure bar: peak to peak, and mean above that of the runners [Pa]. */
  signal?: { ripple: number; offset: number };
  /** Indicated torque [N m], and temperature of what leaves by the exhaust valves [K]. */
  torque: number;
  exhaust: number;
}

/** Most settings that are tried for one state. */
const MOST_TRIES = 4;

const same = (engine: EngineSpecification) => engine;
const wallsIn = (state: IdleState) => (state === 'cold' || state === 'most' ? coldEngine : same);

export class Runs {
  readonly outcomes: PointOutcome[] = [];
  private total = 0;
  private readonly known = new Map<string, Promise<JoinedCycle | PointFailure>>();

  constructor(
    private readonly context: Context,
    private readonly computer: Computer,
    private readonly observer: SweepObserver,
  ) {}

  /** So many runs are to come. */
  expect(more: number): void {
    this.total += more;
    this.observer.onTotal?.(this.total);
  }

  wanted(state: IdleState): number {
    return this.context.need[state];
  }

  /** Undefined where it fails, which the outcomes tell. */
  async run(setting: Setting, state: IdleState, change = same): Promise<JoinedWay | undefined> {
    const engine = wallsIn(state)(engineSet(setting, this.context));
    const cycle = await this.computed(change(engine));
    if ('failure' in cycle) return undefined;
    const wanted = this.wanted(state);
    return { name: setting.name, state, setting, wanted, ...told(cycle, this.context) };
  }

  /** Indicated torque with every plate alike and no bar, so that one cylinder stands for all [N m]; NaN where it fails. */
  async torqueAlike({ angle }: Setting, state: IdleState, change: typeof same): Promise<number> {
    const { engine, spec } = this.context;
    const alike = wallsIn(state)(throttled(engine, angle));
    const outcome = await this.computer.run({ engine: change(alike), speed: spec.speed });
    this.keep(outcome);
    return isFailure(outcome) ? Number.NaN : outcome.indicatedTorque;
  }

  /** The same engine is computed once. */
  private computed(engine: EngineSpecification): Promise<JoinedCycle | PointFailure> {
    const key = JSON.stringify(engine);
    const known = this.known.get(key);
    if (known) this.expect(-1);
    const cycle = known ?? this.compute(engine);
    this.known.set(key, cycle);
    return cycle;
  }

  private async compute(engine: EngineSpecification): Promise<JoinedCycle | PointFailure> {
    const { speed } = this.context.spec;
    const cycle = await this.computer.task('joined', { engine, speed });
    this.keep('failure' in cycle ? cycle : cycle.point);
    return cycle;
  }

  private keep(outcome: PointOutcome): void {
    this.outcomes.push(outcome);
    this.observer.onPoint?.(0, outcome.speed, outcome);
  }

  /**
   * A way in states one after the other, set until the engine draws what it wants. Where it wants more than the way
   * gives as far open as it goes, which is known then, it is that.
   */
  async chain(name: WayName, states: readonly IdleState[], full?: Tried): Promise<JoinedWay[]> {
    const found: JoinedWay[] = [];
    const tried: Tried[] = [];
    this.expect(states.length);
    for (const state of states) {
      const within = !full || this.wanted(state) < full.air;
      const way = within
        ? await this.brought(name, state, tried)
        : await this.run(settingFor(name, full.asked, this.context), state);
      if (way) found.push(way);
    }
    return found;
  }

  /** Of a few settings the one with which the engine draws nearest to what it wants. */
  private async brought(
    name: WayName,
    state: IdleState,
    tried: Tried[],
  ): Promise<JoinedWay | undefined> {
    const wanted = this.wanted(state);
    const own: JoinedWay[] = [];
    while (own.length < MOST_TRIES) {
      if (own.length > 0) this.expect(1);
      const asked = askedFor(wanted, tried);
      const way = await this.run(settingFor(name, asked, this.context), state);
      if (!way) break;
      own.push(way);
      tried.push({ asked, air: way.air });
      if (Math.abs(way.air / wanted - 1) <= NEAR) break;
    }
    return own.toSorted((a, b) => Math.abs(a.air - wanted) - Math.abs(b.air - wanted))[0];
  }
}

function told({ cylinders, bars, point }: JoinedCycle, { spec, bar }: Context) {
  const airs = cylinders.map(({ air }) => air);
  const [one, ...rest] = airs as [number, ...number[]];
  const others = rest.length > 0 ? mean(rest) : one;
  const common = mean(airs);
  const runners = mean(cylinders.map((cylinder) => cylinder.mean));
  const [sensed] = bars;
  return {
    air: (common * airs.length * spec.speed) / 120,
    mean: runners,
    spread: one / others - 1,
    lambda: { one: one / common, others: others / common },
    ...(bar &&
      sensed && {
        signal: { ripple: swing(sensed.sensor), offset: mean(sensed.sensor) - runners },
      }),
    torque: point.indicatedTorque,
    exhaust: mean(cylinders.map(({ exhaust }) => exhaust)),
  };
}
