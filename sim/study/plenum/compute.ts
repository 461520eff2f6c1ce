/**
 * Individual bodies beside one throttle and a plenum on the same engine: full load over speed, and the
 * pressure that a sensor reads at part throttle. All cylinders of the plenum are solved together.
 */
import { sweptVolume } from '../../cylinder/crank.ts';
import { turnsToFill } from '../../decision/idleAir.ts';
import type { LengthUnit } from '../../decision/lengthUnit.ts';
import { portVolume } from '../../decision/portFilling.ts';
import type { Target } from '../../decision/target.ts';
import type { TradeOff } from '../../decision/tradeOff.ts';
import { circleArea } from '../../duct/profile.ts';
import type { PlenumSpecification } from '../../fittings.ts';
import type { EngineSpecification } from '../../specification.ts';
import { isFailure, type PointOutcome } from '../../sweep/runner.ts';
import { allPoints, type SweepObserver } from '../../sweep/sweep.ts';
import type { Computer } from '../../sweep/tasks.ts';
import type { Resolution } from '../contest.ts';
import { type FedCurve, outcomeOf, Runs, type Sensed, sensedIn, tracing } from '../fed.ts';
import { isBoosted, withFreeFeed } from '../length/freeFeed.ts';
import { resolvedPair } from '../pair.ts';
import { coarse } from '../signal/tapped.ts';
import { onPlenum, wideOpen } from './fitted.ts';

export interface PlenumQuestion {
  /** With individual bodies and the trumpets that are weighed. */
  engine: EngineSpecification;
  plenum: PlenumSpecification;
  /** [rpm], rising. */
  speeds: readonly number[];
  target: Target;
  /** Whether points are computed between the speeds until the difference is known. */
  refine?: boolean;
  lengthUnit: LengthUnit;
}

/** One plate angle and speed of one way. */
export interface SensedPoint extends Partial<Sensed> {
  way: 'bodies' | 'plenum';
  speed: number;
  /** Above the stop [deg]. */
  angle: number;
  outcome: PointOutcome;
}

export interface PlenumStudy extends Omit<PlenumQuestion, 'engine'> {
  bodies: FedCurve;
  onPlenum: FedCurve;
  /** How well both are known between the speeds; absent where nothing was refined. */
  resolution?: Resolution;
  /** Pressure in the plenum at full load, a speed each; undefined where the point failed. */
  inPlenum: (Sensed | undefined)[];
  /** Bodies against plenum. */
  weighed: TradeOff;
  /** The same breathing ambient air, where the feed is boosted: filling over speed of both. */
  free?: Record<SensedPoint['way'], PointOutcome[]>;
  part: SensedPoint[];
  /** Crank turns in which a port, and the plenum with its runners and ports, fill to one e-th behind a choked plate. */
  turns: { port: number; plenum: number };
}

export async function plenumStudyOf(
  question: PlenumQuestion,
  computer: Computer,
  observer: SweepObserver = {},
): Promise<PlenumStudy> {
  const { engine: filed, ...asked } = question;
  const engine = wideOpen(filed);
  const { speeds, target, plenum, refine } = asked;
  const other = onPlenum(engine, plenum);
  const free = isBoosted(engine) ? [withFreeFeed(engine), withFreeFeed(other)] : [];
  const places = partPlaces(question);
  observer.onTotal?.(free.length * speeds.length + places.length);
  const run = new Runs(computer, observer);
  const traced = tracing(computer, other, speeds);
  const pair = { engines: [engine, other] as const, speeds, target, ...(refine && { refine }) };
  const [{ ours, theirs, weighed, resolution }, part, ...freed] = await Promise.all([
    resolvedPair(pair, traced, observer),
    Promise.all(places.map((place) => sensed(run, place))),
    ...free.map((one) => run.curve(one, speeds)),
  ]);
  return {
    ...asked,
    bodies: { engine, ...ours },
    onPlenum: { engine: other, ...theirs },
    inPlenum: speeds.map((speed) => sensedIn(traced.traces.get(speed)!, 'chamber')),
    weighed,
    ...(resolution && { resolution }),
    ...(freed.length > 0 && { free: { bodies: freed[0]!, plenum: freed[1]! } }),
    part,
    turns: turnsOf(question, other),
  };
}

async function sensed(run: Runs, { fed, ...at }: PartPlace): Promise<SensedPoint> {
  const found = await run.trace(fed, at.speed);
  const under = sensedIn(found, at.way === 'plenum' ? 'chamber' : 'plate');
  return { ...at, outcome: outcomeOf(found), ...under };
}

type PartPlace = Pick<SensedPoint, 'way' | 'speed' | 'angle'> & { fed: EngineSpecification };

/** Plate angles above the stop [deg]; wide open comes after them. */
const ABOVE_STOP = [6, 12, 25];

/**
 * Both ways at the lowest speed and in the middle of the band, from a plate nearly shut to wide open. The
 * plenum is one volume here: nearly shut, cylinders along it never quite repeat from cycle to cycle.
 */
function partPlaces({ engine, plenum, speeds, target }: PlenumQuestion): PartPlace[] {
  const numerics = coarse(engine.numerics);
  const rough = { ...engine, numerics };
  const { row: _row, ...alike } = plenum;
  const { throttle } = engine.intake;
  const middle = Math.round((target.from + target.to) / 2);
  return [...new Set([speeds[0]!, middle])].flatMap((speed) =>
    (['bodies', 'plenum'] as const).flatMap((way) => {
      const stop = (way === 'bodies' ? throttle : plenum.throttle).closedAngle;
      return [...ABOVE_STOP, 90 - stop].map((angle) => {
        const open = stop + angle;
        const intake = { ...engine.intake, throttle: { ...throttle, angle: open } };
        const fed = way === 'bodies' ? { ...rough, intake } : onPlenum(rough, alike, open);
        return { fed, way, speed, angle };
      });
    }),
  );
}

function turnsOf({ engine, plenum }: PlenumQuestion, other: EngineSpecification) {
  const swept = sweptVolume(engine.cylinder);
  const { count } = engine.cylinder;
  return {
    port: turnsToFill(portVolume(engine), swept),
    plenum: turnsToFill(behindPlate(other, plenum), count * swept),
  };
}

/** All room from the one plate, or one a bank, to the valves: plenum, runners, ports [m^3]. */
export function behindPlate(
  other: EngineSpecification,
  { volume, throttle }: PlenumSpecification,
): number {
  const { trumpet } = other.intake;
  const plates = other.intake.chamber!.banks ? 2 : 1;
  const body = circleArea(throttle.bore) * (throttle.length - throttle.shaftPosition);
  const each = circleArea(trumpet.innerDiameter) * trumpet.length + portVolume(other);
  return volume + plates * body + other.cylinder.count * each;
}

/** Every point that the study rests on. */
export function plenumOutcomes({
  bodies,
  onPlenum: other,
  part,
  free,
}: PlenumStudy): PointOutcome[] {
  const unboosted = free ? [...free.bodies, ...free.plenum] : [];
  const sensed = part.map(({ outcome }) => outcome);
  return [...allPoints(bodies), ...allPoints(other), ...sensed, ...unboosted];
}

/** Whether every point has settled. */
export const plenumSound = (study: PlenumStudy): boolean =>
  plenumOutcomes(study).every((one) => !isFailure(one) && one.settled);
