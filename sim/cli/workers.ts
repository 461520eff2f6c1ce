/** Worker threads for points, and their clean end, by whatever way. */
import { Tinypool } from 'tinypool';
import { batched, type Computer } from '../index.ts';
import { Interrupted } from './exit.ts';

/**
 * Runs `work` with so many worker threads and ends them after it.
 *
 * @throws Interrupted on Ctrl-C or when told to terminate
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

const SIGNALS = { SIGINT: 130, SIGTERM: 143 } as const;

function watchSignals(): { interrupted: Promise<never>; forget(): void } {
  const listeners: (() => void)[] = [];
  const interrupted = new Promise<never>((_, reject) => {
    for (const [signal, code] of Object.entries(SIGNALS)) {
      const listener = () => reject(new Interrupted(code));
      process.once(signal, listener);
      listeners.push(() => process.off(signal, listener));
    }
  });
  return {
    interrupted,
    forget: () => {
      for (const forget of listeners) forget();
    },
  };
}
