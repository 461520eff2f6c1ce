/** How finely and how long to compute; no builder needs it. */
import { FLUXES, LIMITERS } from '../../engine/numerics.ts';
import type { NumericsSpecification } from '../../specification.ts';
import { choice, maybe, optional, section } from '../key.ts';
import { takeAll, type ViewOf } from '../view.ts';

const CHOSEN =
  'volumetric efficiency within 0.2 % of that of a quarter of the cells, root mean square: npm run bench -- errors';

export const numericsSection = optional(
  section('How finely and how long to compute.', {
    intakeCell: maybe(
      'length',
      'Largest cell of the intake; waves of an engine that turns twice as fast are half as long.',
      {
        limits: ['0.5 mm', '50 mm'],
        usual: ['1 mm', '20 mm'],
        absent: { value: '16 mm', why: CHOSEN },
      },
    ),
    exhaustCell: maybe('length', 'Largest cell of the exhaust.', {
      limits: ['0.5 mm', '200 mm'],
      usual: ['1 mm', '50 mm'],
      absent: { value: '30 mm', why: CHOSEN },
    }),
    courant: maybe('ratio', 'Courant number.', {
      limits: ['0.05', '1'],
      absent: { value: '0.98', why: 'just below the limit of 1 of the scheme' },
    }),
    limiter: choice(Object.keys(LIMITERS), 'Slope limiter.', {
      value: 'theta-1.7',
      why: 'sharpest that keeps mass fractions in bounds and a standing shock still: tests/exact, tests/conservation',
    }),
    flux: choice([...FLUXES], 'Numerical flux.', {
      value: 'hllc',
      why: 'keeps contacts sharp, Toro (2009) ch. 10',
    }),
    settle: maybe('ratio', 'Change from cycle to cycle at which a point has settled.', {
      limits: ['0.000001', '0.05'],
      usual: ['0.00001', '0.005'],
      absent: {
        value: '0.001',
        why: 'a tenth of what a dyno resolves; common practice, no source',
      },
    }),
    maximumCycles: maybe(
      'ratio',
      'Cycles after which a point is given up; with injectors 25 at most.',
      {
        limits: ['2', '500'],
        whole: true,
        absent: {
          value: '100',
          why: 'nearly shut plates take some 40, most points settle well before: load',
        },
      },
    ),
  }),
);

export function resolveNumerics(at: ViewOf<typeof numericsSection>): NumericsSpecification {
  return takeAll(at);
}
