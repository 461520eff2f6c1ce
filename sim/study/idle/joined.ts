/**
 * Ways of idle air in the solver's own network, all cylinders solved: plates ajar, and a valve that pulses into a bar
 * of its own, into the pressure bar and into one cylinder. The pressure bar of the file is fitted throughout. The
 * valve is driven so often that its pulses repeat with the cycle.
 */
import { mean, swing } from '../../acoustics/barReading.ts';
import type { BarSpecification } from '../../bars.ts';
import { circleArea } from '../../duct/profile.ts';
import type { JoinedCycle } from '../../engine/joinedCycle.ts';
import type { EngineSpecification } from '../../specification.ts';
import type { PointOutcome } from '../../sweep/runner.ts';
import type { SweepObserver } from '../../sweep/sweep.ts';
import type { Computer } from '../../sweep/tasks.ts';
import { joinedBarOf } from '../signal/joined.ts';
import { throttled } from '../signal/tapped.ts';
import { bestOf, contextOf, type IdleStudy, idleStudyOf } from './compute.ts';
import { type Context, DRILLED, type IdleQuestion, valveOf } from './need.ts';
import type { IdleWay, WayName } from './ways.ts';

/** One way computed, warm, with one plate and its nipple off. */
export interface JoinedWay {
  name: WayName;
  /** Air of all cylinders [kg/s], and mean pressure behind their plates [Pa]. */
  air: number;
  mean: number;
  /** Air of the cylinder that is off over the others', less one [-]. */
  spread: number;
  /** Lambda of it and of the others with equal fuel, the common mixture at 1 [-]. */
  lambda: { one: number; others: number };
  /** At the sensor of the pressure bar: peak to peak, and mean above that of the runners [Pa]. */
  signal?: { ripple: number; offset: number };
}

export interface JoinedIdle extends IdleStudy {
  joined: JoinedWay[];
  /** How often the valve is driven there [Hz]. */
  pulsed: number;
  outcomes: PointOutcome[];
}

export async function joinedIdleOf(
  question: IdleQuestion,
  computer: Computer,
  observer: SweepObserver = {},
): Promise<JoinedIdle> {
  const study = idleStudyOf(question);
  const context = contextOf(question);
  const engines = setUps(context);
  observer.onTotal?.(engines.length);
  const runs = await Promise.all(
    engines.map(async ({ name, engine }) => {
      const { speed } = question.spec;
      const cycle = await computer.task('joined', { engine, speed });
      const outcome = 'failure' in cycle ? cycle : cycle.point;
      observer.onPoint?.(0, speed, outcome);
      return { name, cycle, outcome };
    }),
  );
  const joined = runs.flatMap(({ name, cycle }) =>
    'failure' in cycle ? [] : [wayOf(name, cycle, context)],
  );
  const pulsed = (timesOf(context) * question.spec.speed) / 120;
  const ways = study.ways.map((way) => computedWay(way, joined));
  const best = bestOf(ways, question.bar);
  const { best: _, ...rest } = study;
  const runners = joined.find(({ name }) => name === 'ajar')?.mean ?? study.mean;
  const outcomes = runs.map(({ outcome }) => outcome);
  return { ...rest, mean: runners, ways, ...(best && { best }), joined, pulsed, outcomes };
}

/** A way with the evenness and the signal that were computed, where they were. */
function computedWay(way: IdleWay, joined: readonly JoinedWay[]): IdleWay {
  const named = (name: WayName) => joined.find((one) => one.name === name);
  const [own, quiet] = [named(way.name === 'driven' ? 'ajar' : way.name), named('ajar')];
  if (!own) return way;
  const { spread, lambda, signal } = own;
  if (!signal || !quiet?.signal) return { ...way, spread, lambda };
  const ripple = Math.max(signal.ripple - quiet.signal.ripple, 0);
  return { ...way, spread, lambda, ripple, offset: Math.abs(signal.offset - quiet.signal.offset) };
}

/** Pulses in a cycle, a whole number. */
const timesOf = ({ spec }: Context) => Math.max(Math.round((spec.frequency * 120) / spec.speed), 1);

/** The engine by each way. */
function setUps(context: Context): { name: WayName; engine: EngineSpecification }[] {
  const { engine, bar, ajar, beside } = context;
  const { count } = engine.cylinder;
  const own = ownBar(context, count);
  const sensor = bar ? [joinedBarOf(bar, count, at(context))] : [];
  const valve = valveSpec(context);
  const set = (name: WayName, angle: number, bars: readonly BarSpecification[]) => ({
    name,
    engine: fitted(context, angle, bars),
  });
  const shared = bar?.hoses === count && [fedOff({ ...sensor[0]!, valve }, bar.jetBore, context)];
  return [
    set('ajar', ajar, sensor),
    set('own', beside, [...sensor, fedOff({ ...own, valve }, context.spec.nippleBore, context)]),
    ...(shared ? [set('shared', beside, shared)] : []),
    set('one', beside, [...sensor, { ...ownBar(context, 1), valve }]),
  ];
}

const at = ({ engine, spec, mean: pressure }: Context) => ({
  frequency: (spec.speed * engine.cylinder.count) / 120,
  pressure,
});

function ownBar(context: Context, hoses: number): BarSpecification {
  const { hoseLength: length, hoseBore: bore, nippleBore, barVolume: volume } = context.spec;
  const hole = DRILLED * circleArea(nippleBore);
  const places = Array.from({ length: hoses }, (_, place) => ({ place, length, bore, hole }));
  return { at: at(context), hoses: places, volume };
}

/** Open for what the warm engine wants of it. */
function valveSpec(context: Context): NonNullable<BarSpecification['valve']> {
  const { valve, given } = valveOf(context);
  const bore = context.spec.valveBore;
  const open = Math.min(given[0] / valve.flow, 1);
  return { bore, area: DRILLED * circleArea(bore), times: timesOf(context), open };
}

/** With the first nipple wider than its bore by what bores differ. */
function fedOff(bar: BarSpecification, bore: number, { spec }: Context): BarSpecification {
  const wider = circleArea(bore + spec.boreError) / circleArea(bore);
  return {
    ...bar,
    hoses: bar.hoses.map((one, i) => (i === 0 ? { ...one, hole: wider * one.hole } : one)),
  };
}

/** Plates at an angle, the first further open by what plates differ, and these bars. */
function fitted(
  { engine, spec }: Context,
  angle: number,
  bars: readonly BarSpecification[],
): EngineSpecification {
  const plates = throttled(engine, angle);
  const { count } = engine.cylinder;
  const throttleAngles = Array.from(
    { length: count },
    (_, i) => angle + (i === 0 ? spec.plateError : 0),
  );
  return {
    ...plates,
    intake: { ...plates.intake, throttleAngles, ...(bars.length > 0 && { bars }) },
  };
}

function wayOf(name: WayName, { cylinders, bars }: JoinedCycle, { spec, bar }: Context): JoinedWay {
  const airs = cylinders.map(({ air }) => air);
  const [one, ...rest] = airs as [number, ...number[]];
  const others = rest.length > 0 ? mean(rest) : one;
  const common = mean(airs);
  const [sensed] = bars;
  return {
    name,
    air: (common * airs.length * spec.speed) / 120,
    mean: mean(cylinders.map((cylinder) => cylinder.mean)),
    spread: one / others - 1,
    lambda: { one: one / common, others: others / common },
    ...(bar &&
      sensed && {
        signal: {
          ripple: swing(sensed.sensor),
          offset: mean(sensed.sensor) - mean(cylinders.map((cylinder) => cylinder.mean)),
        },
      }),
  };
}
