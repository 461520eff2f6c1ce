/** What curves give and take against one another, as columns and as parts of JSON documents. */
import { bandsOf, type Score, type Target } from '../decision/target.ts';
import type { TradeOff } from '../decision/tradeOff.ts';
import { plain } from '../report/numbers.ts';
import * as q from '../report/quantities.ts';
import { asObject, type Column, column, tableOf, words } from '../report/table.ts';

/** What the short heads mean. */
export const TRADE_OFF_NOTE =
  'Worst loss: outside the band. Loss in band: the worst there. Least: in the band.';

/** Columns of what a curve gives and takes; those of the baseline itself have no gain. */
export function tradeOffColumns<Row extends TradeOff>(
  score: Score | undefined,
  isBaseline: (row: Row) => boolean = () => false,
): Column<Row>[] {
  return [
    column<Row>(q.bandMean(score), (row) => row.bandMean),
    column<Row>(q.GAIN, (row) => (isBaseline(row) ? undefined : row.gainPercent)),
    column<Row>(q.WORST_LOSS, (row) => row.worstLossPercent),
    column<Row>(q.AT_SPEED, (row) => row.worstLossSpeed),
    column<Row>(q.FELT_LOSS, (row) => row.feltLossPercent, { only: 'files' }),
    column<Row>(q.BAND_LOSS, (row) => row.bandLossPercent),
    column<Row>(q.BAND_LOSS_SPEED, (row) => row.bandLossSpeed),
    column<Row>(q.FELT_BAND_LOSS, (row) => row.feltBandLossPercent, { only: 'files' }),
    column<Row>(q.leastInBand(score), (row) => row.least),
    column<Row>(q.LEAST_SPEED, (row) => row.leastSpeed, { only: 'files' }),
    column<Row>(q.AREA, (row) => row.area, { only: 'files' }),
    words<Row>('meets_floors', '', (row) => row.meetsFloors, { only: 'files' }),
  ];
}

/** The same of one curve, for a document; in the unit of the target's score. */
export function tradeOffDocument(tradeOff: TradeOff, score: Score | undefined) {
  return {
    ...asObject(tableOf<TradeOff>('', tradeOffColumns(score), [tradeOff])),
    floor_margins_percent: tradeOff.floors.map((floor) => plain(floor.marginPercent)),
    floor_margins_felt_percent: tradeOff.floors.map((floor) => plain(floor.feltMarginPercent)),
    floor_margins_near: tradeOff.floors.map(({ near }) => ({
      at_rpm: plain(near.speed),
      margin_percent: plain(near.marginPercent),
    })),
    stretches: tradeOff.stretches.map(({ from, to, changePercent, speed }) => ({
      from_rpm: plain(from),
      to_rpm: plain(to),
      change_percent: plain(changePercent),
      at_rpm: plain(speed),
    })),
  };
}

export function targetDocument(target: Target) {
  return {
    from_rpm: target.from,
    to_rpm: target.to,
    ...(target.weights && {
      weights: target.weights.map(({ speed, weight }) => ({ speed_rpm: speed, weight })),
    }),
    score: target.score ?? 'volumetric-efficiency',
    bands: bandsOf(target).map(({ from, to, weight }) => ({
      from_rpm: plain(from),
      to_rpm: plain(to),
      weight: weight ?? 1,
    })),
    floors: (target.floors ?? []).map(({ speed, least, mostLossPercent }) => ({
      speed_rpm: speed,
      ...(least !== undefined && { least }),
      ...(mostLossPercent !== undefined && { most_loss_percent: mostLossPercent }),
    })),
  };
}
