/** Whether and how the doubt in the inputs is carried through to the answer. */
import { choice, maybe, optional, section } from '../key.ts';
import type { ViewOf } from '../view.ts';

/** What is taken where nothing is said; more samples where there are many inputs. */
export const USUAL_UNCERTAINTY: Uncertainty = { samples: 64, seed: 1, byTrade: true };

export const uncertaintySection = optional(
  section(
    'Carry the spreads of the inputs through to the gain; leave the section out for a sweep without.',
    {
      samples: maybe('ratio', 'Engines drawn from the spreads.', {
        limits: ['16', '10000'],
        whole: true,
        absent: {
          value: String(USUAL_UNCERTAINTY.samples),
          why: 'gives the mean of the gain to an eighth of its spread; more where inputs are many',
        },
      }),
      seed: maybe('ratio', 'Whole number that fixes the sample.', {
        limits: ['0', '2000000000'],
        whole: true,
        absent: { value: String(USUAL_UNCERTAINTY.seed), why: 'any will do' },
      }),
      tradeSense: choice(
        ['yes', 'no'],
        'Whether inputs without a spread of their own take one by trade sense; see docs/decision.md.',
        { value: 'yes', why: 'no measurement is exact' },
      ),
    },
  ),
);

/** How the doubt is to be carried through. */
export interface Uncertainty {
  samples: number;
  seed: number;
  /** Whether inputs without a spread of their own take one by trade sense. */
  byTrade: boolean;
}

export function resolveUncertainty(at: ViewOf<typeof uncertaintySection>): Uncertainty | undefined {
  if (!at.here.present) return undefined;
  return {
    samples: at.samples.take(),
    seed: at.seed.take(),
    byTrade: at.tradeSense.take() === 'yes',
  };
}
