/**
 * What docs/limits.md says of the exhaust's end: how much the length of the tail moves volumetric
 * efficiency with the silencer's loss at the end, spread over the tail, or left out.
 *
 *   node --import tsx tests/prove/silencer.ts
 */
import type { EngineModel } from '../../sim/engine/plan.ts';
import { type PointResult, runPoint, runSpeeds } from '../../sim/engine/point.ts';
import type { EngineSpecification } from '../../sim/specification.ts';
import { demo } from '../scenario.ts';

const TAILS = [0.3, 0.7, 1.4, 3];
const SPEEDS = [3000, 3500, 4000, 4500, 5000, 5500, 6000, 6500, 7000, 7500, 8000];

function points(engine: EngineSpecification): PointResult[] {
  return runSpeeds(engine, SPEEDS).map((point) => {
    if (point instanceof Error) throw point;
    return point;
  });
}

/** The engine with a tail of that length [m] and heads lost at its end and along it. */
function fitted(
  { exhaust, ...engine }: EngineSpecification,
  length: number,
  silencerLoss: number,
  bendLoss: number,
): EngineSpecification {
  return {
    ...engine,
    exhaust: { ...exhaust, silencerLoss, tail: { ...exhaust.tail!, length, bendLoss } },
  };
}

for (const name of ['hill-climb', 'endurance-six'] as const) {
  const { engine } = demo(name);
  const heads = engine.exhaust.silencerLoss;
  console.log(`\n${name}: VE moved by tails of ${TAILS.join(', ')} m, greatest over least\n`);
  console.log(`| loss of ${heads} heads | ${SPEEDS.map((speed) => `${speed}`).join(' | ')} |`);
  console.log(`|---|${SPEEDS.map(() => '--:').join('|')}|`);
  for (const [where, end, along] of [
    ['left out', 0, 0],
    ['at the end', heads, 0],
    ['along the tail', 0, heads],
  ] as const) {
    const all = TAILS.map((length) => points(fitted(engine, length, end, along)));
    const moved = SPEEDS.map((_, j) => {
      const fills = all.map((row) => row[j]!.volumetricEfficiency);
      return `${(100 * (Math.max(...fills) / Math.min(...fills) - 1)).toFixed(1)} %`;
    });
    console.log(`| ${where} | ${moved.join(' | ')} |`);
  }
  const residual = points(fitted(engine, 1.4, 0, 0)).map((one) => 100 * one.residualFraction);
  console.log(
    `| residual gas, loss left out | ${residual.map((x) => `${x.toFixed(1)} %`).join(' | ')} |`,
  );
}

/** Mach number at the end of the tail: mean, least and greatest over a cycle. */
function machNumbers(engine: EngineSpecification, speed: number): string {
  const seen: number[] = [];
  const onStop = ({ network }: EngineModel) => {
    const { mesh, prim, cells } = network.ducts.find(({ name }) => name === 'tail')!;
    const last = mesh.cells - 1;
    const sound = Math.sqrt((prim.gamma.at(last) * prim.p.at(last)) / cells.rho.at(last));
    seen.push(prim.u.at(last) / sound);
  };
  runPoint(engine, speed, { stride: 1, onStop });
  const mean = seen.reduce((a, b) => a + b, 0) / seen.length;
  return [mean, Math.min(...seen), Math.max(...seen)].map((mach) => mach.toFixed(2)).join(', ');
}

console.log('\nhill-climb, Mach number at the end of the tail: mean, least, greatest');
for (const speed of [3000, 5000, 7000])
  console.log(`  ${speed} rpm: ${machNumbers(demo('hill-climb').engine, speed)}`);
