/** What a sweep of lengths shows: curves against speed, and each length's worth. */
import { lengthIn } from '../../report/figures.ts';
import { axes, type Plot, plotted, type Series } from '../../report/plot.ts';
import { bandMean, lengthQuantity } from '../../report/quantities.ts';
import { allPoints, type LengthCurve } from '../../sweep/sweep.ts';
import { fillingPlot, type NamedCurve, smoothLine } from '../curve/figure.ts';
import type { LengthStudy } from './compute.ts';

/** The recommended length, the one fitted now, and the ends of the sweep as a backdrop. */
export function studyPlot(study: LengthStudy): Plot {
  const { recommended, baseline, tried, target, resolution, unit } = study;
  const curve = (of: LengthCurve, look: NamedCurve['look'], word: string): NamedCurve => ({
    name: `${lengthIn(of.length, unit)}${word}`,
    look,
    outcomes: allPoints(of),
    // Where others are smooth, what is not known between its points is no straight line.
    ...(resolution && { line: smoothLine(of, study) }),
  });
  const drawn = new Set([recommended.length, baseline.length]);
  const ends = [tried[0]!, tried.at(-1)!].filter(({ length }) => !drawn.has(length));
  const keep = recommended.length === baseline.length;
  const curves = [
    ...ends.map((end) => curve(end, 'other', '')),
    ...(keep ? [] : [curve(baseline, 'now', ' fitted now')]),
    curve(recommended, 'cut', keep ? ' keep' : ' take this'),
  ];
  return fillingPlot(curves, target);
}

/** The mean of every length, with the one recommended and the one fitted now picked out. */
export function worthPlot({ weighed, recommended, baseline, target, unit }: LengthStudy): Plot {
  const quantity = bandMean(target.score);
  const along = lengthQuantity(unit);
  const series = (look: Series['look'], name: string, wanted?: number): Series => {
    const rows = weighed.filter(({ length }) => wanted === undefined || length === wanted);
    const xs = plotted(
      along,
      rows.map(({ length }) => length),
    );
    return {
      name,
      look,
      xs,
      ys: plotted(
        quantity,
        rows.map((row) => row.bandMean),
      ),
    };
  };
  const keep = recommended.length === baseline.length;
  return {
    id: 'worth',
    caption: 'What each length is worth in the band',
    description:
      'What each trumpet length is worth in the band. The figures stand in the table below.',
    ...axes(along, quantity),
    series: [
      series('other', ''),
      ...(keep ? [] : [series('now', 'fitted now', baseline.length)]),
      series('cut', keep ? 'keep' : 'take this', recommended.length),
    ],
  };
}
