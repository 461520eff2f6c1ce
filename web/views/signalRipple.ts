/** Ripple of the sensor on the bar, a tile a speed and plate angle. */
import { signalFigures, signalTables } from '../../sim/index.ts';
import { hasBar, sensing } from '../state/sensing.ts';
import { askedView } from './asked.tsx';

export const signalRippleView = askedView({
  id: 'signal-ripple',
  question: 'How steady is it, over speed and throttle angle?',
  width: 'half',
  height: 360,
  study: sensing,
  applies: hasBar,
  reading:
    'Each tile is the ripple at the sensor on the bar, peak to peak, bar and engine computed together; brighter swings more.',
  plot: signalFigures.rippleMap,
  table: signalTables.pointsTable,
  decimals: 2,
});
