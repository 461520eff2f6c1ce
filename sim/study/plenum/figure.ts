/** Filling and torque of both ways over speed; what a sensor is under over filling. */
import { axes, type Plot, plotted } from '../../report/plot.ts';
import * as q from '../../report/quantities.ts';
import { plenumName } from '../banks.ts';
import { brakeTorqueOf } from '../fed.ts';
import { fedPlot, type NamedWay } from '../fedFigure.ts';
import { efficiencyOf } from '../points.ts';
import type { PlenumStudy, SensedPoint } from './compute.ts';
import { SENSED_SWING } from './tables.ts';

const waysOf = ({ plenum }: Pick<PlenumStudy, 'plenum'>) =>
  [
    { way: 'bodies', name: 'individual bodies', look: 'cut' },
    { way: 'plenum', name: plenumName(plenum), look: 'now' },
  ] as const;

const curvesOf = (study: PlenumStudy): NamedWay[] =>
  waysOf(study).map(({ way, ...named }) => ({
    ...named,
    curve: way === 'bodies' ? study.bodies : study.onPlenum,
  }));

export function bothPlot(study: PlenumStudy): Plot {
  return fedPlot(curvesOf(study), study, q.EFFICIENCY, efficiencyOf, {
    id: 'plenum-filling',
    caption: 'Full load: volumetric efficiency over engine speed',
    description:
      'Volumetric efficiency over engine speed with individual bodies and with a plenum.',
  });
}

export function torquePlot(study: PlenumStudy): Plot {
  const quantity = q.FLYWHEEL_TORQUE[study.lengthUnit];
  return fedPlot(curvesOf(study), study, quantity, brakeTorqueOf, {
    id: 'plenum-torque',
    caption: 'Full load: brake torque over engine speed',
    description:
      'Torque at the flywheel, less friction by a correlation, with individual bodies and with a plenum.',
  });
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
