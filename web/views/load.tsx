/** Filling over plate angle and speed. */
import { LOAD_CAUTIONS, loadFigures, loadSentences, loadTables } from '../../sim/index.ts';
import { Cautions } from '../parts/Cautions.tsx';
import { LOAD_SIZE, loadTable } from '../state/loadTable.ts';
import { askedView } from './asked.tsx';

export const loadView = askedView({
  id: 'load',
  question: 'How much air at part throttle?',
  width: 'wide',
  height: 420,
  study: loadTable,
  applies: () => true,
  reading:
    'Relative filling over plate angle, one line a speed. Close to the stop a hundredth of a degree is much of the air; from half open on hardly anything happens at low speed.',
  sentences: loadSentences,
  plot: loadFigures.loadPlot,
  table: loadTables.fillingTable,
  ask: {
    label: 'Work out the table',
    cost: () =>
      `At most ${LOAD_SIZE} plate angles by ${LOAD_SIZE} speeds, some 30 seconds of one core.`,
  },
  Below: () => <Cautions items={LOAD_CAUTIONS} />,
});
