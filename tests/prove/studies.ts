/**
 * Slow studies: programs of their own that take minutes, print what they find and end with 0 where
 * it holds.
 */
import { spawnSync } from 'node:child_process';

export interface Study {
  what: string;
  script: string;
}

export const STUDIES: readonly Study[] = [
  {
    what: 'designed sample of 64 against 500 independent samples: each figure within its stated interval',
    script: 'tests/prove/uncertainty.ts',
  },
  {
    what: 'what mesh, settling, mouth, losses, friction, heat, rings, cams, bench, fuel and pipes change: within the bounds of docs/limits.md',
    script: 'tests/prove/limits.ts',
  },
  {
    what: 'flare, jet and radiation of the mouth taken away one at a time, eight demos: gains within the bounds of docs/limits.md',
    script: 'tests/prove/mouthEffects.ts',
  },
  {
    what: 'crevices and blow-by taken away, six demos: filling, indicated efficiency and gains within the bounds of docs/limits.md',
    script: 'tests/prove/crevices.ts',
  },
  {
    what: 'between the speeds: gains within 0.2 %, losses and floors within half a point of a grid of 50 rpm, seven figures of three demos',
    script: 'tests/prove/betweenSpeeds.ts',
  },
  {
    what: 'injector above the trumpet: fills slightly better than near the valve on the mean of high speeds, five lengths, three drop sizes',
    script: 'tests/prove/upstreamGain.ts',
  },
  {
    what: "guard of a known disagreement, no proof: Engelman's worked example, 4872 rpm, which the solver puts 8.9 % higher, outside the rule's own 4094 to 5117",
    script: 'tests/prove/workedExample.ts',
  },
];

/** Runs a study, its words going to the error stream; gives whether it holds. */
export function runStudy({ script }: Study): boolean {
  const { status } = spawnSync(process.execPath, ['--import', 'tsx', script], {
    stdio: ['ignore', 2, 2],
  });
  return status === 0;
}
