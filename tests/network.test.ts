/** The code of docs/network.md runs, and rings as Helmholtz has it. */
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { expect, it, vi } from 'vitest';
import { helmholtzFrequency } from './acoustics/resonance.ts';

const text = readFileSync('docs/network.md', 'utf8');
const [, code] = /```ts\n([\s\S]*?)```/.exec(text)!;

it('is at most 30 lines', () => {
  expect(code!.trim().split('\n').length).toBeLessThanOrEqual(30);
});

it('rings at the frequency of its box and neck, and as the page says', async () => {
  const file = join(mkdtempSync(join(tmpdir(), 'network-')), 'ring.mts');
  const here = pathToFileURL(join(import.meta.dirname, '../sim/index.ts')).href;
  writeFileSync(file, code!.replace("'trumpetry'", `'${here}'`));
  const printed = vi.spyOn(console, 'log').mockImplementation(() => {});
  await import(pathToFileURL(file).href);
  const [[frequency, unit]] = printed.mock.calls as [[number, string]];
  printed.mockRestore();
  expect(unit).toBe('Hz');
  const area = (Math.PI / 4) * 0.04 ** 2;
  const sound = Math.sqrt(1.4 * 287 * 300);
  expect(Math.abs(frequency / helmholtzFrequency(area, 0.1, 5e-3, sound) - 1)).toBeLessThan(0.01);
  // A third of the neck's own gas springs too.
  const whole = 5e-3 + (area * 0.1) / 3;
  expect(Math.abs(frequency / helmholtzFrequency(area, 0.1, whole, sound) - 1)).toBeLessThan(1e-3);
  expect(text).toContain(`prints ${frequency.toFixed(1)} Hz`);
});
