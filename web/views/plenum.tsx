/** Individual bodies beside one throttle and a plenum on the same engine. */
import { PLENUM_CAUTIONS, plenumFigures, plenumSentences, plenumTables } from '../../sim/index.ts';
import { Cautions } from '../parts/Cautions.tsx';
import { besidePlenum } from '../state/plenum.ts';
import { askedView } from './asked.tsx';

export const plenumView = askedView({
  id: 'plenum',
  question: 'Do individual bodies beat one throttle and a plenum?',
  width: 'wide',
  height: 420,
  study: besidePlenum,
  applies: () => true,
  reading:
    'Full load, the trumpets recommended against one throttle and a plenum, all cylinders of which are solved together. Where the file has no section plenum, usual sizes are taken.',
  sentences: plenumSentences,
  plot: plenumFigures.bothPlot,
  table: plenumTables.plenumTable,
  ask: {
    label: 'Weigh against a plenum',
    cost: () => 'Every speed with both, and a few at part throttle: half a minute of two cores.',
    ready: ({ study }) => study.full !== undefined,
  },
  Below: () => <Cautions items={PLENUM_CAUTIONS} />,
});
