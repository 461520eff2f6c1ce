/** Charge temperature at valve closing against speed, by where the fuel comes in. */
import { injectFigures, injectTables } from '../../sim/index.ts';
import { placedView } from './injector.ts';

export const injectorCoolingView = placedView({
  id: 'injector-cooling',
  question: 'How much does it cool the charge?',
  reading:
    'Temperature of what is trapped at valve closing. The lower the line, the more of the fuel has drawn its heat from the air in time.',
  plot: injectFigures.coolingPlot,
  table: injectTables.placementsTable,
});
