/** The whole engine against Taylor's inlet Mach index. */
import { efficiencyAtIndex, INDICES, kneeOf } from './cases/machIndex.ts';
import { absolute, type Check } from './check.ts';

export const machIndexChecks: Check[] = [
  {
    what: 'whole engine without pipes: inlet Mach index Z at which volumetric efficiency turns down',
    by: 'solver',
    source: 'taylor',
    published: [0.55, 0.75],
    tolerance: absolute(0),
    run: () => kneeOf(efficiencyAtIndex(INDICES)),
  },
];
