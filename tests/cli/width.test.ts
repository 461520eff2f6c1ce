/** What is printed fits the terminal it is printed on. */
import { describe, expect, test } from 'vitest';
import { LENGTH_DRAWING } from '../../sim/index.ts';
import { answerOf, callsOf } from '../golden/calls.ts';
import { chanceWorkers } from '../golden/chance.ts';

/** The drawing, and names of files, are as wide as they are. */
const stands = (line: string) =>
  line.startsWith('Written: ') || LENGTH_DRAWING.includes(line.trimStart());

describe.each([60, 80, 132])('%i columns', (columns) => {
  const calls = callsOf('endurance-six').filter(({ name }) => name !== 'doubt');
  test.each(calls.map((call) => [call.name, call] as const))('%s', async (_, call) => {
    const { stdout } = await answerOf('endurance-six', call, () => chanceWorkers, false, columns);
    const lines = stdout.split('\n').filter((line) => !stands(line));
    expect(lines.length).toBeGreaterThan(5);
    expect(lines.filter((line) => line.length > columns)).toEqual([]);
  });
});
