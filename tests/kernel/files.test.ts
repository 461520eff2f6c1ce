/** What is checked in for lanes is what its source gives. */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { KERNELS, kernelPath, kernelText } from './files.ts';

it.each(KERNELS)('the %s lanes are what sim/step builds', async (lanes) => {
  expect(readFileSync(kernelPath(lanes), 'utf8')).toBe(await kernelText(lanes));
});
