/** Views of the injectors: a plot and a table of the study, once it has been worked out. */
import type { PlacementStudy, Plot } from '../../sim/index.ts';
import { drawn } from '../drawing/draw.ts';
import type { Table } from '../drawing/table.ts';
import type { View } from '../drawing/view.ts';
import type { Picture } from '../state/picture.ts';
import { isPlaced, placed, placement } from '../state/placement.ts';

interface Placed extends Pick<View, 'id' | 'question' | 'height'> {
  reading: string;
  plot(study: PlacementStudy, picture: Picture): Plot;
  table(study: PlacementStudy): Table;
  /** Decimals under the pointer. */
  decimals?: number;
}

export function placedView({ plot, table, reading, decimals, ...rest }: Placed): View {
  return {
    width: 'half',
    height: 420,
    ...rest,
    asked: true,
    applies: isPlaced,
    reading: () => reading,
    summary: (picture) => plot(placed()!, picture).description,
    ready: () => placed() !== undefined,
    figure: (picture, look) => drawn(plot(placed()!, picture), look, decimals),
    table: () => table(placed()!),
    watch: () => [placement.state.value],
  };
}
