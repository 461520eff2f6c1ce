/** Prints the figures of docs/measured-engines.md: npx tsx tests/measured/note.ts */
import { latinHypercube } from '../../sim/decision/latinHypercube.ts';
import { quantile } from '../../sim/decision/sampleFigures.ts';
import { doubtfulEngines, doubtfulInputs } from '../../sim/scenario/doubt.ts';
import {
  AROUND,
  engelmanConstant,
  engineOf,
  points,
  ram,
  scenarioText,
  tunedSpeed,
  withPipe,
} from './published.ts';

const SAMPLES = 10;
const FILE = 'plain-pipe-500';
const engine = engineOf(FILE);
const inputs = doubtfulInputs(scenarioText(FILE), FILE, false).length;
const samples = doubtfulEngines(
  scenarioText(FILE),
  FILE,
  latinHypercube(inputs, SAMPLES, 1),
  false,
).map((sample) => sample.engine);

console.log(
  '| pipe, mouth to valve | rule, K 2.1 | computed | 5 to 95 % | error | implied K | ram |',
);
console.log('|---|---|---|---|---|---|---|');
for (const [inches, speeds] of Object.entries(AROUND)) {
  const length = Number(inches);
  const computed = tunedSpeed(engine, length, speeds);
  const rule = (engelmanConstant(engine, length, 1) / 2.1) as number;
  const top = Math.max(...ram(engine, length, speeds));
  const band = samples.map((one) => tunedSpeed(one, length, speeds));
  const [low, high] = [0.05, 0.95].map((p) => quantile(band, p).value);
  const percent = 100 * (computed / rule - 1);
  console.log(
    `| ${length} in | ${rule.toFixed(0)} rpm | ${computed.toFixed(0)} rpm | ${low!.toFixed(0)} to ${high!.toFixed(0)} rpm | ${percent.toFixed(1)} % | ${engelmanConstant(engine, length, computed).toFixed(2)} | ${top.toFixed(3)} |`,
  );
}

const big = engineOf('five-by-seven');
const speeds = [600, 900, 1200, 1500, 1800];
console.log('\n| pipe, mouth to valve | pressure at closing over that without, 600 to 1800 rpm |');
console.log('|---|---|');
for (const inches of [29, 53, 101, 197]) {
  console.log(
    `| ${inches} in | ${ram(big, inches, speeds)
      .map((x) => x.toFixed(3))
      .join(', ')} |`,
  );
}
const short = tunedSpeed(big, 53.4, [1000, 1200, 1400, 1600, 1800, 2000]);
const long = tunedSpeed(big, 101.4, [700, 900, 1100, 1300, 1500]);
console.log(
  `\ntuned: ${short.toFixed(0)} rpm at 53.4 in, ${long.toFixed(0)} rpm at 101.4 in; exponent ${(Math.log(long / short) / Math.log(101.4 / 53.4)).toFixed(3)}`,
);
const settled = points(withPipe(engine, 13), AROUND[13]!).every((one) => one.settled);
console.log(`points at 13 in all settled: ${settled}`);
