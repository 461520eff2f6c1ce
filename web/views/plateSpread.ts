/** What one plate that is off does to air, mixture and torque. */
import { spreadPlot, spreadSentences, spreadTable } from '../../sim/index.ts';
import { plateSpread } from '../state/plateSpread.ts';
import { askedView } from './asked.tsx';

export const plateSpreadView = askedView({
  id: 'plate-spread',
  question: 'What does one throttle plate that is off do?',
  width: 'wide',
  height: 420,
  applies: ({ scenario }) => scenario.engine.cylinder.count > 1,
  study: plateSpread,
  reading:
    'Air of one cylinder as its plate stands wrong, at idle, at part load and wide open; the others as they are.',
  plot: spreadPlot,
  table: spreadTable,
  sentences: (study) => spreadSentences(study),
  ask: { label: 'Work it out', cost: () => 'Nine points, of which idle takes some seconds each.' },
});
