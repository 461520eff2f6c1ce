/** What the disk can do wrong: plain words, the right exit code, nothing lost. */
import { type SpawnSyncOptions, spawnSync } from 'node:child_process';
import {
  chmodSync,
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  openSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { hostname, tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { readStore } from '../../sim/sweep/store.ts';
import { answerFrom, fileOf } from '../cli/commandLine.ts';
import { chanceWorkers } from '../golden/chance.ts';
import { cheapText } from '../golden/cheap.ts';
import { linesOf } from './lines.ts';
import { bundledProgram } from './program.ts';

/** No figure matters here; points by chance cost nothing. */
const sweep = (out: string, ...words: string[]) =>
  answerFrom(chanceWorkers, 'sweep', file, '--out', out, ...words);

const NAME = 'hill-climb.yaml';
const file = fileOf(cheapText('hill-climb'), NAME);
const read = (path: string) => readFileSync(path, 'utf8');
const RESULTS = ['sweep.json', 'sweep.csv', 'report.html'];

let out = '';
beforeEach(() => {
  out = mkdtempSync(join(tmpdir(), 'trumpetry-storage-'));
});

const store = () => join(out, 'points.jsonl');

function expectPlain(answer: { code: number | null; stderr: string }, code: number, words: string) {
  expect(answer.stderr).toContain(words);
  expect(answer.stderr).not.toMatch(/\n {4}at |fault of the program/);
  expect(answer.code).toBe(code);
}

describe('a damaged store', () => {
  it('says how many lines, computes them again and ends alike', async () => {
    await sweep(out);
    const results = RESULTS.map((name) => read(join(out, name)));
    const lines = read(store()).split('\n');
    lines[2] = lines[2]!.replace(/"volumetricEfficiency":\d/, '"volumetricEfficiency":9');
    lines[4] = lines[4]!.slice(0, 40);
    lines[6] = lines[6]!.replace(/"key":"./, '"key":"x');
    writeFileSync(store(), lines.join('\n'));
    const again = await sweep(out, '--resume');
    expectPlain(again, 0, `${store()}: 3 lines unreadable, to be computed again`);
    expect(RESULTS.map((name) => read(join(out, name)))).toEqual(results);
    expect((await sweep(out, '--resume')).code).toBe(0);
  });
});

describe('a folder that holds something else', () => {
  it('another scenario: nothing is touched', async () => {
    await sweep(out);
    const before = readdirSync(out).map((name) => [name, read(join(out, name))]);
    const other = fileOf(cheapText('sprint-single'), 'sprint-single.yaml');
    for (const more of [[], ['--resume'], ['--shard', '1/2']]) {
      const words = ['sweep', other, '--out', out, ...more];
      const answer = await answerFrom(chanceWorkers, ...words);
      expectPlain(answer, 2, `another scenario, ${NAME} ("Hill-climb four`);
      expect(readdirSync(out).map((name) => [name, read(join(out, name))])).toEqual(before);
    }
  });

  it('the same scenario, begun anew: the old points stay under another name', async () => {
    await sweep(out);
    const before = read(store());
    expect((await sweep(out)).code).toBe(0);
    expect(read(join(out, 'points.earlier.jsonl'))).toBe(before);
    expect(read(store()).split('\n').sort()).toEqual(before.split('\n').sort());
  });

  it('a folder named like the store', async () => {
    mkdirSync(store());
    expectPlain(await sweep(out), 2, `${store()}: there is a folder of that name, not a file`);
    expectPlain(await sweep(out, '--resume'), 2, 'there is a folder of that name');
    expect(readdirSync(out)).toEqual(['points.jsonl']);
  });

  it('a device in its place is not read, for it has no end', async () => {
    symlinkSync('/dev/full', store());
    expectPlain(await sweep(out, '--resume'), 2, `${store()}: no plain file`);
  });

  it('a folder named like a result: computed points are kept', async () => {
    mkdirSync(join(out, 'sweep.csv', 'x'), { recursive: true });
    expectPlain(await sweep(out), 1, `${join(out, 'sweep.csv')} could not be written: there is a`);
    rmSync(join(out, 'sweep.csv'), { recursive: true });
    const nobody = {
      run: () => Promise.reject(new Error('all is there')),
      task: () => Promise.reject(new Error('all is there')),
    };
    const words = ['sweep', file, '--out', out, '--resume'];
    expect((await answerFrom(nobody, ...words)).code).toBe(0);
  });
});

describe('a full disk', () => {
  it('while results are written: the old ones stay, no piece is left', async () => {
    await sweep(out);
    const old = read(join(out, 'sweep.json'));
    rmSync(join(out, 'sweep.csv'));
    symlinkSync('/dev/full', join(out, 'sweep.csv'));
    const answer = await sweep(out, '--resume');
    expectPlain(answer, 1, `${join(out, 'sweep.csv')} could not be written: the disk is full`);
    expect(read(join(out, 'sweep.json'))).toBe(old);
    expect(readdirSync(out).filter((name) => /part|lock/.test(name))).toEqual([]);
  });
});

describe('the program itself', () => {
  let program = '';
  beforeAll(async () => {
    program = bundledProgram();
    chmodSync(dirname(program), 0o755);
  });

  const ran = (words: readonly string[], options: SpawnSyncOptions = {}) => {
    const [command, ...rest] = [process.execPath, program, ...words];
    const { status, stderr } = spawnSync(command!, rest, { ...options, encoding: 'utf8' });
    return { code: status, stderr };
  };

  it('a full disk behind stdout ends with 1', () => {
    const answer = ran(['check', file], { stdio: ['ignore', openSync('/dev/full', 'w'), 'pipe'] });
    expectPlain(answer, 1, 'could not be printed: the disk is full');
  });

  it('a reader that goes early is no fault', () => {
    const command = `"$@" | head -1`;
    const words = [
      '-o',
      'pipefail',
      '-c',
      command,
      'bash',
      process.execPath,
      program,
      'check',
      file,
    ];
    const { status, stdout, stderr } = spawnSync('bash', words, { encoding: 'utf8' });
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    expect(stdout).toMatch(/^Hill-climb four.*\n$/);
  });

  it('no room while points are stored: it ends with 1, and what was finished counts', () => {
    const words = [process.execPath, program, 'sweep', file, '--out', out, '--workers', '1'];
    const limited = ['-c', 'ulimit -f 2; exec "$@"', 'bash', ...words]; // blocks of 1024 bytes
    const { status, stderr } = spawnSync('bash', limited, { encoding: 'utf8' });
    expectPlain({ code: status, stderr }, 1, `${store()} could not be written: the file would`);
    const { points } = readStore(linesOf(read(store())));
    expect(points.size).toBeGreaterThan(1);
    expect(existsSync(`${store()}.lock`)).toBe(false);
  }, 60_000);

  // A superuser may write anywhere: such a test needs another user.
  it.runIf(process.getuid?.() === 0)('a folder that may not be written ends with 2', () => {
    const home = mkdtempSync(join(tmpdir(), 'trumpetry-nobody-'));
    const readable = join(home, NAME);
    cpSync(file, readable);
    for (const path of [home, readable, out]) chmodSync(path, 0o755);
    const nobody = { uid: 65534, gid: 65534 };
    const answer = ran(['sweep', readable, '--out', out], nobody);
    expectPlain(answer, 2, `${out}: permission denied`);
    expectPlain(ran(['curve', readable, '--out', out], nobody), 2, `${out}: permission denied`);
    expect(readdirSync(out)).toEqual([]);
    const nowhere = join(out, 'new');
    const made = ran(['curve', readable, '--out', nowhere], nobody);
    expectPlain(made, 2, `${nowhere}: permission denied`);
  });
});

describe('two runs in one folder', () => {
  const lock = () => `${store()}.lock`;
  const hold = (holder: object) => writeFileSync(lock(), JSON.stringify(holder));

  it('the second is told who is first, and touches nothing', async () => {
    await sweep(out);
    const before = read(store());
    hold({ process: process.pid, host: hostname(), since: '2026-01-01T00:00:00.000Z' });
    for (const more of [[], ['--resume']]) {
      expectPlain(await sweep(out, ...more), 2, `is in use by process ${process.pid} on`);
    }
    expect(read(store())).toBe(before);
    expect(existsSync(lock())).toBe(true);
  });

  it('a holder that is gone, or silent for long, is no holder', async () => {
    const gone = spawnSync('true').pid;
    hold({ process: gone, host: hostname(), since: '' });
    expect((await sweep(out)).code).toBe(0);
    expect(existsSync(lock())).toBe(false);
    hold({ process: 1, host: 'elsewhere', since: '' });
    expectPlain(await sweep(out), 2, 'is in use by process 1 on elsewhere');
    const long = new Date(Date.now() - 200_000);
    utimesSync(lock(), long, long);
    expect((await sweep(out)).code).toBe(0);
    writeFileSync(lock(), '');
    expectPlain(await sweep(out), 2, 'is in use by another run');
  });

  it('shards do not stand in each other’s way', async () => {
    hold({ process: process.pid, host: hostname(), since: '' });
    expect((await sweep(out, '--shard', '1/2')).code).toBe(0);
    expect(statSync(join(out, 'points-1-of-2.jsonl')).size).toBeGreaterThan(0);
  });
});

it('results are written for those who may read them as before', async () => {
  expect(dirname(store())).toBe(out);
  await sweep(out);
  const before = statSync(join(out, 'sweep.json')).mode;
  await sweep(out, '--resume');
  expect(statSync(join(out, 'sweep.json')).mode).toBe(before);
});
