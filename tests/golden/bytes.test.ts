/**
 * The same bytes on every runtime: a digest of each demo's figures on a cheap mesh, recorded once.
 * Here in the Node at hand and, where TRUMPETRY_NODES names programs of others (separated as in PATH),
 * in each of them; in a browser by tests/page/bytes.test.ts. A change of the solver that is meant to
 * change figures renews the record: `npx vitest run tests/golden -u`.
 */
import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { beforeAll, expect, test } from 'vitest';
import { freshFolder } from '../cli/commandLine.ts';
import { digestModule, RECORDED, texts } from './runtimes.ts';

const others = (process.env.TRUMPETRY_NODES ?? '').split(delimiter).filter((path) => path !== '');
const file = join(freshFolder(), 'digest.mjs');

const RUN = `import(process.argv[1]).then(({ digestOf }) => {
  const texts = JSON.parse(process.argv[2]);
  const digests = Object.entries(texts).map(([demo, text]) => [demo, digestOf(text)]);
  process.stdout.write(JSON.stringify(Object.fromEntries(digests), null, 2) + '\\n');
})`;

beforeAll(async () => writeFileSync(file, await digestModule()));

test.each([process.execPath, ...others])('%s gives the recorded bytes', async (node) => {
  const told = execFileSync(node, ['-e', RUN, file, JSON.stringify(texts())], { encoding: 'utf8' });
  await expect(told).toMatchFileSnapshot(RECORDED);
});
