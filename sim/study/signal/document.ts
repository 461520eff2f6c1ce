/** What the pressure sensor sees as a JSON document. */
import { auditOf } from '../../report/audit.ts';
import { documentHead } from '../../report/document.ts';
import { plain } from '../../report/numbers.ts';
import * as q from '../../report/quantities.ts';
import { asObject, asObjects } from '../../report/table.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import type { SignalStudy } from './compute.ts';
import {
  barsTable,
  LAG,
  loadTable,
  MEAN,
  OFFSET,
  plateErrorRow,
  pointsTable,
  RIPPLE,
  volumesTable,
} from './tables.ts';

export function signalDocument(study: SignalStudy, scenario: Scenario) {
  const { spec, answer, search, confirmed, plateError, step, outcomes } = study;
  return {
    ...documentHead('signal', scenario),
    hoses: spec.hoses,
    most_lag_ms: q.filed(LAG, spec.mostLag),
    step_from_kPa: q.filed(MEAN, step.from),
    step_to_kPa: q.filed(MEAN, step.to),
    lag_ms: q.filed(LAG, Number.isFinite(answer.lag) ? answer.lag : undefined),
    overshoot_fraction: plain(answer.overshoot),
    points: asObjects(pointsTable(study)),
    volumes: asObjects(volumesTable(study)),
    best: search.best ? asObject(barsTable(study, [search.best])) : null,
    best_in_time: confirmed
      ? {
          ripple_kPa: q.filed(RIPPLE, confirmed.ripple),
          offset_kPa: q.filed(OFFSET, confirmed.offset),
        }
      : null,
    unbeaten: asObjects(barsTable(study, search.unbeaten)),
    bigger_swings_more: search.worseThough.map(({ smaller, bigger }) => ({
      smaller: asObject(barsTable(study, [smaller])),
      bigger: asObject(barsTable(study, [bigger])),
    })),
    load: asObjects(loadTable(study)),
    one_plate_off: plateError ? plateErrorRow(plateError) : null,
    audit: auditOf(outcomes),
  };
}
