/** Pressure of a runner, of a sensor on it and of the sensor on the bar, through one idle cycle. */
import { HOSE_CAUTIONS, signalFigures, signalSentences, signalTables } from '../../sim/index.ts';
import { resultOf } from '../state/asked.ts';
import { hasBar, sensing } from '../state/sensing.ts';
import { askedView } from './asked.tsx';

export const signalView = askedView({
  id: 'signal',
  question: 'What does my pressure sensor see?',
  width: 'wide',
  height: 420,
  study: sensing,
  applies: hasBar,
  reading:
    'One cycle at idle: behind one plate, at a sensor on that runner alone, and at the sensor on the bar. Runners are taken to stand where they do without hoses.',
  sentences: signalSentences,
  plot: signalFigures.cyclePlot,
  table: signalTables.pointsTable,
  decimals: 1,
  ask: {
    label: 'Work out the signal',
    cost: () =>
      'A cycle at every speed and plate angle, then some three hundred bars: half a minute of two cores.',
  },
  Below: Cautions,
});

/** Before hoses are fitted, computed or not. */
function Cautions() {
  return (
    <details open={resultOf(sensing) !== undefined}>
      <summary>Before you fit hoses to runners</summary>
      <ul class="cautions">
        {HOSE_CAUTIONS.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </details>
  );
}
