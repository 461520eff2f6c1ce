/** Which sensor to trust: a flow meter in the snorkel, the pressure behind the throttles, or their angle. */
import { METER_CAUTIONS, meterFigures, meterSentences, meterTables } from '../../sim/index.ts';
import { Cautions } from '../parts/Cautions.tsx';
import { metering } from '../state/metering.ts';
import { askedView } from './asked.tsx';

export const meterView = askedView({
  id: 'meter',
  question: 'Which sensor tells the air?',
  width: 'wide',
  height: 420,
  study: metering,
  applies: () => true,
  reading:
    'Error of the air by a flow meter in the inlet of a box over the trumpets, by pressure and by throttle angle, where the meter is worst. Where the file has no section airbox or meter, usual sizes are taken.',
  sentences: meterSentences,
  plot: meterFigures.errorsPlot,
  table: meterTables.trustTable,
  decimals: 1,
  ask: {
    label: 'Weigh the sensors',
    cost: ({ scenario: { meter } }) =>
      `${meter.speeds.length * meter.angles.length} cycles with all cylinders in a box: ten seconds of two cores.`,
    ready: ({ study }) => study.full !== undefined,
  },
  Below: () => <Cautions items={METER_CAUTIONS} />,
});
