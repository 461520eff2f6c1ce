/** What is heard, over speed and by engine orders. */
import { lengthIn } from '../../report/figures.ts';
import { axes, type Plot, type PlotLook, plotted } from '../../report/plot.ts';
import { decibels, decibelsA, ORDER, SPEED } from '../../report/quantities.ts';
import { orderOf } from '../../sound/orders.ts';
import { type ListenStudy, NEAR } from './compute.ts';
import { heardA, orderLevel, ordersHeld } from './tables.ts';

const LOOKS: readonly PlotLook[] = ['now', 'cut'];

export function levelPlot({ lengths, lengthUnit }: ListenStudy): Plot {
  const level = decibelsA('', `level at ${NEAR} m`);
  return {
    id: 'levels',
    caption: `Level of the intake alone at ${NEAR} m, full load`,
    description: 'Sound level by weighting A half a metre from what sounds, over engine speed.',
    ...axes(SPEED, level),
    series: lengths.map(({ length, points }, i) => ({
      name: lengthIn(length, lengthUnit),
      xs: points.map(({ outcome }) => outcome.speed),
      ys: plotted(
        level,
        points.map((point) => heardA(point, 'near')),
      ),
      look: LOOKS[i]!,
    })),
  };
}

/** Orders further below the loudest than this are left out of the picture [dB]. */
const DEPTH = 60;

export function ordersPlot({ lengths, speed, lengthUnit }: ListenStudy): Plot {
  const level = decibels('', `level at ${NEAR} m`);
  const all = lengths.map((one) => ordersHeld(one, speed));
  const loudest = Math.max(...all.flat().map(orderLevel));
  return {
    id: 'orders',
    caption: `Engine orders at ${speed} rpm`,
    description: `Unweighted level of every engine order, half a metre from what sounds; those ${DEPTH} dB below the loudest are left out.`,
    ...axes(ORDER, level),
    series: all.map((orders, i) => {
      const heard = orders.filter((one) => orderLevel(one) > loudest - DEPTH);
      return {
        name: lengthIn(lengths[i]!.length, lengthUnit),
        xs: heard.map(({ entry }) => orderOf(entry)),
        ys: plotted(level, heard.map(orderLevel)),
        look: LOOKS[i]!,
      };
    }),
  };
}
