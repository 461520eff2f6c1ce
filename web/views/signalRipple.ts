/** Ripple of the sensor on the bar over speed, a line a plate angle. */
import { signalFigures, signalTables } from '../../sim/index.ts';
import { hasBar, sensing } from '../state/sensing.ts';
import { askedView } from './asked.tsx';

export const signalRippleView = askedView({
  id: 'signal-ripple',
  question: 'How steady is it, over speed and plate angle?',
  width: 'half',
  height: 360,
  study: sensing,
  applies: hasBar,
  reading: 'Ripple at the sensor on the bar, peak to peak, jets by their own law.',
  plot: (study) => signalFigures.ripplePlot(study, 'bar'),
  table: signalTables.pointsTable,
  decimals: 2,
});
