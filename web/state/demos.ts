/** The demo scenarios, each with the answer that was computed when the page was built. */
import { shipped } from 'virtual:demos';
import type { LengthStudy } from '../../sim/index.ts';

export interface Demo {
  file: string;
  text: string;
  /** The answer shipped with the page; absent where the page was served without building it. */
  answer?: { hash: string; load: () => Promise<LengthStudy> };
}

export const demos: readonly Demo[] = shipped;

/** The shipped answer to the very question with this hash. */
export async function shippedAnswer(hash: string): Promise<LengthStudy | undefined> {
  return demos.find((demo) => demo.answer?.hash === hash)?.answer?.load();
}
