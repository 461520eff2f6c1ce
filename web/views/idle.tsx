/** What the air of an even idle can come through. */
import { IDLE_CAUTIONS, idleFigures, idleTables, joinedIdleSentences } from '../../sim/index.ts';
import { resultOf } from '../state/asked.ts';
import { hasIdle, idling } from '../state/sensing.ts';
import { askedView } from './asked.tsx';

export const idleView = askedView({
  id: 'idle',
  question: 'Through what should the air of the idle come?',
  width: 'wide',
  height: 360,
  study: idling,
  applies: hasIdle,
  reading:
    'Ripple that a pulsed valve puts into the bar it feeds, over how often it is driven. The ways to let air in stand in the table.',
  sentences: joinedIdleSentences,
  plot: idleFigures.frequencyPlot,
  table: idleTables.waysTable,
  decimals: 2,
  ask: {
    label: 'Compare the ways',
    cost: () => 'Closed formulas, and the engine at idle four times: some seconds.',
  },
  Below: Cautions,
});

/** Before anything is changed, computed or not. */
function Cautions() {
  return (
    <details open={resultOf(idling) !== undefined}>
      <summary>Before you let more air in</summary>
      <ul class="cautions">
        {IDLE_CAUTIONS.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </details>
  );
}
