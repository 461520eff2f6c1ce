/**
 * What the mouth's effects move, one taken away at a time, on every demo. Slow (minutes):
 *
 *   node --import tsx tests/prove/mouthEffects.ts [demo ...]
 *
 *   flare      the inertia of potential flow through it; without: plane waves in the flare and a plain end,
 *              0.6127 radii, at its rim
 *   jet        loses its head at the bore; without: slowed to the rim without loss, (bore / rim)^4 heads lost
 *   radiation  resistor and compliance beside the inertance; without: the inertance alone
 *
 * The length that is best in the band as the model stands is held against the one fitted now: gain of the
 * band mean, and the worst losses between the speeds, of smooth curves at a third of a ripple. The best length
 * is the top of the parabola through band means. Cells twice as long as the file's.
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
import { NO_RADIATION, noJet, withPlainRim } from './mouthEdits.ts';
import { type Curve, patchedCurve } from './patchedSolver.ts';

const DEMOS = [
  'hill-climb',
  'sprint-single',
  'endurance-six',
  'boosted-four',
  'cross-plane-eight',
  'uneven-twin',
  'forest-four',
  'road-four',
];

interface Way {
  what: string;
  curve: Curve;
}

/** Bounds of docs/limits.md: on the move of the gain [points]. */
const BOUNDS: Record<string, number> = { flare: 0.6, jet: 0.8, radiation: 0.2 };

async function waysOf(engine: EngineSpecification): Promise<Way[]> {
  const stands = await patchedCurve();
  const flareless: Curve = (one, speeds) => stands(withPlainRim(one), speeds);
  return [
    { what: 'as it stands', curve: stands },
    { what: 'flare', curve: flareless },
    { what: 'jet', curve: await patchedCurve(noJet(engine)) },
    { what: 'radiation', curve: await patchedCurve(NO_RADIATION) },
  ];
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

function questionOf(name: string): Question {
  const { engine, sweep, speeds, target } = readDemo(name);
  return { engine: meshed(engine, 2, 1e-3), lengths: sweep.lengths, speeds, target };
}

const row = (...cells: readonly string[]) => console.log(`| ${cells.join(' | ')} |`);

async function tell(name: string): Promise<boolean> {
  const asked = questionOf(name);
  const [stands, ...without] = await waysOf(asked.engine);
  const middle = asked.lengths[Math.floor(asked.lengths.length / 2)]!;
  const best = bestLength(stands!.curve, asked, middle);
  const length = asked.lengths[nearest(asked.lengths, best)]!;
  const own = weighed(stands!.curve, asked, length);
  const millimetres = (metres: number) => (1000 * metres).toFixed(0);
  const figures = ({ gainPercent, worstLossPercent, bandLossPercent }: TradeOff) =>
    [gainPercent, worstLossPercent, bandLossPercent].map((x) => x.toFixed(2));
  const pair = `${millimetres(length)} v ${millimetres(asked.engine.intake.trumpet.length)} mm`;
  row(name, pair, 'as it stands', millimetres(best), ...figures(own));
  let holds = true;
  for (const { what, curve } of without) {
    const other = weighed(curve, asked, length);
    const held = Math.abs(other.gainPercent - own.gainPercent) <= BOUNDS[what]!;
    holds &&= held;
    const name = `without ${what}${held ? '' : ', BEYOND THE PAGE'}`;
    row('', '', name, millimetres(bestLength(curve, asked, best)), ...figures(other));
  }
  return holds;
}

row('demo', 'lengths', 'mouth', 'best [mm]', 'gain [%]', 'worst outside [%]', 'in band [%]');
console.log('|---|---|---|--:|--:|--:|--:|');
const asked = process.argv.slice(2);
let holds = true;
for (const name of asked.length > 0 ? asked : DEMOS) holds = (await tell(name)) && holds;
process.exitCode = holds ? 0 : 1;
