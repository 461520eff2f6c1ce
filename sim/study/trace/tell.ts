/** What a trace holds, in words. */
import type { Trace } from '../../engine/trace.ts';
import { lengthIn, rpm } from '../../report/figures.ts';
import { counted } from '../../report/numbers.ts';
import { EFFICIENCY, told } from '../../report/quantities.ts';
import type { Report } from '../../report/report.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import { leadCautions } from '../cylinders.ts';
import { pressurePlot } from './figure.ts';
import { stationTable } from './tables.ts';

export function traceReport(trace: Trace, length: number, scenario: Scenario): Report {
  const { point, crankAngle } = trace;
  const { settled, cycles } = point;
  const after = `settled after ${counted(cycles, 'cycle')}`;
  return {
    about: 'One cycle',
    scenario,
    answer: [
      `One cycle at ${rpm(point.speed)} with trumpets of ${lengthIn(length, scenario.lengthUnit)}: ${counted(crankAngle.length, 'row')}.`,
      `Volumetric efficiency ${told(EFFICIENCY, point.volumetricEfficiency)}, ${settled ? after : `NOT ${after}: no answer yet`}.`,
      'Velocity and mass flow count positive the way the gas should go.',
    ],
    flags: leadCautions(scenario.engine),
    sections: [{ plots: [pressurePlot(trace)] }, { tables: [stationTable(trace)] }],
    length,
    outcomes: [point],
  };
}
