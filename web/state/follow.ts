/** Whenever the text asks something new and stays still for a moment, the answer is worked out. */
import { effect } from '@preact/signals';
import { liftHand } from './hand.ts';
import { reading, source } from './scenario.ts';
import { answer, restate, study } from './study.ts';

/** Rest after an edit before computing starts [ms]. */
const REST = 900;

export function followScenario(): void {
  let rest: ReturnType<typeof setTimeout> | undefined;
  effect(() => {
    const now = reading.value;
    clearTimeout(rest);
    if (!now.ok) return;
    const shown = study.peek();
    if (shown?.hash === now.hash) return restate(now.scenario);
    const begin = () => {
      liftHand();
      void answer(now.scenario, now.hash);
    };
    if (shown === undefined || source.peek().whole) begin();
    else rest = setTimeout(begin, REST);
  });
}
