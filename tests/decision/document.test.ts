/** docs/decision.md says what the program takes. To renew: npx vitest run tests/decision/document -u */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { doubtsByTrade } from '../../sim/scenario/doubt.ts';

const text = readFileSync('docs/decision.md', 'utf8');

it('lists every half-width by trade sense', async () => {
  const rows = doubtsByTrade().map(({ path, half, why }) => `| \`${path}\` | ${half} | ${why} |`);
  const table = ['| key | half-width | what it comes from |', '|---|---|---|', ...rows].join('\n');
  const [before, , after] = text.split(/(?<=<!-- begin spreads -->\n)|(?=<!-- end spreads -->)/);
  await expect(`${before}${table}\n${after}`).toMatchFileSnapshot('../../docs/decision.md');
});
