/** Fuel that the reversed flow blows back out of the mouth. */
import { injectFigures, injectTables } from '../../sim/index.ts';
import { placedView } from './injector.ts';

export const injectorStandOffView = placedView({
  id: 'injector-stand-off',
  question: 'How much fuel stands off above the mouths?',
  reading:
    'All fuel from above the trumpet: the share of it that reversed flow carries out of the mouth as drops, what the next intake draws in again, and what is lost for good, as vapour too. Fog in the open is what burns when it back-fires.',
  plot: injectFigures.standOffPlot,
  table: injectTables.placementsTable,
});
