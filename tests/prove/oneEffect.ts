/**
 * What effects of the model move, one taken away at a time: the length that is best in the band as the model
 * stands against the one fitted now, gain of the band mean and the worst losses between the speeds, of smooth
 * curves at a third of a ripple. The best length is the top of the parabola through band means. Cells twice
 * as long as the file's.
 */
import { bestBetween } from '../../sim/decision/bestBetween.ts';
import { rippleSpacing } from '../../sim/decision/ripple.ts';
import { smoothAt } from '../../sim/decision/smooth.ts';
import { targetMean } from '../../sim/decision/target.ts';
import { type TradeOff, tradeOff } from '../../sim/decision/tradeOff.ts';
import type { Scenario } from '../../sim/scenario/resolve.ts';
import type { EngineSpecification } from '../../sim/specification.ts';
import { withLength } from '../../sim/sweep/sweep.ts';
import { meshed } from '../scenario.ts';
import { readDemo } from '../toy.ts';
import type { Curve } from './patchedSolver.ts';

/** A way to compute, and how far the page lets it move the gain [points]. */
export interface Way {
  what: string;
  curve: Curve;
  bound: number;
}

/** Speeds a third of a ripple apart [rpm]. */
function closeSpeeds(engine: EngineSpecification, from: number, to: number): number[] {
  const speeds = [from];
  for (;;) {
    const last = speeds.at(-1)!;
    const next = last + rippleSpacing(engine, last) / 3;
    if (next >= to) return [...speeds, to];
    speeds.push(Math.round(next));
  }
}

/** Lengths beside the best one that is looked at. */
const BESIDE = 2;

/** The best length in the band [m], looked for about a length, further on while it is the last one. */
function bestLength(curve: Curve, asked: Question, about: number): number {
  const { engine, lengths, target } = asked;
  const speeds = closeSpeeds(engine, target.from, target.to);
  const known = new Map<number, number>();
  const meanAt = (i: number) => {
    const mean =
      known.get(i) ?? targetMean(speeds, curve(withLength(engine, lengths[i]!), speeds), target);
    known.set(i, mean);
    return mean;
  };
  let best = nearest(lengths, about);
  for (;;) {
    const near = lengths.map((_, i) => i).filter((i) => Math.abs(i - best) <= BESIDE);
    const top = near.reduce((a, b) => (meanAt(b) > meanAt(a) ? b : a));
    if (top === best) {
      return bestBetween(
        near.map((i) => lengths[i]!),
        near.map(meanAt),
      );
    }
    best = top;
  }
}

function nearest(lengths: readonly number[], about: number): number {
  return lengths.reduce(
    (best, length, i) => (Math.abs(length - about) < Math.abs(lengths[best]! - about) ? i : best),
    0,
  );
}

interface Question extends Pick<Scenario, 'engine' | 'target'> {
  /** Lengths to try [m] and speeds [rpm], rising. */
  lengths: readonly number[];
  speeds: readonly number[];
}

/** A length against the one fitted now. */
function weighed(curve: Curve, { engine, target, speeds }: Question, length: number): TradeOff {
  const fitted = engine.intake.trumpet.length;
  const shorter = withLength(engine, Math.min(length, fitted));
  const at = closeSpeeds(shorter, speeds[0]!, speeds.at(-1)!);
  const read = Array.from({ length: (at.at(-1)! - at[0]!) / 10 }, (_, i) => at[0]! + 10 * i);
  const [ours, own] = [length, fitted].map((one) =>
    smoothAt(at, curve(withLength(engine, one), at), [...read, at.at(-1)!]),
  );
  return tradeOff([...read, at.at(-1)!], ours!, own!, target);
}

export function questionOf(name: string): Question {
  const { engine, sweep, speeds, target } = readDemo(name);
  return { engine: meshed(engine, 2, 1e-3), lengths: sweep.lengths, speeds, target };
}

export const row = (...cells: readonly string[]) => console.log(`| ${cells.join(' | ')} |`);

/** A row of the demo as it stands, and one without each effect; whether every gain stays within its bound. */
export function tellEffects(name: string, stands: Curve, without: readonly Way[]): boolean {
  const asked = questionOf(name);
  const middle = asked.lengths[Math.floor(asked.lengths.length / 2)]!;
  const best = bestLength(stands, asked, middle);
  const length = asked.lengths[nearest(asked.lengths, best)]!;
  const own = weighed(stands, asked, length);
  const millimetres = (metres: number) => (1000 * metres).toFixed(0);
  const figures = ({ gainPercent, worstLossPercent, bandLossPercent }: TradeOff) =>
    [gainPercent, worstLossPercent, bandLossPercent].map((x) => x.toFixed(2));
  const pair = `${millimetres(length)} v ${millimetres(asked.engine.intake.trumpet.length)} mm`;
  row(name, pair, 'as it stands', millimetres(best), ...figures(own));
  let holds = true;
  for (const { what, curve, bound } of without) {
    const other = weighed(curve, asked, length);
    const held = Math.abs(other.gainPercent - own.gainPercent) <= bound;
    holds &&= held;
    const told = `without ${what}${held ? '' : ', BEYOND THE PAGE'}`;
    row('', '', told, millimetres(bestLength(curve, asked, best)), ...figures(other));
  }
  return holds;
}

/** The head of their table. */
export function effectsHead(what: string): void {
  row('demo', 'lengths', what, 'best [mm]', 'gain [%]', 'worst outside [%]', 'in band [%]');
  console.log('|---|---|---|--:|--:|--:|--:|');
}
