/** How quickly torque follows the plates. */
import {
  RESPONSE_CAUTIONS,
  responsePlot,
  responseSentences,
  responseTable,
} from '../../sim/index.ts';
import { Cautions } from '../parts/Cautions.tsx';
import { following } from '../state/response.ts';
import { askedView } from './asked.tsx';

export const responseView = askedView({
  id: 'response',
  question: 'How quickly does torque follow the throttles?',
  width: 'wide',
  height: 420,
  study: following,
  applies: () => true,
  reading:
    'Every firing after the throttles are opened at the lowest speed: bodies where they stand, near the valve and far from it, in a box, and one throttle with a plenum.',
  sentences: responseSentences,
  plot: responsePlot,
  table: responseTable,
  decimals: 0,
  ask: {
    label: 'Open the throttles',
    cost: () =>
      'Up to five engines settled at six openings and followed for ten cycles: ten seconds of two cores.',
  },
  Below: () => <Cautions items={RESPONSE_CAUTIONS} />,
});
