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
 * How they are held against each other: oneEffect.ts. `dip` alone prints the filling of the hill-climb four with
 * 100 mm at 5000 rpm, where its curve dips, each effect taken away; cells of the file.
 */
import type { EngineSpecification } from '../../sim/specification.ts';
import { withLength } from '../../sim/sweep/sweep.ts';
import { readDemo } from '../toy.ts';
import { NO_RADIATION, noJet, withPlainRim } from './mouthEdits.ts';
import { effectsHead, questionOf, tellEffects, type Way } from './oneEffect.ts';
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

async function waysOf(engine: EngineSpecification, stands: Curve): Promise<Way[]> {
  const flareless: Curve = (one, speeds) => stands(withPlainRim(one), speeds);
  return [
    { what: 'flare', curve: flareless, bound: 0.6 },
    { what: 'jet', curve: await patchedCurve(noJet(engine)), bound: 0.8 },
    { what: 'radiation', curve: await patchedCurve(NO_RADIATION), bound: 0.2 },
  ];
}

/** Length [m] and speed [rpm] of a dip of the hill-climb four. */
const DIP = { length: 0.1, speed: 5000 };

async function tellDip(stands: Curve): Promise<void> {
  const engine = withLength(readDemo('hill-climb').engine, DIP.length);
  const filling = (curve: Curve) => curve(engine, [DIP.speed])[0]!.toFixed(3);
  console.log(`dip at ${DIP.speed} rpm: as it stands ${filling(stands)}`);
  for (const { what, curve } of await waysOf(engine, stands))
    console.log(`  without ${what} ${filling(curve)}`);
}

async function tellAll(names: readonly string[], stands: Curve): Promise<boolean> {
  effectsHead('mouth');
  let holds = true;
  for (const name of names) {
    const ways = await waysOf(questionOf(name).engine, stands);
    holds = tellEffects(name, stands, ways) && holds;
  }
  return holds;
}

const asked = process.argv.slice(2);
const curve = await patchedCurve();
if (asked[0] === 'dip') await tellDip(curve);
else process.exitCode = (await tellAll(asked.length > 0 ? asked : DEMOS, curve)) ? 0 : 1;
