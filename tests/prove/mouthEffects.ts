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
 * How they are held against each other: oneEffect.ts.
 */
import type { EngineSpecification } from '../../sim/specification.ts';
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

effectsHead('mouth');
const asked = process.argv.slice(2);
const stands = await patchedCurve();
let holds = true;
for (const name of asked.length > 0 ? asked : DEMOS) {
  const ways = await waysOf(questionOf(name).engine, stands);
  holds = tellEffects(name, stands, ways) && holds;
}
process.exitCode = holds ? 0 : 1;
