/** The study of injector placement as a JSON document. */

import { difference } from '../../decision/placementEffects.ts';
import { auditOf } from '../../report/audit.ts';
import { documentHead } from '../../report/document.ts';
import { plain } from '../../report/numbers.ts';
import { asColumns, asObjects, tableOf } from '../../report/table.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import type { Placement } from './ask.ts';
import { type PlacementStudy, placementOutcomes } from './compute.ts';
import { alongTable, partLoadTable, pulsesTable, SPRAYED, splitTable } from './tables.ts';
import { triedDocument } from './tellTried.ts';

export function placementDocument(study: PlacementStudy, scenario: Scenario) {
  const { outcomes, speeds, uncertainty, choice, partLoad } = study;
  const gain = (placement: Placement) =>
    speeds.map((_, i) => plain(difference(outcomes[placement][i]!, outcomes.near[i]!)));
  const placements = Object.entries(outcomes).map(([name, points]) => [
    name,
    asColumns(tableOf(name, SPRAYED, points)),
  ]);
  const { speeds_rpm: _, ...effects } = asColumns(splitTable(study));
  return {
    ...documentHead('inject', scenario),
    speeds_rpm: speeds,
    injectors: { near: study.near, above: study.above },
    placements: Object.fromEntries(placements),
    staged_outer_share: study.stagedShare.map(plain),
    gain_above_over_near: gain('above'),
    gain_both_over_near: gain('both'),
    effect_of_above: effects,
    uncertainty: {
      volumetric_efficiency: plain(uncertainty.value),
      drop_size: plain(uncertainty.dropSize),
      scatter: plain(uncertainty.scatter),
      at_rpm: uncertainty.speeds,
    },
    recommended: recommended(choice),
    part_load: {
      speed_rpm: partLoad.speed,
      throttle_angle_deg: partLoad.throttleAngle,
      points: asObjects(partLoadTable(study)),
    },
    pulses: asObjects(pulsesTable(study)),
    evaporation_along_intake: asColumns(alongTable(study)),
    ...(study.tried && { tried: triedDocument(study.tried, outcomes[study.tried.placement]) }),
    audit: auditOf(placementOutcomes(study)),
  };
}

const recommended = (choice: PlacementStudy['choice']) => ({
  outer_share: choice.share.map(plain),
  gain_over_near: choice.gain.map(plain),
  switch_over_rpm: plain(choice.switchOver),
  mean_gain_over_near: plain(choice.meanGain),
  mean_gain_uncertainty: plain(choice.meanUncertainty),
  best_start_rpm: plain(choice.bestStart),
  loses_at_rpm: choice.losesAt,
  reason: choice.reason,
  limited_by_flow: choice.limitedByFlow,
});
