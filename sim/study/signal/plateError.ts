/** Idle with the bar fitted and without, plates alike and one further open: four runs, all cylinders solved. */
import { mean } from '../../acoustics/barReading.ts';
import type { JoinedCycle } from '../../engine/joinedCycle.ts';
import type { EngineSpecification } from '../../specification.ts';
import type { PointFailure, PointOutcome } from '../../sweep/runner.ts';
import type { Computer } from '../../sweep/tasks.ts';
import { withBar } from './joined.ts';
import { type SignalPoint, type SignalQuestion, throttled } from './tapped.ts';

/** What sets the cylinder of the wider plate apart. */
export interface Apart {
  /** Mean pressure of its runner over the others' [Pa], and air over theirs, less one [-]. */
  pressure: number;
  air: number;
}

export interface PlateError {
  /** Runners joined by nothing. */
  alone: Apart;
  /** Runners joined by the bar. */
  joined: Apart;
  /** Gas that leaves it by the bar, over its cylinder's air, and what each other gets, over its own [-]. */
  given: number;
  got: number;
  /** Lambda of its cylinder, and of the others, where all have equal fuel and the common mixture is 1. */
  lambda: { one: number; others: number };
  /** What all hoses bring less what bar and hoses gain, over what goes out into them [-]. */
  imbalance: number;
  /** How far a plate may be off before gauges on the runners tell, joined by nothing and by the bar [deg]. */
  unseen: { alone: number; joined: number };
  /** Air of all cylinders with the bar over that without, plates alike, less one [-]. */
  moreAir: number;
}

const sum = (values: readonly number[]) => values.reduce((total, one) => total + one, 0);
const airs = ({ cylinders }: JoinedCycle) => cylinders.map(({ air }) => air);

/** Undefined where one hose joins nothing, or a run fails. */
export async function plateErrorAt(
  { engine, spec }: SignalQuestion,
  idle: SignalPoint | undefined,
  computer: Computer,
): Promise<{ plateError?: PlateError; outcomes: PointOutcome[] }> {
  if (!idle || spec.hoses < 2) return { outcomes: [] };
  const { speed, angle } = idle;
  const bare = throttled(engine, angle);
  const off = oneFurther(bare, Math.min(angle + spec.plateError, 90));
  const runs = await Promise.all(
    [bare, off, withBar(off, spec, speed, idle.mean)].map((one) =>
      computer.task('joined', { engine: one, speed }),
    ),
  );
  const outcomes = runs.map((run) => ('failure' in run ? run : run.point));
  if (runs.some((run): run is PointFailure => 'failure' in run)) return { outcomes };
  const [alike, alone, joined] = runs as [JoinedCycle, JoinedCycle, JoinedCycle];
  const moreAir = sum(airs(idle.cycle)) / sum(airs(alike)) - 1;
  return { plateError: { ...compared(alone, joined, spec), moreAir }, outcomes };
}

/** The first of the firing order has its plate at an angle of its own. */
function oneFurther(engine: EngineSpecification, own: number): EngineSpecification {
  const { intake, cylinder } = engine;
  const angles = Array.from({ length: cylinder.count }, (_, i) =>
    i === 0 ? own : intake.throttle.angle,
  );
  return { ...engine, intake: { ...intake, throttleAngles: angles } };
}

function compared(
  bare: JoinedCycle,
  fitted: JoinedCycle,
  { resolution, plateError }: SignalQuestion['spec'],
): Omit<PlateError, 'moreAir'> {
  const [alone, joined] = [apart(bare), apart(fitted)];
  const { hoses, gained } = fitted.bars[0]!;
  const net = hoses.map((hose) => hose.net);
  const [wide, ...others] = airs(fitted) as [number, ...number[]];
  const unseen = ({ pressure }: Apart) => (plateError * resolution) / Math.abs(pressure);
  const common = mean(airs(fitted));
  return {
    alone,
    joined,
    given: net[0]! / wide,
    got: -mean(net.slice(1)) / mean(others),
    lambda: { one: wide / common, others: mean(others) / common },
    imbalance: (sum(net) - gained) / sum(hoses.map(({ out }) => out)),
    unseen: { alone: unseen(alone), joined: unseen(joined) },
  };
}

function apart({ cylinders }: JoinedCycle): Apart {
  const [wide, ...others] = cylinders;
  return {
    pressure: wide!.mean - mean(others.map((one) => one.mean)),
    air: wide!.air / mean(others.map(({ air }) => air)) - 1,
  };
}
