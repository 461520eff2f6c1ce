/** What the end correction is worth. Published rows are in tests/prove/pipeAcoustics.ts. */
import { expect, it } from 'vitest';
import { ring, withCorrection } from '../prove/cases/ringing.ts';

it('a pipe without its end correction would sound more than 3.5 % too high', () => {
  const bare = ring(withCorrection(0.35, 0.0225, 0), 245);
  expect(bare / 235.84 - 1).toBeGreaterThan(0.035);
});
