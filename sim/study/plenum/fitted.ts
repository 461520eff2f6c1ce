/** The same engine behind one throttle and a plenum. */
import { type PlenumSpecification, standingOf } from '../../fittings.ts';
import { entryLossRounded } from '../../loss/entryLoss.ts';
import { rimCorrection } from '../../loss/mouthLength.ts';
import type {
  BellmouthSpecification,
  EngineSpecification,
  PipeSpecification,
  ThrottleSpecification,
} from '../../specification.ts';

/** Full load, however far the file has the plates open. */
export function wideOpen(engine: EngineSpecification): EngineSpecification {
  const throttle = { ...engine.intake.throttle, angle: 90 };
  return { ...engine, intake: { ...engine.intake, throttle } };
}

/** @param angle of the one plate [deg]; 90 is wide open */
export function onPlenum(
  engine: EngineSpecification,
  spec: PlenumSpecification,
  angle = 90,
): EngineSpecification {
  const { intake } = engine;
  const bore = spec.runnerDiameter;
  const half = halfRunner(spec, intake.trumpet.roughness);
  const inlet = {
    ...half,
    length: spec.inletLength,
    outerDiameter: spec.inletDiameter,
    innerDiameter: spec.inletDiameter,
    wallTemperature: intake.trumpet.wallTemperature,
  };
  const throttle = { ...spec.throttle, angle };
  const room = { volume: spec.volume, ...standingOf(spec) };
  const { trumpetLengths: _lengths, facingWall: _wall, ...kept } = intake;
  return {
    ...engine,
    intake: {
      ...kept,
      chamber: { ...room, inlet, inletLoss: spec.inletLoss, throttle },
      trumpet: { ...half, bellmouth: lipOf(bore, spec.mouthRadius) },
      throttle: noBody(bore),
      runner: half,
    },
  };
}

function halfRunner(spec: PlenumSpecification, roughness: number): PipeSpecification {
  const bore = spec.runnerDiameter;
  return {
    length: spec.runnerLength / 2,
    outerDiameter: bore,
    innerDiameter: bore,
    wallTemperature: spec.runnerTemperature,
    roughness,
    bendLoss: 0,
  };
}

/** The rounded mouth of a runner. */
function lipOf(bore: number, lip: number): BellmouthSpecification {
  const flare = { depth: lip, overhang: lip };
  const endCorrection = rimCorrection({ bore, ...flare });
  return { ...flare, entryLoss: entryLossRounded(lip / bore), endCorrection };
}

/** No plate in the runner: its halves meet in a throttle body of no length, without loss. */
function noBody(bore: number): ThrottleSpecification {
  const none = { length: 0, shaftPosition: 0, shaftDiameter: 0, rimGap: 0, openLoss: 0 };
  return { ...none, bore, closedAngle: 0, angle: 90 };
}
