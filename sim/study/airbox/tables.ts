/** Trumpets in the open beside a box as tables and as a JSON document. */
import { auditOf } from '../../report/audit.ts';
import { documentHead } from '../../report/document.ts';
import * as q from '../../report/quantities.ts';
import {
  asObject,
  asObjects,
  type Column,
  column,
  type Table,
  tableOf,
  words,
} from '../../report/table.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import { isFailure, type PointOutcome } from '../../sweep/runner.ts';
import { bankColumns } from '../banks.ts';
import { together } from '../contest.ts';
import { spreadOf } from '../cylinders.ts';
import { brakeAt, gainOf } from '../fed.ts';
import { efficiencyOf, REMARK, remarksOf } from '../points.ts';
import { resolutionDocument } from '../resolution.ts';
import { targetDocument, tradeOffDocument } from '../tradeOffs.ts';
import { type AirboxStudy, airboxOutcomes, type BoxedLength } from './compute.ts';

export const GAIN = q.signedShare(
  'box_over_open_fraction',
  'box gives',
  "filling in the box over the open's",
);
const MEAN = q.kilopascals('box_mean_kPa', 'p box', { name: 'mean pressure in the box' });
export const SWING = q.kilopascals('box_swing_kPa', 'its swing', {
  name: 'swing of the pressure in the box',
  decimals: 2,
});
export const SPREAD = q.percentOf('box_spread_fraction', 'spread', {
  name: 'filling of the cylinders in the box, most less least',
});
const [VE_OPEN, VE_BOX] = (['open', 'box'] as const).map((where) => ({
  ...q.EFFICIENCY,
  key: `${where}_${q.EFFICIENCY.key}`,
  head: `VE ${where}`,
}));

/** One row a speed, full load. */
export function airboxTable({ speeds, open, boxed, inBox, lengthUnit }: AirboxStudy): Table {
  const power = q.FLYWHEEL_POWER[lengthUnit];
  const remark = (i: number) => remarksOf({ open: open.outcomes[i]!, box: boxed.outcomes[i]! });
  return tableOf<number>(
    'Full load, in the open and in the box',
    [
      column(q.SPEED, (i) => speeds[i]),
      column(VE_OPEN!, (i) => efficiencyOf(open.outcomes[i]!)),
      column(VE_BOX!, (i) => efficiencyOf(boxed.outcomes[i]!)),
      column(GAIN, (i) => gainOf(boxed.outcomes[i]!, open.outcomes[i]!)),
      column(
        { ...power, key: `open_${power.key}`, head: 'power open' },
        (i) => brakeAt(open, i)?.power,
      ),
      column(
        { ...power, key: `box_${power.key}`, head: 'power box' },
        (i) => brakeAt(boxed, i)?.power,
      ),
      column(MEAN, (i) => inBox[i]?.mean),
      column(SWING, (i) => inBox[i]?.swing),
      column(SPREAD, (i) => spreadOf(boxed.outcomes[i]!)),
      words('remark', '', remark, REMARK),
    ],
    [...speeds.keys()],
  );
}

/** One row a length tried. */
export function boxedLengthsTable({ lengths, lengthUnit, target, best }: AirboxStudy): Table {
  const mean = q.bandMean(target.score);
  const remark = ({ length, coarse }: BoxedLength) =>
    [
      length === best?.open ? 'best in the open' : '',
      length === best?.boxed ? 'best in the box' : '',
      coarseWords(coarse),
    ]
      .filter(Boolean)
      .join(', ');
  return tableOf<BoxedLength>(
    'Every length in the band',
    [
      column(q.lengthQuantity(lengthUnit), ({ length }) => length),
      column({ ...mean, key: `open_${mean.key}`, head: 'open' }, ({ open }) => open),
      column({ ...mean, key: `box_${mean.key}`, head: 'box' }, ({ boxed }) => boxed),
      words('remark', '', remark, REMARK),
    ],
    lengths,
    ({ length }) => (length === best?.boxed ? 'cut' : ''),
  );
}

const coarseWords = ({ open, boxed }: BoxedLength['coarse']) =>
  open && boxed ? 'coarse' : open ? 'coarse in the open' : boxed ? 'coarse in the box' : '';

/** A cylinder in the box at one speed. */
interface Boxed {
  speed: number;
  /** Its number. */
  number: number;
  /** Along its row from the inlet's end, from 1. */
  place: number;
  filling: number;
}

const PLACE = { ...q.CYLINDER, key: 'place_along_row', head: 'place', name: 'place along the row' };

/** One row a speed and cylinder, by its place along the row; its number where the file says who fires when. */
export function cylindersTable({ airbox, boxed, open }: AirboxStudy): Table {
  const places = airbox.row?.places;
  const rows = boxed.outcomes.flatMap((one: PointOutcome): Boxed[] => {
    if (isFailure(one) || !one.cylinders || !places) return [];
    return one.cylinders
      .map(({ volumetricEfficiency: filling, numbers }, i) => ({
        speed: one.speed,
        number: numbers[0]!,
        place: places[i]! + 1,
        filling,
      }))
      .toSorted((a, b) => a.place - b.place || a.number - b.number);
  });
  return tableOf<Boxed>(
    'Every cylinder in the box',
    [
      column(q.SPEED, ({ speed }) => speed),
      ...(open.engine.firing ? [column<Boxed>(q.CYLINDER, ({ number }) => number)] : []),
      column(PLACE, ({ place }) => place),
      column(q.EFFICIENCY, ({ filling }) => filling),
    ],
    rows,
  );
}

const SIZES: readonly Column<AirboxStudy['airbox']>[] = [
  column(q.cubicCentimetres('box_volume_cm3', 'volume'), ({ volume }) => volume),
  column(q.boreOf('snorkel_length_mm', 'snorkel'), ({ snorkelLength }) => snorkelLength),
  column(q.boreOf('snorkel_bore_mm', 'its bore'), ({ snorkelDiameter }) => snorkelDiameter),
  column(q.ratio('filter_loss', 'its loss'), ({ filterLoss }) => filterLoss),
];

export function boxTable({ airbox }: AirboxStudy): Table {
  return tableOf('The box', [...SIZES, ...bankColumns(airbox)], [airbox]);
}

export function airboxDocument(study: AirboxStudy, scenario: Scenario) {
  const { airbox, target, weighed, open, best, free, resolutions } = study;
  return {
    ...documentHead('airbox', scenario),
    length_mm: q.filed(q.LENGTH, open.engine.intake.trumpet.length),
    airbox_given: airbox.given,
    airbox: asObject(boxTable(study)),
    target: targetDocument(target),
    full_load: asObjects(airboxTable(study)),
    box_against_open: tradeOffDocument(weighed, target.score),
    ...(resolutions && { resolution: resolutionDocument(together(Object.values(resolutions))) }),
    ...(free && {
      box_over_open_fraction_unboosted: free.boxed.map((one, i) =>
        q.filed(GAIN, gainOf(one, free.open[i]!)),
      ),
    }),
    cylinders: asObjects(cylindersTable(study)),
    lengths: asObjects(boxedLengthsTable(study)),
    best_open_length_mm: q.filed(q.LENGTH, best?.open),
    best_box_length_mm: q.filed(q.LENGTH, best?.boxed),
    audit: auditOf(airboxOutcomes(study)),
  };
}
