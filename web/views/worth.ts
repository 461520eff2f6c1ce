/** Whether individual bodies pay on this engine, against one throttle and a plenum. */
import { plenumFigures, worthSentences, worthTable } from '../../sim/index.ts';
import { isItWorth } from '../state/worth.ts';
import { askedView } from './asked.tsx';

export const worthView = askedView({
  id: 'worth',
  question: 'Are individual bodies worth it on this engine?',
  width: 'wide',
  height: 420,
  study: isItWorth,
  applies: () => true,
  reading:
    'Brake torque at full load, bodies on the trumpets recommended and one throttle with a plenum; less friction by a correlation, so compare and do not quote.',
  sentences: worthSentences,
  plot: ({ plenum }) => plenumFigures.torquePlot(plenum),
  table: worthTable,
  ask: {
    label: 'Weigh it all',
    cost: () =>
      'Lengths, plenum, response, sensors, one throttle off, idle, pedal and what the defaults move: half a minute of two cores.',
  },
});
