/**
 * Told to end while points are computed: by Ctrl-C, by a request to terminate, or because npm was told.
 * npm passes a request to the shell that it runs a script in, and the shell ends alone; killed, npm passes on
 * nothing. What it ran would go on for nobody, so under npm the program ends when one of those that run it
 * has gone.
 */
import { isBroken, linksToNpm } from './ancestors.ts';
import { Interrupted } from './exit.ts';

const SIGNALS = { SIGINT: 130, SIGTERM: 143 } as const;

/** Without npm a parent may go first, as the shell of `nohup trumpetry ... &` does. */
const UNDER_NPM = process.env.npm_lifecycle_event !== undefined;
/** As they were when the program began. */
const LINKS = UNDER_NPM ? linksToNpm() : [];
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

/** Calls `then` when npm, which ran this, has gone, or a shell between them; gives what stops the watch. */
export function onOrphaned(then: () => void): () => void {
  if (!UNDER_NPM) return () => {};
  const beat = setInterval(() => LINKS.some(isBroken) && then(), BEAT).unref();
  return () => clearInterval(beat);
}
