/** What one plate that is off does to air, mixture and torque. */
import { spreadPlot, spreadSentences, spreadTable } from '../../sim/index.ts';
import { plateSpread } from '../state/plateSpread.ts';
import { askedView } from './asked.tsx';

export const plateSpreadView = askedView({
  id: 'plate-spread',
  question: 'What does one body that differs do?',
  width: 'wide',
  height: 420,
  applies: ({ scenario }) => scenario.engine.cylinder.count > 1,
  study: plateSpread,
  reading:
    'Air of one cylinder as its throttle stands wrong, at idle, at part load and wide open; the others as they are. A worn shaft, a bleed and a longer trumpet in the sentences.',
  plot: spreadPlot,
  table: spreadTable,
  sentences: (study) => spreadSentences(study),
  ask: { label: 'Work it out', cost: () => 'Some forty points, of which idle takes longest.' },
});
