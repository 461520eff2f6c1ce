/**
 * What crevices and blow-by move on six demos: filling and indicated efficiency in the mean over the file's speeds
 * in the band, with the length fitted now; then best length, gain and worst losses. Slow (minutes):
 *
 *   node --import tsx tests/prove/crevices.ts [demo ...]
 *
 * How lengths are held against each other: oneEffect.ts.
 */
import { runSpeeds } from '../../sim/engine/point.ts';
import type { EngineSpecification } from '../../sim/specification.ts';
import { indicatedEfficiency, withoutRings } from './cases/crevices.ts';
import { effectsHead, questionOf, row, tellEffects } from './oneEffect.ts';
import { type Curve, patchedCurve } from './patchedSolver.ts';

const DEMOS = [
  'hill-climb',
  'sprint-single',
  'endurance-six',
  'boosted-four',
  'cross-plane-eight',
  'uneven-twin',
];

/** Bounds of docs/limits.md: on the move of the mean filling [%], of the gain, and of the efficiency [points]. */
const FILLING = 0.5;
const GAIN = 0.4;
const EFFICIENCY = { least: 1.1, most: 2 };

const stands = await patchedCurve();
const ringless: Curve = (engine, speeds) => stands(withoutRings(engine), speeds);

/** Mean filling and indicated efficiency [-]. */
function means(engine: EngineSpecification, speeds: readonly number[]): [number, number] {
  const points = runSpeeds(engine, speeds);
  let [filling, efficiency] = [0, 0];
  for (const point of points) {
    if (point instanceof Error) throw point;
    filling += point.volumetricEfficiency / points.length;
    efficiency += indicatedEfficiency(engine, point) / points.length;
  }
  return [filling, efficiency];
}

function tellCylinder(name: string): boolean {
  const { engine, speeds, target } = questionOf(name);
  const inBand = speeds.filter((speed) => speed >= target.from && speed <= target.to);
  const [filling, efficiency] = means(engine, inBand);
  const [emptier, better] = means(withoutRings(engine), inBand);
  const points = 100 * (better - efficiency);
  const percent = (value: number) => (100 * value).toFixed(2);
  row(name, ...[emptier, filling, better, efficiency].map(percent), points.toFixed(2));
  const moved = 100 * Math.abs(filling / emptier - 1);
  return moved <= FILLING && points >= EFFICIENCY.least && points <= EFFICIENCY.most;
}

const asked = process.argv.slice(2);
const names = asked.length > 0 ? asked : DEMOS;
row('demo', 'filling without', 'with [%]', 'efficiency without', 'with [%]', 'falls [points]');
console.log('|---|--:|--:|--:|--:|--:|');
const cylinders = names.map(tellCylinder).every(Boolean);
effectsHead('cylinder');
const way = { what: 'crevices and blow-by', curve: ringless, bound: GAIN };
const lengths = names.map((name) => tellEffects(name, stands, [way])).every(Boolean);
const holds = cylinders && lengths;
console.log(holds ? 'holds' : 'BEYOND THE PAGE');
process.exitCode = holds ? 0 : 1;
