/**
 * The spark at idle, plates as they are: its best by runs of one cylinder, and what a later one holds back, all
 * cylinders solved. What burns slower than at full load may want half of it burned at another angle. No source:
 * interpolation.
 */
import { bestBetween } from '../../decision/bestBetween.ts';
import type { EngineSpecification } from '../../specification.ts';
import type { Context, IdleState } from './need.ts';
import type { JoinedWay, Runs } from './runs.ts';

/** The spark at its best and late, plates set alike. */
export interface LateSpark {
  state: IdleState;
  /** Crank angle of 50 % burned at the best [deg]. */
  middle: number;
  /** Torque that it holds back, of the engine [N m] and over the indicated [-]. */
  torque: number;
  share: number;
  /** Temperature of what leaves by the exhaust valves, spark at its best and late [K]. */
  best: number;
  late: number;
}

/** Angles of 50 % burned lie so far apart [deg], and so many are tried at most. */
const APART = 6;
const MOST_TRIED = 8;

export async function lateSpark(
  set: JoinedWay,
  runs: Runs,
  context: Context,
): Promise<LateSpark[]> {
  const { setting, state } = set;
  const middle = await bestMiddle(set, runs, context.engine.combustion.burn50);
  const angles = [middle, middle + context.spec.retard];
  runs.expect(angles.length);
  const [best, late] = await Promise.all(
    angles.map((at) => runs.run(setting, state, burnedAt(at))),
  );
  if (!best || !late) return [];
  const torque = best.torque - late.torque;
  const share = torque / best.torque;
  return [{ state, middle, torque, share, best: best.exhaust, late: late.exhaust }];
}

const burnedAt =
  (burn50: number) =>
  (engine: EngineSpecification): EngineSpecification => ({
    ...engine,
    combustion: { ...engine.combustion, burn50 },
  });

/** Where torque is greatest; from the stated angle on until the best of those tried lies between two others. */
async function bestMiddle(
  { setting, state }: JoinedWay,
  runs: Runs,
  stated: number,
): Promise<number> {
  const torqueAt = (at: number) => runs.torqueAlike(setting, state, burnedAt(at));
  const angles = [stated, stated + APART, stated + 2 * APART];
  runs.expect(angles.length);
  const torques = await Promise.all(angles.map(torqueAt));
  while (angles.length < MOST_TRIED) {
    const top = torques.indexOf(Math.max(...torques));
    if (top > 0 && top < angles.length - 1) break;
    runs.expect(1);
    const next = top === 0 ? angles[0]! - APART : angles.at(-1)! + APART;
    const add = top === 0 ? 'unshift' : 'push';
    angles[add](next);
    torques[add](await torqueAt(next));
  }
  return bestBetween(angles, torques);
}
