/** One cycle against crank angle as tables and as a JSON document. */
import type { StationTrace, Trace } from '../../engine/trace.ts';
import { auditOf } from '../../report/audit.ts';
import { documentHead } from '../../report/document.ts';
import { plain } from '../../report/numbers.ts';
import * as q from '../../report/quantities.ts';
import { asColumns, type Column, column, tableOf, words } from '../../report/table.ts';
import type { Scenario } from '../../scenario/resolve.ts';

/** A quantity under a name of its own, as of a cylinder or a station. */
const named = (name: string, quantity: q.Quantity): q.Quantity => ({
  ...quantity,
  key: `${name}_${quantity.key}`,
  head: `${name} ${quantity.head}`,
});

const CYLINDER: readonly Column<readonly [Trace, number]>[] = [
  column(q.CRANK_ANGLE, ([{ crankAngle }, i]) => crankAngle[i]),
  column(named('cylinder', q.PRESSURE), ([{ cylinderPressure }, i]) => cylinderPressure[i]),
  column(
    named('cylinder', q.TEMPERATURE),
    ([{ cylinderTemperature }, i]) => cylinderTemperature[i],
  ),
  column(named('intake', q.LIFT), ([{ intakeLift }, i]) => intakeLift[i]),
  column(named('exhaust', q.LIFT), ([{ exhaustLift }, i]) => exhaustLift[i]),
];

const GAS = [
  [q.PRESSURE, 'pressure'],
  [q.VELOCITY, 'velocity'],
  [q.MASS_FLOW, 'massFlow'],
  [q.TEMPERATURE, 'temperature'],
] as const;

const rowsOf = (trace: Trace) => trace.crankAngle.map((_, i) => [trace, i] as const);

/** One row a crank angle, 0 at firing. */
export function cycleTable(trace: Trace) {
  const stations = trace.stations.flatMap(({ name }, k) =>
    GAS.map(
      ([quantity, figure]): Column<readonly [Trace, number]> =>
        column(named(name, quantity), ([{ stations: all }, i]) => all[k]![figure][i]),
    ),
  );
  return tableOf('One cycle', [...CYLINDER, ...stations], rowsOf(trace));
}

/** One row a station: from where to where each figure goes. */
export function stationTable({ stations }: Trace) {
  const range = (quantity: q.Quantity, of: (station: StationTrace) => readonly number[]) => {
    const column = words<StationTrace>(quantity.key, quantity.head, (station) => {
      const ends = [Math.min(...of(station)), Math.max(...of(station))];
      return ends.map((end) => q.shown(quantity, end)).join(' to ');
    });
    return { ...column, unit: quantity.unit };
  };
  return tableOf<StationTrace>(
    'Every station',
    [
      words('station', 'station', ({ name }) => name),
      ...GAS.map(([quantity, figure]) => range(quantity, (station) => station[figure])),
    ],
    stations,
  );
}

export function traceDocument(trace: Trace, length: number, scenario: Scenario) {
  const { point } = trace;
  return {
    ...documentHead('trace', scenario),
    length_mm: q.filed(q.LENGTH, length),
    speed_rpm: point.speed,
    volumetric_efficiency: plain(point.volumetricEfficiency),
    settled: point.settled,
    cycles: point.cycles,
    ...asColumns(tableOf('', CYLINDER, rowsOf(trace))),
    stations: trace.stations.map((station) => ({
      name: station.name,
      ...Object.fromEntries(
        GAS.map(([quantity, figure]) => [
          quantity.key,
          station[figure].map((value) => q.filed(quantity, value)),
        ]),
      ),
    })),
    audit: auditOf([point]),
  };
}
