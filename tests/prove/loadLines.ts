/**
 * What straight lines of a table of load err at least: the demo four's air on many more angles and speeds than a table
 * has, and of those the speeds, and the angles, that serve lines best (sim/decision/lineKnots.ts); beside them the
 * table that `load` made, given as its folder. Minutes to half an hour; docs/load.md quotes it.
 *
 *   node --import tsx tests/prove/loadLines.ts out 61 50
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { lineError, lineKnots } from '../../sim/decision/lineKnots.ts';
import { transposed } from '../../sim/decision/loadGrid.ts';
import { interpolateLinear } from '../../sim/interpolation.ts';
import { airOf, withAngle } from '../../sim/study/load/cell.ts';
import { idleAngle } from '../../sim/study/load/compute.ts';
import { runSpeedsJob } from '../../sim/sweep/runner.ts';
import { demo } from '../scenario.ts';

const [folder = 'out', count = '61', step = '50'] = process.argv.slice(2);
const { engine } = demo('hill-climb');
const table = JSON.parse(readFileSync(join(folder, 'load.json'), 'utf8'));
const own = { angles: table.plate_deg as number[], speeds: table.speeds_rpm as number[] };
const most = 16;

const stop = engine.intake.throttle.closedAngle;
const least = idleAngle(engine) - stop;
const angles = Array.from({ length: Number(count) }, (_, i) => {
  const angle = stop + least * ((90 - stop) / least) ** (i / (Number(count) - 1));
  return Math.round(20 * angle) / 20;
}).filter((angle, i, all) => angle !== all[i - 1]);
const [from, to] = [own.speeds[0]!, own.speeds.at(-1)!];
const speeds = Array.from(
  { length: 1 + (to - from) / Number(step) },
  (_, i) => from + i * Number(step),
);
const air = angles.map((angle) =>
  runSpeedsJob({ engine: withAngle(engine, angle), speeds, hastened: true }).map(airOf),
);

const percent = (share: number) => `${(100 * share).toFixed(1)} %`;
const worstLine = (xs: readonly number[], rows: number[][], kept: readonly number[]) =>
  Math.max(...kept.slice(1).map((k, i) => lineError(xs, rows, kept[i]!, k).error));

/** Errors of a table with values at some angles and speeds, at every place computed. */
function errors(
  rows: readonly number[],
  columns: readonly number[],
  value: (i: number, j: number) => number,
) {
  return angles.flatMap((angle, i) =>
    speeds.map((speed, j) => {
      const along = rows.map((_, r) =>
        interpolateLinear(
          columns,
          columns.map((_, c) => value(r, c)),
          speed,
        ),
      );
      const error = interpolateLinear(rows, along, angle) / air[i]![j]! - 1;
      return { angle, speed, error: Math.abs(error) };
    }),
  );
}

function told(name: string, all: ReturnType<typeof errors>): void {
  const sorted = [...all].sort((a, b) => a.error - b.error);
  const rms = Math.sqrt(all.reduce((sum, { error }) => sum + error * error, 0) / all.length);
  const { angle, speed, error } = sorted.at(-1)!;
  const hundredth = sorted[Math.floor(0.99 * sorted.length)]!.error;
  console.log(
    `${name}: rms ${percent(rms)}, beyond ${percent(hundredth)} in a hundredth, worst ${percent(error)} at ${angle} deg and ${speed} rpm`,
  );
}

const columns = lineKnots(speeds, air, { limit: 0, most });
const rows = lineKnots(angles, transposed(air), { limit: 0, most });
console.log(`${angles.length} angles by ${speeds.length} speeds`);
for (const count of [most, 2 * most]) {
  const [ofSpeeds, ofAngles] = [
    worstLine(speeds, air, lineKnots(speeds, air, { limit: 0, most: count })),
    worstLine(
      angles,
      transposed(air),
      lineKnots(angles, transposed(air), { limit: 0, most: count }),
    ),
  ];
  console.log(`no ${count} speeds err by less than ${percent(ofSpeeds)}, with every angle a row`);
  console.log(
    `no ${count} angles err by less than ${percent(ofAngles)}, with every speed a column`,
  );
}
const open = [air.at(-1)!];
const leastOpen = worstLine(speeds, open, lineKnots(speeds, open, { limit: 0, most }));
console.log(
  `no ${most} speeds err by less than ${percent(leastOpen)} along the row wide open, which every table has`,
);
const wanted = lineKnots(speeds, air, { limit: 0.01, most: speeds.length });
console.log(`1 % wants ${wanted.length} speeds, with every angle a row`);
told(
  'these angles by these speeds',
  errors(
    rows.map((i) => angles[i]!),
    columns.map((j) => speeds[j]!),
    (r, c) => air[rows[r]!]![columns[c]!]!,
  ),
);
const filling = table.cells.volumetric_efficiency as number[];
told(
  'load',
  errors(own.angles, own.speeds, (r, c) => filling[r * own.speeds.length + c]!),
);
