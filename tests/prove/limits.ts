/**
 * What docs/limits.md says in numbers: how far mesh, settling, mouth, losses, friction, heat, rings, cams, bench,
 * fuel and pipes move the answer for the hill-climb four:
 *
 *   node --import tsx tests/prove/limits.ts
 *
 * Each figure must not exceed the bound that the page states.
 */

import { USUAL_FULLNESS } from '../../sim/cylinder/valveLift.ts';
import { withLength } from '../../sim/index.ts';
import { readScenario } from '../../sim/scenario/read.ts';
import type { EngineSpecification } from '../../sim/specification.ts';
import { tunedPeaks } from '../acoustics/tunedSpeed.ts';
import { demoText } from '../toy.ts';
import { hillClimb } from './cases/engine.ts';
import { NO_RADIATION, noJet, PLAIN } from './mouthEdits.ts';
import { type Curve, patchedCurve } from './patchedSolver.ts';

const LENGTHS = [0.09, 0.2];
const SPEEDS = Array.from({ length: 11 }, (_, i) => 5000 + 300 * i);

type Change = (spec: EngineSpecification) => void;

const asItIs = await patchedCurve();

function curve(length: number, change: Change = () => {}, solve = asItIs): number[] {
  const spec = withLength(hillClimb(), length);
  change(spec);
  const values = solve(spec, SPEEDS);
  if (values.some(Number.isNaN)) throw new Error('a point failed');
  return values;
}

/** Fuel of a port injector, sprayed in front of the valve. */
const INJECTORS = `
injectors:
  each:
    - { name: port, fromValve: 90 mm, offset: 18 mm, tilt: 20 deg, cone: 18 deg, flow: 400 cc/min,
        pressure: 3 bar, dropSize: 110 um, end: 30 deg BTDC, deadTime: 0.9 ms }
`;

const mean = (values: number[]) => values.reduce((sum, x) => sum + x, 0) / values.length;

interface Effect {
  what: string;
  /** The page's bounds: at any speed and on the mean [%], on the difference of the lengths [%]. */
  bounds: readonly [anySpeed: number, mean: number, gain: number];
  change?: Change;
  /** What computes it, where it is no matter of the engine's data. */
  solve?: Curve;
}

