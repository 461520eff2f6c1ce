/** Where along the intake the fuel of the injectors turns to vapour. */
import { injectFigures, injectTables } from '../../sim/index.ts';
import { placedView } from './injector.ts';

export const injectorEvaporationView = placedView({
  id: 'injector-evaporation',
  question: 'Where does the fuel turn to vapour?',
  reading:
    'From the valve at the left to the mouth and beyond, at the highest speed: the share of the fuel injected that has evaporated by there, running inwards.',
  plot: (study, { scenario }) => injectFigures.evaporationPlot(study, scenario),
  table: injectTables.alongTable,
});
