/**
 * Tests that take long and prove again what others prove sooner: statistics over many seeds, long pipes at
 * low speed. `npm run prove` runs them; `npm test` passes them over.
 */
import { test } from 'vitest';

export const SLOW = process.env.TRUMPETRY_SLOW !== undefined;

export const slow = test.skipIf(!SLOW);