const EFFECTS: Effect[] = [
  {
    what: 'cells halved',
    bounds: [0.3, 0.1, 0.1],
    change: ({ numerics }) => {
      numerics.intakeCell /= 2;
      numerics.exhaustCell /= 2;
    },
  },
  {
    what: 'settled to 1e-5 instead of 1e-3',
    bounds: [0.2, 0.1, 0.1],
    change: ({ numerics }) => {
      numerics.settle = 1e-5;
      numerics.maximumCycles = 100;
    },
  },
  {
    what: 'end correction larger by 0.1 radii of the rim',
    bounds: [1, 0.2, 0.1],
    change: ({ intake }) => {
      intake.trumpet.bellmouth.endCorrection += 0.1;
    },
  },
  {
    what: 'entry loss 1.7 times',
    bounds: [0.4, 0.2, 0.2],
    change: ({ intake }) => {
      intake.trumpet.bellmouth.entryLoss *= 1.7;
    },
  },
  {
    what: 'walls of intake twenty times rougher',
    bounds: [0.5, 0.3, 0.1],
    change: ({ intake }) => {
      for (const pipe of [intake.trumpet, intake.runner, intake.port]) pipe.roughness *= 20;
    },
  },
  {
    what: 'port walls 25 K hotter',
    bounds: [0.9, 0.6, 0.1],
    change: ({ intake }) => {
      intake.port.wallTemperature += 25;
    },
  },
  {
    what: 'burn 3 deg later and 4 deg longer',
    bounds: [1, 0.3, 0.1],
    change: ({ combustion }) => {
      combustion.burn50 += 3;
      combustion.burnDuration += 4;
    },
  },
  {
    what: 'cylinder walls 40 K hotter',
    bounds: [2, 1.5, 0.3],
    change: ({ cylinder }) => {
      cylinder.wallTemperature += 40;
    },
  },
  {
    what: 'no crevices, no blow-by',
    bounds: [0.5, 0.2, 0.1],
    change: ({ cylinder }) => {
      cylinder.crevice = 0;
      cylinder.blowBy = 0;
    },
  },
  {
    what: 'heat of all pipes 30 % more',
    bounds: [1.5, 0.4, 0.1],
    change: (spec) => {
      spec.pipeHeat *= 1.3;
    },
  },
  {
    what: 'intake closes 4 deg later',
    bounds: [3.5, 1.7, 0.4],
    change: ({ intake }) => {
      const { lift } = intake.valve;
      if (lift.kind === 'timing') lift.close += 4;
    },
  },
  {
    what: 'intake flow bench 6 % less',
    bounds: [1.9, 1.1, 0.6],
    change: ({ intake }) => {
      const { flow } = intake.valve;
      if (flow.kind === 'bench') flow.flow = flow.flow.map((one) => 0.94 * one);
    },
  },
  {
    what: 'primaries 80 mm longer',
    bounds: [7.5, 1.1, 0.5],
    change: ({ exhaust }) => {
      exhaust.primary.length += 0.08;
    },
  },
  {
    what: 'tail 0.3 m in place of 1.4 m',
    bounds: [3.6, 0.3, 0.2],
    change: ({ exhaust }) => {
      exhaust.tail!.length = 0.3;
    },
  },
  {
    what: 'each primary open at its end, no silencer',
    bounds: [12.5, 2.4, 1],
    change: ({ exhaust }) => {
      exhaust.joined = 1;
      exhaust.silencerLoss = 0;
      delete exhaust.tail;
    },
  },
  {
    what: 'lift of all valves fuller by 0.04',
    bounds: [2.2, 0.8, 0.3],
    change: ({ intake, exhaust }) => {
      for (const { valve } of [intake, exhaust]) {
        if (valve.lift.kind === 'timing') valve.lift.fullness = USUAL_FULLNESS + 0.04;
      }
    },
  },
  {
    what: 'fuel sprayed into the port',
    bounds: [3.1, 0.7, 1.4],
    change: (spec) => {
      const { injectors } = readScenario(demoText('hill-climb') + INJECTORS, 'fuelled.yaml');
      spec.injectors = injectors!;
    },
  },
  {
    what: 'flare: plane waves and a plain end at its rim',
    bounds: [2.3, 0.3, 0.1],
    change: ({ intake }) => {
      intake.trumpet.bellmouth.endCorrection = PLAIN;
    },
  },
  {
    what: 'jet slowed to the rim without loss',
    bounds: [4.1, 0.8, 0.4],
    solve: await patchedCurve(noJet(hillClimb())),
  },
  {
    what: 'mouth that does not radiate',
    bounds: [0.3, 0.1, 0.1],
    solve: await patchedCurve(NO_RADIATION),
  },
];

const base = LENGTHS.map((length) => curve(length));
const gainOf = (curves: number[][]) => 100 * (mean(curves[1]!) / mean(curves[0]!) - 1);
console.log(
  `hill-climb four, ${SPEEDS[0]} to ${SPEEDS.at(-1)} rpm: gain of 200 mm over 90 mm ${gainOf(base).toFixed(2)} %`,
);
let missed = 0;
for (const { what, bounds, change, solve } of EFFECTS) {
  const changed = LENGTHS.map((length) => curve(length, change, solve));
  const off = changed.flatMap((values, i) =>
    values.map((value, j) => 100 * (value / base[i]![j]! - 1)),
  );
  const means = changed.map((values, i) => 100 * (mean(values) / mean(base[i]!) - 1));
  const found = [
    Math.max(...off.map(Math.abs)),
    Math.max(...means.map(Math.abs)),
    Math.abs(gainOf(changed) - gainOf(base)),
  ];
  const shift = LENGTHS.map((_, i) => {
    const [before, after] = [base[i]!, changed[i]!].map((v) => tunedPeaks(SPEEDS, v)[0]?.speed);
    return before && after ? 100 * (after / before - 1) : Number.NaN;
  });
  const holds = found.every((x, i) => x <= bounds[i]!);
  if (!holds) missed++;
  console.log(
    what.padEnd(46),
    `any speed ${found[0]!.toFixed(2)} %, mean ${found[1]!.toFixed(2)} %, gain ${found[2]!.toFixed(2)} points,`,
    `peak ${shift.map((x) => x.toFixed(2)).join(' and ')} %`,
    holds ? '' : 'BEYOND THE PAGE',
  );
}
process.exitCode = missed === 0 ? 0 : 1;
