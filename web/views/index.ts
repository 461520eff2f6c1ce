/** The views of the page, in the order in which a reader asks. */
import { efficiencyView } from './efficiency.ts';
import type { View } from './view.ts';

export const views: readonly View[] = [efficiencyView];
