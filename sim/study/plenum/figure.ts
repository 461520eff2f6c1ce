/** Filling and torque of both ways over speed; what a sensor is under over filling. */
import { axes, type Plot, plotted } from '../../report/plot.ts';
import * as q from '../../report/quantities.ts';
import { plenumName } from '../banks.ts';
import { bandShades } from '../curve/figure.ts';
import { brakeAt } from '../fed.ts';
import { efficiencyOf } from '../points.ts';
import type { PlenumStudy, SensedPoint } from './compute.ts';
import { SENSED_SWING } from './tables.ts';

const waysOf = ({ plenum }: Pick<PlenumStudy, 'plenum'>) =>
  [
    { way: 'bodies', name: 'individual bodies', look: 'cut' },
    { way: 'plenum', name: plenumName(plenum), look: 'now' },
  ] as const;

export function bothPlot(study: PlenumStudy): Plot {
  const { speeds, target, bodies, onPlenum } = study;
  return {
    id: 'plenum-filling',
    caption: 'Full load: volumetric efficiency over engine speed',
    description:
      'Volumetric efficiency over engine speed with individual bodies and with a plenum.',
    ...axes(q.SPEED, q.EFFICIENCY),
    series: waysOf(study).map(({ way, name, look }) => ({
      name,
      look,
      xs: speeds,
      ys: plotted(q.EFFICIENCY, (way === 'bodies' ? bodies : onPlenum).outcomes.map(efficiencyOf)),
    })),
    bands: bandShades(target),
  };
}

export function torquePlot(study: PlenumStudy): Plot {
  const { speeds, target, bodies, onPlenum, lengthUnit } = study;
  const quantity = q.FLYWHEEL_TORQUE[lengthUnit];
  return {
    id: 'plenum-torque',
    caption: 'Full load: brake torque over engine speed',
    description:
      'Torque at the flywheel, less friction by a correlation, with individual bodies and with a plenum.',
    ...axes(q.SPEED, quantity),
    series: waysOf(study).map(({ way, name, look }) => ({
      name,
      look,
      xs: speeds,
      ys: plotted(
        quantity,
        speeds.map((_, i) => brakeAt(way === 'bodies' ? bodies : onPlenum, i)?.torque),
      ),
    })),
    bands: bandShades(target),
  };
}

/** Swing over filling, both ways at the lowest speed. */
export function swingPlot(study: PlenumStudy): Plot {
  const { part, speeds } = study;
  const rows = part.filter(({ speed }) => speed === speeds[0]);
  const own = (way: SensedPoint['way']) => rows.filter((row) => row.way === way);
  return {
    id: 'plenum-swing',
    caption: `What a pressure sensor is under at ${q.told(q.SPEED, speeds[0]!)}`,
    description:
      'Swing of the pressure behind one plate and in the plenum over volumetric efficiency, from a plate nearly shut to wide open.',
    ...axes(q.EFFICIENCY, SENSED_SWING),
    series: waysOf(study).map(({ way, name, look }) => ({
      name,
      look,
      xs: plotted(
        q.EFFICIENCY,
        own(way).map(({ outcome }) => efficiencyOf(outcome)),
      ),
      ys: plotted(
        SENSED_SWING,
        own(way).map(({ swing }) => swing),
      ),
    })),
  };
}
