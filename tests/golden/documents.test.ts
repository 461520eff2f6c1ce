/**
 * Goldens of everything that is printed and written, from points that do not change with the solver.
 * A difference is a change of what a reader sees: look at it, then renew with `npx vitest run
 * tests/golden -u`.
 */
import { describe, expect, test } from 'vitest';
import type { Computer } from '../../sim/sweep/tasks.ts';
import { answerFrom, fileOf } from '../cli/commandLine.ts';
import type { Demo } from '../scenario.ts';
import { type Answered, answerOf, type Call, callsOf } from './calls.ts';
import { cheapText, DEMOS, JOINED, UNEVEN } from './cheap.ts';
import { computerOf } from './computer.ts';
import { knownWorkers, readPoints } from './points.ts';
import { readableHtml, readableJson } from './readable.ts';

/** A golden is an answer: a fault of the program, put there by renewing without its points, is none. */
const FAULT = /fault of the program|no point /;

const golden = (path: string, text: string) => {
  expect(text).not.toMatch(FAULT);
  return expect(text).toMatchFileSnapshot(`./${path}`);
};

/** Tables beside the first of a command, and what tells their goldens apart. */
const ROLES: Record<string, string> = {
  'sweep uncertainty.csv': '-bands',
  'inject inject-values.csv': '-points',
  'pedal pedal-closing.csv': '-closing',
  'pedal pedal-springs.csv': '-springs',
  'trims trims-cylinders.csv': '-cylinders',
  'trims trims-loads.csv': '-loads',
  'balance balance-bodies.csv': '-bodies',
  'balance balance-faults.csv': '-faults',
  'balance balance-loads.csv': '-loads',
  'balance balance-readings.csv': '-readings',
  'curve curve-cylinders.csv': '-cylinders',
  'signal signal-bars.csv': '-bars',
  'signal signal-cycle.csv': '-cycle',
  'idle idle-computed.csv': '-computed',
  'idle idle-spark.csv': '-spark',
  'idle idle-valve.csv': '-valve',
  'listen listen-orders.csv': '-orders',
  'plenum plenum-part.csv': '-part',
  'airbox airbox-lengths.csv': '-lengths',
  'airbox airbox-cylinders.csv': '-cylinders',
  'response response-charges.csv': '-charges',
  'response response-cylinders.csv': '-cylinders',
  'response response-fuelled.csv': '-fuelled',
  'meter meter-signals.csv': '-signals',
  'load load-filling.csv': '-filling',
  'load load-air.csv': '-air',
  'load load-correction.csv': '-correction',
};

/** How a command ended and what it said. */
const spoken = ({ code, stdout, stderr }: Answered) =>
  `${stdout}\n--- exit code ${code}, beside it:\n${stderr}`;

function readable(name: string, text: string): string {
  if (name.endsWith('.json')) return readableJson(text);
  return name.endsWith('.html') ? readableHtml(text) : text;
}

describe.each([...DEMOS, ...UNEVEN, ...JOINED])('%s', (demo) => {
  const points = readPoints(demo);
  test.each(callsOf(demo))('$name', async (call) => {
    const answer = await answerOf(demo, call, (scenario) => knownWorkers(scenario, points));
    await golden(`${demo}/${call.name}.txt`, spoken(answer));
    for (const [name, text] of Object.entries(answer.files)) {
      const ending = name.slice(name.indexOf('.'));
      const role = ROLES[`${call.words[0]} ${name}`] ?? '';
      await golden(`${demo}/${call.name}${role}${ending}`, readable(name, text));
    }
    if (call.name === 'doubt') return; // as sweep, but dear
    const asked = await answerOf(demo, call, (scenario) => knownWorkers(scenario, points), true);
    const file = Object.entries(answer.files).find(([name]) => name.endsWith('.json'));
    if (file) expect(asked.stdout).toBe(file[1]);
    else await golden(`${demo}/${call.name}.json`, readable('.json', asked.stdout));
    expect(asked.code).toBe(answer.code);
  });
});

/** Points of a demo, one of them failed and one restless. */
function faultyWorkers(demo: Demo): Parameters<typeof answerOf>[2] {
  return (scenario) => {
    const known = knownWorkers(scenario, readPoints(demo));
    const failure = 'non-physical state in "runner", cell 4 of 9, 12.5 deg: pressure -3 Pa';
    const run: Computer['run'] = async (job) => {
      const [length, outcome] = [job.engine.intake.trumpet.length, await known.run(job)];
      if (length === 0.12 && job.speed === 4800) return { speed: job.speed, failure };
      return length === 0.09 && job.speed === 8200 ? { ...outcome, settled: false } : outcome;
    };
    return computerOf(run, async ({ speed }) => ({ speed, failure }));
  };
}

describe('what goes wrong', () => {
  const wrong: Call[] = [
    { name: 'sweep-faulty', words: ['sweep'] },
    { name: 'curve-restless', words: ['curve'] },
    { name: 'curve-failed', words: ['curve', '--length', '120mm'] },
    { name: 'trace-failed', words: ['trace'] },
    { name: 'inject-without', words: ['inject'] },
    { name: 'length-too-short', words: ['curve', '--length', '5 mm'] },
    { name: 'no-such-option', words: ['curve', '--lenght', '5 mm'] },
    { name: 'vary-inert', words: ['sweep', '--vary', 'target.from=5000 rpm,5200 rpm'] },
  ];
  test.each(wrong)('$name', async (call) => {
    const answer = await answerOf('hill-climb', call, faultyWorkers('hill-climb'));
    await golden(`wrong/${call.name}.txt`, spoken(answer));
    for (const [name, text] of Object.entries(answer.files)) {
      await golden(`wrong/${call.name}${name.slice(name.indexOf('.'))}`, readable(name, text));
    }
    const { code, stdout } = await answerOf('hill-climb', call, faultyWorkers('hill-climb'), true);
    if (stdout.includes('trumpetry-error')) {
      await golden(`wrong/${call.name}.json`, readable('.json', stdout));
    }
    expect(code).toBe(answer.code);
  });

  const refuse = () => Promise.reject(new Error('nothing is computed of a wrong file'));
  const none = computerOf(refuse, refuse);
  test.each([
    ['scenario', { 'engine.bore': '86 mmm', 'engine.strokes': 4, 'intake.trumpet.length': '9 m' }],
    ['either-or', { 'exhaust.primary.diameterAirEnd': '41 mm', 'target.bands': [] }],
  ])('%s', async (name, said) => {
    const file = fileOf(cheapText('hill-climb', said));
    for (const [ending, words] of [
      ['txt', ['check', file]],
      ['json', ['check', file, '--json']],
    ] as const) {
      const { code, stdout, stderr } = await answerFrom(none, ...words);
      const plain = (text: string) => text.replaceAll(file, 'engine.yaml');
      const answer = { code, stdout: plain(stdout), stderr: plain(stderr), files: {} };
      const text = ending === 'json' ? readableJson(answer.stdout) : spoken(answer);
      await golden(`wrong/${name}.${ending}`, text);
    }
  });
});
