/**
 * A digest of all bits of the solver's figures, and of all that was read, for a demo: what any runtime
 * must give alike.
 */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import { readScenario } from '../../sim/scenario/read.ts';
import { withShare } from '../../sim/study/inject/compute.ts';
import { runJob } from '../../sim/sweep/runner.ts';
import { withLength } from '../../sim/sweep/sweep.ts';

/** Of a scenario's text: two lengths at two speeds, and with injectors a point with their spray. */
export function digestOf(text: string): string {
  const { engine, speeds, sweep, injectors, ...rest } = readScenario(text, 'demo');
  const lengths = [engine.intake.trumpet.length, sweep.lengths.at(-1)!];
  const at = [speeds[1]!, speeds.at(-1)!];
  const engines = lengths.map((length) => withLength(engine, length));
  if (injectors) engines.push(withShare(engine, injectors, 0.5));
  const points = engines.flatMap((one) => at.map((speed) => runJob({ engine: one, speed })));
  const all = JSON.stringify({ engine, speeds, sweep, injectors, rest, points });
  return bytesToHex(sha256(utf8ToBytes(all))).slice(0, 16);
}
