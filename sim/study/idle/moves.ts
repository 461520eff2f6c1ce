/** Each way through warm and cold, without the load and with it, then as far open as it goes; and the spark late. */
import { type Context, STATES } from './need.ts';
import type { JoinedWay, Runs } from './runs.ts';
import { mostOf, settingFor } from './settings.ts';
import { lateSpark } from './spark.ts';
import type { WayName } from './ways.ts';

/** A way in a state. */
export interface StateWay extends JoinedWay {
  /** More air that it can let in, over that of the warm engine [-]; absent where nothing moves. */
  left?: number;
}

/** A way that follows what is wanted, and what it has left. */
export async function moving(name: WayName, runs: Runs, context: Context): Promise<StateWay[]> {
  runs.expect(1);
  const asked = mostOf(name, context);
  const full = await runs.run(settingFor(name, asked, context), 'warm');
  const found = await runs.chain(name, STATES, full && { asked, air: full.air });
  const { warm } = context.need;
  return found.map((one) => ({
    ...one,
    ...(full && { left: Math.max((full.air - one.air) / warm, 0) }),
  }));
}

/** Plates moved, left as they stand for the warm engine, and the spark late. */
export async function onPlates(runs: Runs, context: Context) {
  const driven = await moving('driven', runs, context);
  const sparked = ['warm', 'cold'].map((state) => driven.find((one) => one.state === state));
  const [ajar, ...sparks] = await Promise.all([
    unmoved('ajar', driven[0], runs),
    ...sparked.map((set) => (set ? lateSpark(set, runs, context) : [])),
  ]);
  return { driven, ajar, sparks: sparks.flat() };
}

export async function onBleeds(runs: Runs): Promise<StateWay[]> {
  const [warm] = await runs.chain('bleeds', ['warm']);
  return unmoved('bleeds', warm, runs);
}

/** A way that nobody moves: with the load it gives what it gives without. */
async function unmoved(name: WayName, set: StateWay | undefined, runs: Runs): Promise<StateWay[]> {
  if (!set) return [];
  const { left: _, ...warm } = set;
  runs.expect(1);
  const cold = await runs.run({ ...warm.setting, name }, 'cold');
  return STATES.flatMap((state) => {
    const found = state === 'warm' || state === 'loaded' ? warm : cold;
    return found ? [{ ...found, name, state, wanted: runs.wanted(state) }] : [];
  });
}
