/**
 * Every test: those of the page beside all others, since a browser leaves two cores idle by turns. What they say is
 * printed when both are done. Fails where either fails.
 */
import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { text } from 'node:stream/consumers';

const VITEST = join(import.meta.dirname, '../node_modules/vitest/vitest.mjs');

/** Runs vitest so; what it says goes to this console, or is kept. */
function started(words, stdout) {
  const env = { ...process.env, ...(process.stdout.isTTY && { FORCE_COLOR: '1' }) };
  const stdio = ['ignore', stdout, stdout];
  const child = spawn(process.execPath, [VITEST, 'run', ...words], { stdio, env });
  const code = new Promise((resolve) => child.once('close', resolve));
  return { child, code };
}

// Page tests come one after the other, in one browser; how long files took is kept by one run alone.
const page = started(['tests/page', '--no-file-parallelism', '--no-cache'], 'pipe');
const said = Promise.all([text(page.child.stdout), text(page.child.stderr)]);
const others = started(['--exclude', 'tests/page/**'], 'inherit');

const codes = await Promise.all([others.code, page.code]);
process.stdout.write((await said).join(''));
process.exitCode = codes.every((code) => code === 0) ? 0 : 1;
