/** What the outer injector does to the air, one effect at a time. */
import { injectFigures, injectTables } from '../../sim/index.ts';
import { placedView } from './injector.ts';

export const injectorSplitView = placedView({
  id: 'injector-split',
  question: 'Is its gain cooling, or does the fuel take room?',
  reading:
    'Change of filling by the outer injector against fuel that evaporates only in the cylinder. Cooling packs the air, vapour takes its room, and colder, heavier gas shifts the wave to lower speeds.',
  plot: injectFigures.splitPlot,
  table: injectTables.splitTable,
  decimals: 2,
});
