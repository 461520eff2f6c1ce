/** Everything a view may show, as plain data, made from the signals in one place. */
import { computed } from '@preact/signals';
import {
  allPoints,
  brakeTorque,
  type DecisionWords,
  decisionWords,
  isFailure,
  type PointOutcome,
  type PointResult,
  type Scenario,
  type TradeOff,
  tradeOff,
} from '../../sim/index.ts';
import { between } from '../compute/between.ts';
import { FIRST_LENGTHS } from '../compute/firstLook.ts';
import type { Role } from '../look.ts';
import { hand } from './hand.ts';
import { kept, type SetUp } from './kept.ts';
import { type Study, study, tick } from './study.ts';

/** How good a point is. */
export type Standing = 'full' | 'unsettled' | 'preview' | 'failed' | 'waiting';

export interface CurvePoint {
  speed: number;
  standing: Standing;
  /** Whether a preview is computed, in single precision, and no estimate between others. */
  near?: boolean;
  /** Volumetric efficiency [-]. */
  efficiency?: number;
  /** Pressure at valve closing [Pa]. */
  closingPressure?: number;
  /** Indicated torque [N m]. */
  torque?: number;
  /** Torque [N m] and power [W] at the flywheel. */
  brakeTorque?: number;
  brakePower?: number;
  failure?: string;
}

export interface Curve {
  role: Role;
  /** Trumpet length [m]. */
  length: number;
  points: CurvePoint[];
  /** Every point of a curve that is resolved over all speeds, those between the speeds of the file among them. */
  all?: CurvePoint[];
  /** Whether it is the best of a first look only, and nothing is recommended yet. */
  firstLook?: boolean;
}

export interface Verdict {
  length: number;
  tradeOff: TradeOff;
  /** The answer in the words that the command line and the report use. */
  words: DecisionWords;
  standing: 'preview' | 'full';
}

export interface Picture {
  scenario: Scenario;
  study: Study;
  curves: Curve[];
  verdict?: Verdict;
  /** What the hand's length gives and takes; absent until all its points are known somehow. */
  handTradeOff?: TradeOff;
  /** Set-ups kept whose curves are drawn beside the others. */
  pinned: readonly SetUp[];
}

/** The picture without the length that is tried: it stays the same while that is moved. */
export const still = computed<Picture | undefined>(() => {
  const now = study.value;
  if (!now) return undefined;
  // Once the answer is complete, points come in for lengths tried only.
  if (now.stage !== 'done') tick.value;
  const verdict = verdictOf(now);
  const own = now.scenario.engine.intake.trumpet.length;
  const curves = [curveAt(now, 'now', own)];
  if (verdict) {
    const firstLook = verdict.standing === 'preview';
    curves.push({ ...curveAt(now, 'best', verdict.length), firstLook });
  }
  return {
    scenario: now.scenario,
    study: now,
    curves,
    ...(verdict && { verdict }),
    pinned: kept.value.filter(({ pinned }) => pinned),
  };
});

export const picture = computed<Picture | undefined>(() => {
  const base = still.value;
  if (!base || hand.value === undefined) return base;
  tick.value;
  const curves = [...base.curves, curveAt(base.study, 'hand', hand.value)];
  const handTradeOff = tradeOffOf(base.scenario, curves);
  return { ...base, curves, ...(handTradeOff && { handTradeOff }) };
});

export function curveOf(picture: Picture, role: Role): Curve | undefined {
  return picture.curves.find((curve) => curve.role === role);
}

/** Whether every point of the curve is computed at full accuracy. */
export function isFull(curve: Curve): boolean {
  return curve.points.every(({ standing }) => standing !== 'preview' && standing !== 'waiting');
}

function verdictOf({ full, preview }: Study): Verdict | undefined {
  const source = full ?? preview;
  if (!source) return undefined;
  return {
    length: source.recommended.length,
    tradeOff: source.decision,
    words: decisionWords(source),
    standing: full ? 'full' : 'preview',
  };
}

function tradeOffOf(scenario: Scenario, curves: readonly Curve[]): TradeOff | undefined {
  const now = curves.find(({ role }) => role === 'now')!;
  const moved = curves.find(({ role }) => role === 'hand');
  if (!moved) return undefined;
  const torque = scenario.target.score === 'indicated-torque';
  const values = (curve: Curve) =>
    curve.points.map((point) => (torque ? point.torque : point.efficiency) ?? Number.NaN);
  const [ours, theirs] = [values(moved), values(now)];
  if ([...ours, ...theirs].some(Number.isNaN)) return undefined;
  return tradeOff(scenario.speeds, ours, theirs, scenario.target);
}

/** The curve of any length, from points computed where there are any and estimated elsewhere. */
export function curveAt(now: Study, role: Role, length: number): Curve {
  const points = now.scenario.speeds.map((speed) => pointAt(now, length, speed));
  const resolved = [now.full?.baseline, now.full?.recommended].find(
    (curve) => curve?.length === length && curve.resolved === 'all',
  );
  const all = resolved && allPoints(resolved).map((outcome) => computedPoint(now, outcome));
  return { role, length, points, ...(all && { all }) };
}

function pointAt(now: Study, length: number, speed: number): CurvePoint {
  const outcome = now.table.at(length, speed);
  if (outcome) return computedPoint(now, outcome);
  const quick = now.quick.at(length, speed);
  if (quick && !isFailure(quick)) {
    return { ...computedPoint(now, quick), standing: 'preview', near: true };
  }
  const efficiency = estimate(now, length, speed, (point) => point.volumetricEfficiency);
  if (efficiency === undefined) return { speed, standing: 'waiting' };
  const closingPressure = estimate(now, length, speed, (point) => point.pressureAtClosing)!;
  const torque = estimate(now, length, speed, (point) => point.indicatedTorque)!;
  const flywheel = atFlywheel(now, speed, torque);
  return { speed, standing: 'preview', efficiency, closingPressure, torque, ...flywheel };
}

function computedPoint(now: Study, outcome: PointOutcome): CurvePoint {
  const { speed } = outcome;
  if (isFailure(outcome)) return { speed, standing: 'failed', failure: outcome.failure };
  return {
    speed,
    standing: outcome.settled ? 'full' : 'unsettled',
    efficiency: outcome.volumetricEfficiency,
    closingPressure: outcome.pressureAtClosing,
    torque: outcome.indicatedTorque,
    ...atFlywheel(now, speed, outcome.indicatedTorque),
  };
}

function atFlywheel({ scenario }: Study, speed: number, indicatedTorque: number) {
  const brake = brakeTorque({ speed, indicatedTorque }, scenario.engine);
  return { brakeTorque: brake.torque, brakePower: brake.power };
}

type FigureOf = (point: PointResult) => number;

/**
 * Between lengths known at this very speed where they are enough, else also between the speeds where
 * they are.
 */
function estimate(now: Study, length: number, speed: number, of: FigureOf): number | undefined {
  const here = alongLength(now, length, speed, of);
  if (here !== undefined) return here;
  const known = now.scenario.speeds.flatMap((at) => {
    const y = alongLength(now, length, at, of);
    return y === undefined ? [] : [{ at, y }];
  });
  return between(
    known.map(({ at }) => at),
    known.map(({ y }) => y),
    speed,
  );
}

function alongLength(now: Study, length: number, speed: number, of: FigureOf): number | undefined {
  const { lengths, results } = now.table.column(speed);
  if (lengths.length < Math.min(FIRST_LENGTHS, now.scenario.sweep.lengths.length)) return undefined;
  return between(lengths, results.map(of), length);
}
