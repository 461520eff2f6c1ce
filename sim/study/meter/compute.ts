/**
 * Which sensor tells the air: a flow meter in the snorkel of the box over the trumpets, the pressure behind the
 * plates, or the angle of the plates. All cylinders in the box are solved together, so the meter sees what they
 * draw and blow back through box and snorkel.
 */
import { mean, shifted, swing } from '../../acoustics/barReading.ts';
import { CYCLE } from '../../crankAngle.ts';
import { sweptVolume } from '../../cylinder/crank.ts';
import {
  lagged,
  type MeterLaw,
  type Pulsation,
  pulsationOf,
  readingOverMean,
} from '../../decision/flowMeter.ts';
import { turnsToFill } from '../../decision/idleAir.ts';
import type { PointResult } from '../../engine/point.ts';
import type { Station } from '../../engine/trace.ts';
import { firings } from '../../firings.ts';
import type { AirboxSpecification, MeterSpecification } from '../../fittings.ts';
import type { EngineSpecification } from '../../specification.ts';
import { isFailure, type PointOutcome } from '../../sweep/runner.ts';
import type { SweepObserver } from '../../sweep/sweep.ts';
import type { Computer } from '../../sweep/tasks.ts';
import { inBox } from '../airbox/fitted.ts';
import { outcomeOf, Runs, type Traced } from '../fed.ts';
import { historyOf } from '../signal/history.ts';
import { airOf, coarse, TAPPING } from '../signal/tapped.ts';
import { errorsOf, type Sensor, type SensorErrors } from './errors.ts';

export interface MeterQuestion {
  engine: EngineSpecification;
  airbox: AirboxSpecification;
  meter: MeterSpecification;
  /** Air of the warm engine at idle through this meter [kg/s], where the file says it. */
  idleAir?: number;
}

/** Mean reading over the true mean of each kind of meter [-], `own` the one of the file with its lag. */
export interface Readings {
  difference: number;
  straight: number;
  hot: number;
  own: number;
}

/** What the sensors are under at one speed and plate angle. */
export interface Metered {
  /** Flow at the meter over a cycle, a degree apart [kg/s]. */
  flow: number[];
  pulsation: Pulsation;
  /** Mean flow beyond what cylinders catch, over that [-]: what passes straight into the exhaust. */
  through: number;
  readings: Readings;
  /** Behind the plates, all joined: mean, and root mean square of the lagging signal about it; swing behind one alone [Pa]. */
  pressure: { mean: number; ripple: number; alone: number };
}

export interface MeteredPoint {
  speed: number;
  /** Plate from the plane across the bore, and above its stop [deg]. */
  angle: number;
  above: number;
  outcome: PointOutcome;
  /** Undefined where the point failed. */
  seen?: Metered;
  /** Undefined where it failed. */
  errors?: SensorErrors;
}

export interface MeterStudy extends MeterQuestion {
  /** Speed by speed, angles rising. */
  points: MeteredPoint[];
  /** Crank turns in which the box fills to one e-th. */
  boxTurns: number;
}

export async function meterStudyOf(
  question: MeterQuestion,
  computer: Computer,
  observer: SweepObserver = {},
): Promise<MeterStudy> {
  const { engine, airbox, meter } = question;
  const run = new Runs(computer, observer);
  observer.onTotal?.(meter.speeds.length * meter.angles.length);
  const rows = await Promise.all(
    meter.speeds.map(async (speed) => {
      const row = await Promise.all(
        meter.angles.map((angle) => metered(run, question, speed, angle)),
      );
      return row.map((point, i) => ({ ...point, ...errorsOf(row, i, question) }));
    }),
  );
  const swept = engine.cylinder.count * sweptVolume(engine.cylinder);
  return { ...question, points: rows.flat(), boxTurns: turnsToFill(airbox.volume, swept) };
}

