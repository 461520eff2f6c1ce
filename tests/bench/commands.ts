/** Commands of the repository by the clock. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Goal, heading, row, wallSeconds } from './measure.ts';

/** `npm start` as after a fresh clone: no results and no transpiled sources from before. */
export async function start(): Promise<Goal> {
  heading('command', 'seconds');
  const time = await wallSeconds(async () => {
    const fresh = mkdtempSync(join(tmpdir(), 'bench-'));
    execFileSync('npm', ['start', '--', '--out', join(fresh, 'out')], {
      stdio: 'ignore',
      env: { ...process.env, TMPDIR: fresh },
    });
  });
  row('npm start', time.toFixed(1));
  return { what: 'npm start whole', reached: time, goal: 6, unit: 's' };
}
