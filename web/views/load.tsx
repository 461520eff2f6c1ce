/** Filling over throttle angle and speed. */
import { LOAD_CAUTIONS, loadFigures, loadSentences, loadTables } from '../../sim/index.ts';
import { Cautions } from '../parts/Cautions.tsx';
import { chooseLoadSize, LOAD_SIZES, loadSize, loadTable } from '../state/loadTable.ts';
import { askedView } from './asked.tsx';

export const loadView = askedView({
  id: 'load',
  question: 'How much air at part throttle?',
  width: 'wide',
  height: 420,
  study: loadTable,
  applies: () => true,
  reading:
    'Relative filling over throttle angle, one line a speed. Close to the stop a hundredth of a degree is much of the air; from half open on hardly anything happens at low speed.',
  sentences: (study) => loadSentences(study),
  plot: loadFigures.loadPlot,
  table: loadTables.fillingTable,
  ask: {
    label: 'Work out the table',
    cost: () => `${timeFor(loadSize.value)} of one core on the demo four.`,
  },
  Choice: Size,
  Below: () => <Cautions items={LOAD_CAUTIONS} />,
});

/** What a cell of the demo four takes of a core [s]; docs/load.md. */
const CELL = 0.11;

function timeFor(size: number): string {
  const seconds = size * size * CELL;
  return seconds < 90
    ? `Some ${10 * Math.ceil(seconds / 10)} seconds`
    : `Some ${Math.ceil(seconds / 60)} minutes`;
}

function Size() {
  return (
    <p class="choice">
      <label>
        At most{' '}
        <select
          value={String(loadSize.value)}
          onChange={({ currentTarget }) => chooseLoadSize(Number(currentTarget.value))}
        >
          {LOAD_SIZES.map((size) => (
            <option key={size} value={String(size)}>
              {size} angles by {size} speeds
            </option>
          ))}
        </select>
      </label>
    </p>
  );
}
