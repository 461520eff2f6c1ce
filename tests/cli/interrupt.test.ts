/** Ctrl-C while points are computed. */
import { spawn } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { expect, test, vi } from 'vitest';
import { coarseText, ended, fileOf, freshFolder, start } from './commandLine.ts';

/** Many points, so that the signal comes well before the end. */
const long = coarseText()
  .replace('step: 1000 rpm', 'step: 20 rpm')
  .replace('intakeCell: 20 mm', 'intakeCell: 2 mm');

/** Points are under way soon after the folder for results is there. */
async function underWay(folder: string): Promise<void> {
  while (!existsSync(folder)) await pause(50);
  await pause(1500);
}

test.concurrent.each([
  ['SIGINT', 130],
  ['SIGTERM', 143],
] as const)(
  '%s: one line on stderr, exit code %i, nothing written, no stack trace',
  async (signal, code) => {
    const folder = join(freshFolder(), 'out');
    const program = start('sweep', fileOf(long), '--workers', '2', '--out', folder);
    const end = ended(program);
    await underWay(folder);
    program.kill(signal);
    const told = await end;
    expect(told.code).toBe(code);
    expect(told.stdout).toBe('');
    expect(told.stderr).toBe(
      'stopped before the end; no result was written (a sweep goes on with --resume)\n',
    );
  },
);

test.concurrent.each(['SIGTERM', 'SIGHUP', 'SIGKILL'] as const)(
  'npm ended by %s leaves nothing running, and no lock; what was finished is kept',
  async (signal) => {
    const folder = join(freshFolder(), 'out');
    const words = ['sweep', fileOf(long), '--workers', '1', '--out', folder];
    const npm = spawn('npm', ['run', '-s', 'trumpetry', '--', ...words]);
    const end = ended(npm);
    await underWay(folder);
    const store = () => readFileSync(join(folder, 'points.jsonl'), 'utf8');
    const lock = join(folder, 'points.jsonl.lock');
    const { process: id } = JSON.parse(readFileSync(lock, 'utf8')) as { process: number };
    expect(id).not.toBe(npm.pid);
    expect(isAlive(id)).toBe(true);
    const before = store();
    npm.kill(signal);
    await vi.waitFor(() => expect(isAlive(id)).toBe(false), { timeout: 20_000, interval: 100 });
    expect(existsSync(lock)).toBe(false);
    expect(store().startsWith(before)).toBe(true);
    expect((await end).stderr).toMatch(/^stopped before the end/);
  },
);

function isAlive(id: number): boolean {
  try {
    return process.kill(id, 0);
  } catch {
    return false;
  }
}
