/** What a box over the trumpets does to the best length. */
import { airboxFigures, airboxSentences, airboxTables, BOX_CAUTIONS } from '../../sim/index.ts';
import { Cautions } from '../parts/Cautions.tsx';
import { inTheBox } from '../state/airbox.ts';
import { askedView } from './asked.tsx';

export const airboxView = askedView({
  id: 'airbox',
  question: 'What would a box over the trumpets change?',
  width: 'wide',
  height: 420,
  study: inTheBox,
  applies: () => true,
  reading:
    'Mean in the band over trumpet length, mouths in the open and in the box. Where the file has no section airbox, usual sizes are taken.',
  sentences: airboxSentences,
  plot: airboxFigures.boxedLengthsPlot,
  table: airboxTables.boxedLengthsTable,
  decimals: 3,
  ask: {
    label: 'Put a box over them',
    cost: () =>
      'Every speed, and every length in the band, all cylinders together: a minute of two cores.',
    ready: ({ study }) => study.full !== undefined,
  },
  Below: () => <Cautions items={BOX_CAUTIONS} />,
});
