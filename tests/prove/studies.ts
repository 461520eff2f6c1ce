/**
 * Slow studies: programs of their own that take minutes, print what they find and end with 0 where
 * it holds.
 */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';

export interface Study {
  what: string;
  script: string;
}

export const STUDIES: readonly Study[] = [
  {
    what: 'designed sample of 64 against 500 independent samples: each figure within its stated interval',
    script: 'tests/prove/uncertainty.ts',
  },
];

/** Runs a study, its words going to the error stream; gives whether it holds. */
export function runStudy({ script }: Study): boolean {
  if (!existsSync(script)) return false;
  const { status } = spawnSync(process.execPath, ['--import', 'tsx', script], {
    stdio: ['ignore', 2, 2],
  });
  return status === 0;
}

/** The studies as a page of the documentation. */
export function studiesMarkdown(held: readonly boolean[]): string {
  return [
    '# Slow studies',
    '',
    'Written by `npm run prove`; do not edit. Each script prints its own table.',
    '',
    '| study | script | verdict |',
    '|---|---|---|',
    ...STUDIES.map(
      ({ what, script }, i) =>
        `| ${what} | [${script}](../${script}) | ${held[i] ? 'holds' : 'FAILS'} |`,
    ),
    '',
  ].join('\n');
}
