/** Where a Chromium is, for the tests that look at the page and at the report. */
import { execFileSync } from 'node:child_process';
import { accessSync, constants } from 'node:fs';
import { delimiter, join } from 'node:path';
import { type Browser, chromium } from 'playwright-core';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];

/**
 * A Chromium without a window. Watched from outside, it finds out where in a script something is thrown, for which it
 * reads the function over again: the plotting library is one function of 4.6 MB, and that took three
 * seconds a tab. With the flag it notes places as it compiles.
 */
export function launched(): Promise<Browser> {
  return chromium.launch({
    executablePath: chromiumPath(),
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-background-networking',
      '--js-flags=--no-enable-lazy-source-positions',
    ],
  });
}

/**
 * Path of a Chromium: CHROMIUM_PATH where set, else the first on PATH; on Debian and as root, one is
 * installed.
 *
 * @throws Error that says how to get one
 */
export function chromiumPath(): string {
  const set = process.env.CHROMIUM_PATH;
  if (set) {
    if (runs(set)) return set;
    throw new Error(`CHROMIUM_PATH is ${set}, but that is no program`);
  }
  const path = onPath() ?? installed();
  if (path) return path;
  throw new Error(
    'The page tests need a Chromium. Install one (Debian, Ubuntu: apt-get install chromium; ' +
      'elsewhere your package manager or your browser itself) or set CHROMIUM_PATH to its program.',
  );
}

function onPath(): string | undefined {
  const folders = (process.env.PATH ?? '').split(delimiter).filter((folder) => folder !== '');
  return folders.flatMap((folder) => NAMES.map((name) => join(folder, name))).find(runs);
}

/** Installs Debian's package where this is Debian and we are root. */
function installed(): string | undefined {
  if (process.platform !== 'linux' || process.getuid?.() !== 0 || !runs('/usr/bin/apt-get')) return;
  const apt = (...words: string[]) =>
    execFileSync('/usr/bin/apt-get', words, {
      stdio: ['ignore', 'ignore', 'inherit'],
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    });
  apt('update', '-q');
  apt('install', '-q', '-y', 'chromium');
  return onPath();
}

function runs(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}
