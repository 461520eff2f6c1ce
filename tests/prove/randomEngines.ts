/**
 * Random valid engines in the usual range on a fast mesh: none may fail, hang or give no number, and few not
 * settle. `node --import tsx tests/prove/randomEngines.ts COUNT SEED`; 100 take some 20 s.
 */
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { stringify } from 'yaml';
import { runSpeeds } from '../../sim/engine/point.ts';
import { ScenarioError } from '../../sim/errors.ts';
import { readScenario } from '../../sim/scenario/read.ts';
import type { Scenario } from '../../sim/scenario/resolve.ts';

const [COUNT = 100, SEED = 1] = process.argv.slice(2).map(Number);
const SPEEDS = 4;

type Draw = (low: number, high: number) => number;

function drawOf(seed: number): Draw {
  const generator = xoroshiro128plus(seed);
  return (low, high) => low + ((high - low) * uniformInt(generator, 0, 1e6)) / 1e6;
}

const mm = (value: number) => `${value.toFixed(2)} mm`;

/** Valves of one side, by their share of the bore. */
function valves(u: Draw, bore: number, share: number, open: string, close: string) {
  const count = Math.floor(u(1, 2.999));
  const head = bore * share * (count === 1 ? 1.28 : 1) * u(0.93, 1.07);
  const lift = { open, close, checkLift: '1 mm', maximum: mm(head * u(0.24, 0.34)) };
  return { count, headDiameter: mm(head), lift };
}

/** An engine as a file would say it, proportions as engines have them. */
function engineText(u: Draw): string {
  const cylinders = Math.floor(u(1, 8.999));
  const bore = u(50, 110);
  const stroke = bore * u(0.6, 1.15);
  const top = Math.min((u(15, 24) * 3e4) / stroke, 18_000);
  const throttle = bore * u(0.42, 0.58);
  const pipe = bore * u(0.36, 0.5);
  const joined = [1, 2, 3, 4].filter((one) => cylinders % one === 0);
  const meet = joined[Math.floor(u(0, joined.length - 1e-6))]!;
  const low = top * u(0.25, 0.4);
  return stringify({
    title: 'an engine drawn by chance',
    ambient: {
      pressure: `${u(850, 1030).toFixed(0)} mbar`,
      temperature: `${u(-5, 38).toFixed(1)} degC`,
    },
    engine: {
      ...{ cylinders, bore: mm(bore), stroke: mm(stroke), rod: mm(stroke * u(1.5, 2.1)) },
      compressionRatio: u(8.5, 14).toFixed(2),
    },
    intake: {
      trumpet: {
        length: mm(u(35, 350)),
        diameter: mm(throttle * u(1, 1.1)),
        bellmouth: { radius: mm(u(5, 16)) },
      },
      throttle: {
        bore: mm(throttle),
        length: mm(u(35, 80)),
        angle: `${(u(0, 1) < 0.7 ? 90 : u(15, 90)).toFixed(1)} deg`,
      },
      port: {
        length: mm(u(60, 160)),
        diameterAirEnd: mm(throttle),
        diameterValveEnd: mm(throttle * u(0.85, 1)),
      },
      valves: valves(
        u,
        bore,
        0.38,
        `${u(2, 40).toFixed(0)} deg BTDC`,
        `${u(30, 75).toFixed(0)} deg ABDC`,
      ),
    },
    exhaust: {
      valves: valves(
        u,
        bore,
        0.33,
        `${u(35, 75).toFixed(0)} deg BBDC`,
        `${u(5, 38).toFixed(0)} deg ATDC`,
      ),
      port: { length: mm(u(40, 110)), diameter: mm(pipe) },
      primary: { length: mm(u(250, 1000)), diameter: mm(pipe * u(1, 1.1)) },
      ...(meet > 1 && { joined: meet }),
      tail: { length: mm(u(300, 2000)), diameter: mm(pipe * u(1.1, 1.8)) },
      silencerLoss: u(0, 8).toFixed(2),
    },
    fuel: { name: 'petrol', lambda: u(0.82, 1.02).toFixed(3) },
    speeds: {
      at: Array.from(
        { length: SPEEDS },
        (_, i) => `${(low + ((top - low) * i) / (SPEEDS - 1)).toFixed(0)} rpm`,
      ),
    },
    sweep: { lengths: { from: '60 mm', to: '100 mm', step: '20 mm' } },
    target: { from: `${low.toFixed(0)} rpm`, to: `${top.toFixed(0)} rpm` },
    numerics: { intakeCell: '20 mm', exhaustCell: '40 mm' },
  });
}

const tally = {
  engines: 0,
  refused: 0,
  unusual: 0,
  points: 0,
  failed: 0,
  careful: 0,
  unsettled: 0,
  odd: 0,
  slowest: 0,
};

for (let seed = SEED; tally.engines < COUNT; seed++) {
  const scenario = readDrawn(engineText(drawOf(seed)));
  if (scenario) count(seed, scenario);
}
console.log(JSON.stringify(tally));
process.exitCode = tally.failed + tally.odd > 0 || tally.unsettled > 0.01 * tally.points ? 1 : 0;

/** The scenario; undefined where the draw broke a rule or lies outside the usual range. */
function readDrawn(text: string): Scenario | undefined {
  try {
    const scenario = readScenario(text, 'drawn.yaml');
    if (scenario.warnings.length === 0) return scenario;
    tally.unusual++;
  } catch (error) {
    if (!(error instanceof ScenarioError)) throw error;
    tally.refused++;
  }
  return undefined;
}

function count(seed: number, { engine, speeds }: Scenario): void {
  const start = performance.now();
  const outcomes = runSpeeds(engine, speeds);
  tally.slowest = Math.max(tally.slowest, Math.round(performance.now() - start));
  tally.engines++;
  tally.points += outcomes.length;
  outcomes.forEach((outcome, i) => {
    const where = `seed ${seed} at ${speeds[i]} rpm`;
    if (outcome instanceof Error) {
      tally.failed++;
      console.log(`failed: ${where}: ${outcome.message}`);
      return;
    }
    if (outcome.careful) tally.careful++;
    if (!outcome.settled) {
      tally.unsettled++;
      console.log(`not settled: ${where}`);
    }
    const figures = [
      outcome.volumetricEfficiency,
      outcome.indicatedTorque,
      outcome.audit.massError,
    ];
    if (!figures.every(Number.isFinite) || outcome.audit.massError > 1e-8) {
      tally.odd++;
      console.log(`odd: ${where}: ${figures}`);
    }
  });
}
