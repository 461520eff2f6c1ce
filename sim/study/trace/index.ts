/** `trace`: one cycle at one speed against crank angle. */
import { ComputationError } from '../../errors.ts';
import { withLength } from '../../sweep/sweep.ts';
import { LENGTH_OPTION } from '../options.ts';
import type { Study } from '../study.ts';
import { askedTrace, TRACE_OPTIONS } from './ask.ts';
import { cycleTable, traceDocument } from './tables.ts';
import { traceReport } from './tell.ts';

export const traceStudy: Study = {
  name: 'trace',
  help: 'one cycle at one speed against crank angle',
  options: [LENGTH_OPTION, ...TRACE_OPTIONS],
  open(asked) {
    const { scenario } = asked;
    const { length, speed, stations } = askedTrace(asked);
    return {
      width: 1,
      async run(computer) {
        const engine = withLength(scenario.engine, length);
        const trace = await computer.task('trace', { engine, speed, stations });
        if ('failure' in trace) throw new ComputationError(trace.failure);
        return {
          stem: 'trace',
          document: traceDocument(trace, length, scenario),
          report: traceReport(trace, length, scenario),
          tables: { 'trace.csv': cycleTable(trace) },
          sound: trace.point.settled,
        };
      },
    };
  },
};
