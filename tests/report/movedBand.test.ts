/** What is told of the answer with the band a little elsewhere: it stays, or another length would win. */
import { expect, test } from 'vitest';
import type { LengthStudy } from '../../sim/study/length/compute.ts';
import { edge } from '../../sim/study/length/priceWords.ts';

const told = (...moved: { by: number; length: number; gainPercent: number }[]) =>
  edge({ moved, recommended: { length: 0.18 }, unit: 'mm' } as unknown as LengthStudy);

test.each([
  [
    [
      { by: 400, length: 0.18, gainPercent: 0 },
      { by: -400, length: 0.09, gainPercent: 0.8 },
    ],
    'With the band 400 rpm higher 180 mm stays the best, or within 0.5 %; with the band 400 rpm lower 90 mm would win by 0.8 %.',
  ],
  [
    [
      { by: -400, length: 0.18, gainPercent: 0 },
      { by: 400, length: 0.2, gainPercent: 0.49 },
    ],
    'With the band 400 rpm lower or higher 180 mm stays the best, or within 0.5 %.',
  ],
  [
    [{ by: 400, length: 0.2, gainPercent: 1.2 }],
    'With the band 400 rpm higher 200 mm would win by 1.2 %.',
  ],
  [[], ''],
])('%j', (moved, words) => {
  expect(told(...moved)).toBe(words);
});
