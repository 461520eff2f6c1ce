/** The solutions made outside are known far better than what is asked of ours (tests/prove). */
import { expect, it } from 'vitest';
import { intakeByOthers, runnerByOthers } from '../prove/cases/independent.ts';

it.each([
  ['runner', runnerByOthers()],
  ['intake event', intakeByOthers()],
])(
  '%s: doubling its elements changed each signal by less than 0.1 %% of its range',
  (_, theirs) => {
    expect(Object.keys(theirs.changeOnDoubling).length).toBeGreaterThan(1);
    for (const change of Object.values(theirs.changeOnDoubling)) expect(change).toBeLessThan(1e-3);
  },
);
