/** Pressure of two runners, of the bar and of its sensor, through one idle cycle. */
import {
  barDrawing,
  HOSE_CAUTIONS,
  signalFigures,
  signalSentences,
  signalTables,
} from '../../sim/index.ts';
import { Cautions } from '../parts/Cautions.tsx';
import { resultOf } from '../state/asked.ts';
import { picture } from '../state/picture.ts';
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
    'One cycle at idle with the bar fitted, engine and hoses computed together: behind the first throttle and the next to fire, in the bar and at its sensor.',
  sentences: signalSentences,
  plot: signalFigures.cyclePlot,
  table: signalTables.pointsTable,
  decimals: 1,
  ask: {
    label: 'Work out the signal',
    cost: () =>
      'A cycle at every speed and throttle angle, with the bar and without, then some three hundred bars: half a minute of two cores.',
  },
  Below: () => (
    <>
      <Drawing />
      <Before />
    </>
  ),
});

/** Markup of the report, which escapes every text. */
function Drawing() {
  const { engine, pressureBar, lengthUnit } = picture.value!.scenario;
  const { caption, picture: drawn } = barDrawing(engine, pressureBar!, lengthUnit);
  return (
    <figure class="bar-drawing">
      <figcaption>{caption}</figcaption>
      <div dangerouslySetInnerHTML={{ __html: drawn.text }} />
    </figure>
  );
}

/** Before hoses are fitted, computed or not. */
function Before() {
  return (
    <details open={resultOf(sensing) !== undefined}>
      <summary>Before you fit hoses to runners</summary>
      <Cautions items={HOSE_CAUTIONS} />
    </details>
  );
}
