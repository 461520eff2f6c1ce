/** The study of injector placement as a JSON document. */
import { auditOf } from '../../report/audit.ts';
import { documentHead } from '../../report/document.ts';
import { cumulative, plain } from '../../report/numbers.ts';
import { DISTANCE_TO_VALVE, filed } from '../../report/quantities.ts';
import { asColumns, asObjects, tableOf } from '../../report/table.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import { difference, type Placement, type PlacementStudy, sprayOf } from './compute.ts';
import { partLoadTable, pulsesTable, SPRAYED } from './tables.ts';

export function placementDocument(study: PlacementStudy, scenario: Scenario) {
  const { outcomes, speeds, split, uncertainty, choice, partLoad } = study;
  const gain = (placement: Placement) =>
    speeds.map((_, i) => plain(difference(outcomes[placement][i]!, outcomes.near[i]!)));
  const placements = Object.entries(outcomes).map(([name, points]) => [
    name,
    asColumns(tableOf(name, SPRAYED, points)),
  ]);
  return {
    ...documentHead('inject', scenario),
    speeds_rpm: speeds,
    injectors: { near: study.near, above: study.above },
    placements: Object.fromEntries(placements),
    staged_outer_share: study.stagedShare.map(plain),
    gain_above_over_near: gain('above'),
    gain_both_over_near: gain('both'),
    effect_of_above: {
      cooling: split.cooling.map(plain),
      displacement: split.displacement.map(plain),
      wave_shift: split.waveShift.map(plain),
      total: split.total.map(plain),
    },
    uncertainty: {
      volumetric_efficiency: plain(uncertainty.value),
      drop_size: plain(uncertainty.dropSize),
      scatter: plain(uncertainty.scatter),
      at_rpm: uncertainty.speeds,
    },
    recommended: {
      outer_share: choice.share.map(plain),
      gain_over_near: choice.gain.map(plain),
      switch_over_rpm: plain(choice.switchOver),
      mean_gain_over_near: plain(choice.meanGain),
      mean_gain_uncertainty: plain(choice.meanUncertainty),
      best_start_rpm: plain(choice.bestStart),
      loses_at_rpm: choice.losesAt,
      reason: choice.reason,
      limited_by_flow: choice.limitedByFlow,
    },
    part_load: {
      speed_rpm: partLoad.speed,
      throttle_angle_deg: partLoad.throttleAngle,
      points: asObjects(partLoadTable(study)),
    },
    pulses: asObjects(pulsesTable(study)),
    evaporation_along_intake: along(study),
    audit: auditOf(Object.values(outcomes).flat()),
  };
}

/** Vapour given off by the outer injector's fuel along the intake at the highest speed. */
function along({ outcomes }: PlacementStudy) {
  const { distance = [], share = [] } = sprayOf(outcomes.above.at(-1)!)?.along ?? {};
  return {
    distance_to_valve_mm: distance.map((x) => filed(DISTANCE_TO_VALVE, x)),
    fraction_upstream: cumulative(share).map(plain),
  };
}
