/** Views of the injectors that stand beside their finished study. */
import type { PlacementStudy, Plot, Table } from '../../sim/index.ts';
import type { View } from '../drawing/view.ts';
import type { Picture } from '../state/picture.ts';
import { isPlaced, placement } from '../state/placement.ts';
import { askedView } from './asked.tsx';

interface Placed extends Pick<View, 'id' | 'question'> {
  reading: string;
  plot(study: PlacementStudy, picture: Picture): Plot;
  table(study: PlacementStudy): Table;
  decimals?: number;
}

export const placedView = (placed: Placed): View =>
  askedView({ ...placed, width: 'half', height: 420, study: placement, applies: isPlaced });
