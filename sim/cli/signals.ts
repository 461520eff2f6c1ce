/**
 * Told to end while points are computed: by Ctrl-C, by a request to terminate, or because npm was told.
 * npm passes a signal to the shell that it runs a script in, and the shell ends alone; what it ran would
 * go on for nobody. So under npm the program ends when its parent has gone.
 */
import { Interrupted } from './exit.ts';

const SIGNALS = { SIGINT: 130, SIGTERM: 143 } as const;

/** As it was when the program began. */
const PARENT = process.ppid;
/** Without npm a parent may go first, as the shell of `nohup trumpetry ... &` does. */
const UNDER_NPM = process.env.npm_lifecycle_event !== undefined;
/** Looked for so often [ms]. */
const BEAT = 500;

export interface SignalWatch {
  /** Rejects with Interrupted. */
  interrupted: Promise<never>;
  forget(): void;
}

export function watchSignals(): SignalWatch {
  const ends: (() => void)[] = [];
  const interrupted = new Promise<never>((_, reject) => {
    for (const [signal, code] of Object.entries(SIGNALS)) {
      const listener = () => reject(new Interrupted(code));
      process.once(signal, listener);
      ends.push(() => process.off(signal, listener));
    }
    ends.push(onOrphaned(() => reject(new Interrupted(SIGNALS.SIGTERM))));
  });
  return {
    interrupted,
    forget: () => {
      for (const end of ends) end();
    },
  };
}

/** Calls `then` when npm, which ran this, has gone; gives what stops the watch. */
export function onOrphaned(then: () => void): () => void {
  if (!UNDER_NPM) return () => {};
  const beat = setInterval(() => process.ppid !== PARENT && then(), BEAT).unref();
  return () => clearInterval(beat);
}
