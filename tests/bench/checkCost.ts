/**
 * What the checks of a store cost: sum and form of its lines beside writing and reading the same lines without, over
 * the processor time of a point of a demo. Takes half a minute:
 *
 *   node --import tsx tests/bench/checkCost.ts
 */
import { isOutcome } from '../../sim/sweep/outcome.ts';
import { runSpeedsJob } from '../../sim/sweep/runner.ts';
import { pointLine, readStore } from '../../sim/sweep/store.ts';
import { demo } from '../scenario.ts';

const LINES = 20_000;

/** Processor time of one of so many turns [s]. */
function each(turns: number, work: (turn: number) => void): number {
  const before = process.cpuUsage();
  for (let turn = 0; turn < turns; turn++) work(turn);
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1e6 / turns;
}

const { engine, speeds } = demo('sprint-single');
const chosen = speeds.filter((_, i) => i % 4 === 0);
const point = each(1, () => runSpeedsJob({ engine, speeds: chosen })) / chosen.length;
const [outcome] = runSpeedsJob({ engine, speeds: chosen.slice(0, 1) });
if (!isOutcome(outcome)) throw new Error('no outcome');

const keys = Array.from({ length: LINES }, (_, i) => i.toString(16).padStart(64, '0'));
const plain = keys.map((key) => JSON.stringify({ by: 'trumpetry', key, outcome }));
const lines = keys.map((key) => pointLine(key, outcome).trimEnd());
// Once to warm up.
for (const told of [false, true]) {
  const bareWrite = each(LINES, (i) => JSON.stringify({ key: keys[i], outcome }));
  const write = each(LINES, (i) => pointLine(keys[i]!, outcome));
  const bareRead = each(LINES, (i) => JSON.parse(plain[i]!));
  const read = each(1, () => readStore(lines)) / LINES;
  const checks = write - bareWrite + read - bareRead;
  if (told) {
    const micro = (seconds: number) => `${(1e6 * seconds).toFixed(1)} us`;
    console.log(
      `a line written ${micro(write)}, without its sum ${micro(bareWrite)}; ` +
        `read ${micro(read)}, without checks ${micro(bareRead)}; a point ${(1e3 * point).toFixed(0)} ms: ` +
        `checks take ${((100 * checks) / point).toFixed(3)} % of it`,
    );
  }
}
