/** What a pulsed valve puts into the bar it feeds, over how often it is driven. */
import { idleFigures, idleTables } from '../../sim/index.ts';
import { hasIdle, idling } from '../state/sensing.ts';
import { askedView } from './asked.tsx';

export const idleValveView = askedView({
  id: 'idle-valve',
  question: 'What does the valve put into its bar?',
  width: 'half',
  height: 360,
  study: idling,
  applies: hasIdle,
  reading:
    'Ripple that a pulsed valve puts into the bar it feeds, over how often it is driven: by the formula, and at the sensor of the pressure bar as computed with the engine.',
  plot: idleFigures.frequencyPlot,
  table: idleTables.frequencyTable,
  decimals: 1,
});
