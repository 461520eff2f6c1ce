/** Every command on a cheap demo, as goldens are made of it. */
import { existsSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { readScenario } from '../../sim/scenario/read.ts';
import type { Scenario } from '../../sim/scenario/resolve.ts';
import type { Computer } from '../../sim/sweep/tasks.ts';
import { answerOn } from '../cli/commandLine.ts';
import type { Demo } from '../scenario.ts';
import { cheapText, type GoldenDemo, type Said, UNEVEN } from './cheap.ts';

export interface Call {
  name: string;
  words: readonly string[];
  /** What the scenario says otherwise. */
  said?: Said;
  /** A run off the dyno. */
  run?: string;
}

export interface Answered {
  code: number | null;
  stdout: string;
  stderr: string;
  /** What was written, by name. */
  files: Record<string, string>;
}

/** A run off a dyno that has never stood anywhere; torque [N m]. */
function dynoRun(speeds: readonly number[], torque: readonly number[]): string {
  const rows = speeds.map((speed, i) => `${speed},${torque[i]}`);
  return `# pressure: 990 mbar\n# temperature: 18 degC\n# humidity: 50 %\nspeed_rpm,torque_Nm\n${rows.join('\n')}\n`;
}

interface Particular {
  vary: string[];
  both: string[];
  speeds: number[];
  torque: number[];
  stations: string;
  fit: string;
}

const PARTICULARS: Record<Demo, Particular> = {
  'hill-climb': {
    vary: ['intake.trumpet.diameter=43mm,45mm,47mm'],
    both: ['intake.trumpet.length=90mm,150mm', 'exhaust.primary.length=700mm,820mm'],
    speeds: [5000, 5600, 6200, 6800, 7400, 8000],
    torque: [139.9, 149.4, 167.4, 168.2, 174.6, 157.0],
    stations: 'port,runner:50%',
    fit: 'intake-cam-phase',
  },
  'sprint-single': {
    vary: ['exhaust.primary.length=25in,29in'],
    both: ['engine.compressionRatio=12,13.2', 'intake.throttle.shaftDiameter=6mm,8mm'],
    speeds: [8000, 9000, 10000, 11000, 12000, 13000],
    torque: [18.4, 18.7, 12.7, 16.3, 10.2, 4.7],
    stations: 'mouth,exhaust',
    fit: 'intake-cam-phase',
  },
  'endurance-six': {
    vary: ['intake.runner.length=40mm,55mm,70mm'],
    both: ['intake.trumpet.length=150mm,250mm', 'intake.throttle.angle=60deg,90deg'],
    speeds: [3000, 4000, 5000, 6000, 7000, 8000],
    torque: [275.2, 304, 320, 310.4, 281.6, 256],
    stations: 'mouth,port,exhaust',
    fit: 'exhaust-cam-phase',
  },
  'boosted-four': {
    vary: ['exhaust.tail.length=1.5m,2m'],
    both: ['intake.feed.pressure=0.6 bar gauge,0.7 bar gauge', 'fuel.lambda=0.82,0.9'],
    speeds: [4000, 4600, 5200, 5800, 6400, 7000],
    torque: [239.5, 243.5, 245.9, 236.0, 241.6, 225.3],
    stations: 'trumpet:25%,primary:100%',
    fit: 'intake-cam-phase,exhaust-cam-phase',
  },
};

/** Speeds as a range, between which curves are resolved. */
const RANGES: Partial<Record<Demo, object>> = {
  'hill-climb': { from: '4800 rpm', to: '8400 rpm', step: '600 rpm' },
  'sprint-single': { from: '8500 rpm', to: '13000 rpm' },
};

/** From the foot to one plate, with a spring that is not strong enough alone. */
const PEDAL = {
  length: '8 in',
  arm: '4 in',
  travel: '2.5 in',
  springs: [
    { name: 'pedal spring', kind: 'compression', arm: '1 in', preload: '4 lbf', rate: '3 lbf/in' },
  ],
  cable: { lever: '1.2 in', squareAt: '40 deg', bends: '270 deg', friction: '0.2' },
  shafts: [
    {
      name: 'body',
      plates: 1,
      springs: [
        {
          name: 'coil',
          kind: 'torsion',
          windUp: '10 deg',
          wire: '1.6 mm',
          coil: '14 mm',
          coils: '4',
          material: 'stainless',
        },
        {
          name: 'weak spring',
          kind: 'tension',
          arm: '15 mm',
          preload: '1 N',
          wire: '0.6 mm',
          coil: '8 mm',
          coils: '20',
        },
      ],
    },
  ],
};

/** Two speeds and two angles, and a short lag, so that bars are watched for no longer. */
const SHORT = {
  'pressureBar.speeds': ['4000 rpm'],
  'pressureBar.angles': ['8.5 deg', '90 deg'],
  'pressureBar.mostLag': '8 ms',
};

const joinedCalls: Call[] = [
  { name: 'signal', words: ['signal'], said: SHORT },
  { name: 'idle', words: ['idle'] },
  { name: 'idle-no-bar', words: ['idle'], said: { pressureBar: undefined } },
  { name: 'listen', words: ['listen'] },
];

/** Heights of the outer injector, that of the file among them. */
const HEIGHTS = 'injectors.each.1.fromMouth=-80mm,-40mm,-20mm';

const injectCalls: Call[] = [
  { name: 'inject', words: ['inject'] },
  { name: 'inject-values', words: ['inject', '--vary', HEIGHTS] },
];

/** What `worth` has to say of an engine that has no pedal in its file. */
const SECTIONS = { 'plenum.volume': '2.5 L', 'idle.speed': '1000 rpm' };

/** All that `worth` can have something to say of. */
const EVERYTHING: Said = {
  'idle.speed': '1000 rpm',
  pedal: { ...PEDAL, shafts: PEDAL.shafts.map((shaft) => ({ ...shaft, plates: 4 })) },
  pressureBar: {
    hoseLength: '300 mm',
    hoseBore: '4 mm',
    jetBore: '1.3 mm',
    volume: '20 cm3',
    speeds: ['4000 rpm'],
    angles: ['9 deg', '90 deg'],
  },
  meter: { speeds: ['5000 rpm'], angles: ['30 deg', '90 deg'] },
};

const isUneven = (demo: GoldenDemo): demo is (typeof UNEVEN)[number] =>
  (UNEVEN as readonly string[]).includes(demo);

/** Every command that a demo can answer; of those whose cylinders differ, where that shows. */
export function callsOf(demo: GoldenDemo): Call[] {
  if (isUneven(demo)) return ['check', 'sweep', 'curve'].map((name) => ({ name, words: [name] }));
  if (demo === 'road-four') return joinedCalls;
  const { vary, both, speeds, torque, stations, fit } = PARTICULARS[demo];
  const varied = (keys: string[]) => keys.flatMap((key) => ['--vary', key]);
  const at = { speeds: { at: speeds.map((speed) => `${speed} rpm`) } };
  const measured = { said: at, run: dynoRun(speeds, torque) };
  const resolved = { speeds: RANGES[demo] };
  // What settling leaves in a point cannot be resolved.
  const settled = { ...resolved, 'numerics.settle': '0.002' };
  const sure = {
    uncertainty: { samples: 16, tradeSense: demo === 'endurance-six' ? 'no' : 'yes' },
  };
  return [
    { name: 'check', words: ['check'] },
    { name: 'sweep', words: ['sweep'] },
    { name: 'sweep-torque', words: ['sweep'], said: { 'target.score': 'indicated-torque' } },
    ...(demo in RANGES ? [{ name: 'sweep-resolved', words: ['sweep'], said: resolved }] : []),
    { name: 'vary', words: ['sweep', ...varied(vary)] },
    { name: 'vary-two', words: ['sweep', ...varied(both)] },
    { name: 'doubt', words: ['sweep', '--uncertainty'], said: sure },
    { name: 'curve', words: ['curve'] },
    { name: 'trace', words: ['trace', '--stations', stations] },
    { name: 'compare', words: ['compare'], ...measured },
    { name: 'compare-fit', words: ['compare', '--fit', fit], ...measured },
    ...(demo === 'hill-climb'
      ? [
          { name: 'trims', words: ['trims', '--readings', 'scenarios/hill-climb-lambda.csv'] },
          { name: 'balance', words: ['balance', '--readings', 'scenarios/hill-climb-bodies.csv'] },
          { name: 'spread', words: ['balance', '--spacing', '95mm', '--lever', '22mm'] },
        ]
      : []),
    ...(demo === 'sprint-single'
      ? [
          { name: 'pedal', words: ['pedal'], said: { pedal: PEDAL } },
          { name: 'worth', words: ['worth'], said: { pedal: PEDAL } },
          { name: 'plenum-resolved', words: ['plenum'], said: settled },
          { name: 'airbox-resolved', words: ['airbox'], said: resolved },
          { name: 'response', words: ['response'] },
          { name: 'meter', words: ['meter'] },
        ]
      : []),
    ...(demo === 'boosted-four'
      ? [
          ...['plenum', 'airbox'].map((name) => ({ name, words: [name] })),
          { name: 'worth-all', words: ['worth'], said: EVERYTHING },
        ]
      : []),
    ...(demo === 'hill-climb'
      ? [
          { name: 'load', words: ['load', '--most', '7x7'] },
          { name: 'worth', words: ['worth'], said: SECTIONS },
        ]
      : []),
    ...(demo === 'endurance-six' ? injectCalls : []),
  ];
}

const SCENARIOS = new Map<string, Scenario>();

/** What a text says, read once: whoever knows its points asks for no more than its engine. */
function scenarioOf(text: string): Scenario {
  const scenario = SCENARIOS.get(text) ?? readScenario(text, 'engine.yaml');
  SCENARIOS.set(text, scenario);
  return scenario;
}

/** Runs a call into a folder of its own; `json` asks for the document on stdout and no files. */
export async function answerOf(
  demo: GoldenDemo,
  call: Call,
  workers: (scenario: Scenario) => Computer,
  json = false,
  columns?: number,
): Promise<Answered> {
  const folder = mkdtempSync(join(tmpdir(), 'trumpetry-golden-'));
  const [file, run, out] = ['engine.yaml', 'run.csv', 'out'].map((name) => join(folder, name)) as [
    string,
    string,
    string,
  ];
  const text = cheapText(demo, call.said);
  writeFileSync(file, text);
  if (call.run) writeFileSync(run, call.run);
  const [command, ...rest] = call.words;
  const words = [
    command!,
    file,
    ...rest,
    ...(call.run ? ['--measured', run] : []),
    ...(json ? ['--json'] : command === 'check' ? [] : ['--out', out]),
  ];
  const plain = (said: string) => said.replaceAll(folder, 'FOLDER');
  const answer = await answerOn({ workers: workers(scenarioOf(text)), columns }, ...words);
  const names = existsSync(out) ? readdirSync(out) : [];
  const written = names.filter((name) => !/^points|\.wav$/.test(name));
  return {
    code: answer.code,
    stdout: plain(answer.stdout),
    stderr: plain(answer.stderr),
    files: Object.fromEntries(
      written.map((name) => [name, plain(readFileSync(join(out, name), 'utf8'))]),
    ),
  };
}
