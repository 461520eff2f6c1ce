/** Worker threads for points, and their clean end, by whatever way. */
import { Tinypool } from 'tinypool';
import { batched, type Computer } from '../index.ts';
import { watchSignals } from './signals.ts';

/**
 * Runs `work` with so many worker threads and ends them after it.
 *
 * @throws Interrupted on Ctrl-C or when told to end
 */
export async function withWorkers<T>(
  count: number,
  work: (workers: Computer) => Promise<T>,
): Promise<T> {
  const pool = new Tinypool({
    filename: new URL('./pointWorker.mjs', import.meta.url).href,
    execArgv: [],
    minThreads: count,
    maxThreads: count,
  });
  const task: Computer['task'] = (name, input) => pool.run({ name, input });
  const workers: Computer = { ...batched(count, (job) => task('speeds', job)), task };
  const signals = watchSignals();
  try {
    return await Promise.race([work(workers), signals.interrupted]);
  } finally {
    signals.forget();
    await pool.destroy();
  }
}
