/** Flow past the meter in the snorkel over a cycle, where it is led furthest astray. */
import { meterFigures, meterTables } from '../../sim/index.ts';
import { metering } from '../state/metering.ts';
import { askedView } from './asked.tsx';

export const meterFlowView = askedView({
  id: 'meter-flow',
  question: 'What does a flow meter see?',
  width: 'wide',
  height: 320,
  study: metering,
  applies: () => true,
  reading:
    'Flow past the meter through one cycle, at the speed that leads it furthest astray and at the highest, with the throttles alike. A meter that cannot tell which way the air goes counts what flows back, below the line, as if it came in.',
  plot: meterFigures.flowPlot,
  table: meterTables.trustTable,
  decimals: 1,
});