async function metered(
  run: Runs,
  question: MeterQuestion,
  speed: number,
  angle: number,
): Promise<MeteredPoint> {
  const { engine, airbox, meter } = question;
  const { throttle } = engine.intake;
  const share = meter.position / airbox.snorkelLength;
  const place: Station = { name: 'meter', duct: 'inlet', share };
  const { row: _row, ...alike } = airbox;
  const intake = { ...engine.intake, throttle: { ...throttle, angle } };
  const rough = { ...engine, intake, numerics: coarse(engine.numerics) };
  const found = await run.trace(inBox(rough, alike), speed, [TAPPING, place]);
  const above = angle - throttle.closedAngle;
  const seen = seenIn(found, question);
  return { speed, angle, above, outcome: outcomeOf(found), ...(seen && { seen }) };
}

function seenIn(found: Traced, question: MeterQuestion): Metered | undefined {
  const { engine, meter } = question;
  if (!('point' in found)) return undefined;
  const [tapping, place] = found.stations;
  const of = (values: readonly number[]) => historyOf(found.crankAngle, values);
  const flow = of(place!.massFlow);
  const one = of(tapping!.pressure);
  const period = 120 / found.point.speed;
  const joined = lagged(joinedOf(one, engine), meter.pressureLag, period);
  const level = mean(joined);
  const pulsation = pulsationOf(flow);
  return {
    flow,
    pulsation,
    through: pulsation.mean / caughtBy(question, found.point) - 1,
    readings: readingsOf(flow, meter, period),
    pressure: {
      mean: level,
      ripple: Math.sqrt(mean(joined.map((p) => (p - level) * (p - level)))),
      alone: swing(one),
    },
  };
}

/** Air that the cylinders behind the meter catch [kg/s]. */
function caughtBy({ engine, airbox: { banks } }: MeterQuestion, point: PointResult): number {
  const own = firings(engine).filter((_, i) => !banks || banks[i] === banks[0]);
  const fillings = own.map(
    ({ number }) =>
      point.cylinders?.find(({ numbers }) => numbers.includes(number))?.volumetricEfficiency ??
      point.volumetricEfficiency,
  );
  const of = (volumetricEfficiency: number) => airOf(engine, { ...point, volumetricEfficiency });
  return fillings.reduce((sum, one) => sum + (of(one) * point.speed) / 120, 0);
}

/** Mean of the runners, alike and each in its turn. */
function joinedOf(history: readonly number[], engine: EngineSpecification): number[] {
  const runners = firings(engine).map(({ angle }) => shifted(history, angle / CYCLE));
  return history.map((_, i) => mean(runners.map((runner) => runner[i]!)));
}

/** What is averaged before it is linearised has no lag of its own. */
const AVERAGED = Number.POSITIVE_INFINITY;

const LAWS: Record<MeterSpecification['kind'], (meter: MeterSpecification) => MeterLaw> = {
  difference: () => ({ exponent: 2, lag: AVERAGED }),
  straight: ({ lag }) => ({ exponent: 1, lag }),
  hot: ({ exponent, lag }) => ({ exponent, lag }),
};

function readingsOf(flow: readonly number[], meter: MeterSpecification, period: number): Readings {
  const by = (law: MeterLaw) => readingOverMean(flow, law, period);
  return {
    difference: by({ exponent: 2, lag: AVERAGED }),
    straight: by({ exponent: 1, lag: 0 }),
    hot: by({ exponent: meter.exponent, lag: AVERAGED }),
    own: by(LAWS[meter.kind](meter)),
  };
}

/** At how many places each sensor is the least wrong within what is allowed, and at how many none is. */
export function trustCounts({ points }: MeterStudy): Record<Sensor | 'none', number> {
  const known = points.flatMap(({ errors }) => (errors ? [errors.trust ?? 'none'] : []));
  const count = (one: Sensor | 'none') => known.filter((trust) => trust === one).length;
  return {
    flow: count('flow'),
    pressure: count('pressure'),
    angle: count('angle'),
    none: count('none'),
  };
}

/** Every point that the study rests on. */
export const meterOutcomes = ({ points }: MeterStudy): PointOutcome[] =>
  points.map(({ outcome }) => outcome);

/** Whether every point has settled. */
export const meterSound = (study: MeterStudy): boolean =>
  meterOutcomes(study).every((one) => !isFailure(one) && one.settled);
