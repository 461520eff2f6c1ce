/** The figures of the demos in a browser, to the last bit those of Node (tests/golden/bytes.test.ts). */
import { expect, test } from 'vitest';
import { digestModule, recorded, texts } from '../golden/runtimes.ts';
import { browser } from './opened.ts';

test('a browser gives the recorded bytes', async () => {
  const context = await (await browser()).newContext();
  try {
    const page = await context.newPage();
    const found = await page.evaluate(digests(await digestModule()));
    expect(found).toEqual(recorded());
  } finally {
    await context.close();
  }
});

/** As text, so that no tool rewrites its import. */
const digests = (code: string) => `(async () => {
  const module = URL.createObjectURL(new Blob([${JSON.stringify(code)}], { type: 'text/javascript' }));
  const { digestOf } = await import(module);
  const entries = Object.entries(${JSON.stringify(texts())});
  return Object.fromEntries(entries.map(([demo, text]) => [demo, digestOf(text)]));
})()`;
