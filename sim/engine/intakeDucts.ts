/**
 * The intake of one cylinder as two ducts with the throttle plate between them.
 *
 *   open air | end correction, flare, trumpet, body to the shaft | plate | body, runner, port | valve
 *
 * The end correction is a piece of straight pipe of the mouth's diameter in front of the rim.
 */

import { wallCorrection, wallLoss } from '../loss/facingWall.ts';
import type { PortLoss } from '../cylinder/valveFlow.ts';
import { bellmouthProfile } from '../duct/bellmouth.ts';
import { Duct } from '../duct/duct.ts';
import { circleArea, joinProfiles, lengthOf, type Profile, profileOf } from '../duct/profile.ts';
import { fanningFactor } from '../loss/friction.ts';
import type { IntakeSpecification, PipeSpecification } from '../specification.ts';

export interface IntakeDucts {
  /** Mouth to throttle plate; x = 0 at the acoustic mouth. */
  trumpet: Duct;
  /** Throttle plate to valve. */
  runner: Duct;
  /** Distance of the rim plane from x = 0 of the trumpet duct [m]. */
  endCorrection: number;
}

/** A wall property that changes from pipe to pipe along a duct. */
type Along = (x: number) => number;

export function intakeDucts(intake: IntakeSpecification, largestCell: number): IntakeDucts {
  const { trumpet, throttle, runner, port } = intake;
  const correction = mouthCorrection(intake);
  const bodyTemperature = trumpet.wallTemperature;
  const outer = trumpetProfile(intake, correction);
  const behind = throttle.length - throttle.shaftPosition;
  const rear: PipeSpecification = {
    ...runner,
    length: behind,
    outerDiameter: throttle.bore,
    innerDiameter: throttle.bore,
    bendLoss: 0,
  };
  const pieces = [rear, runner, port].filter((piece) => piece.length > 0);
  return {
    endCorrection: correction,
    trumpet: new Duct(outer, {
      name: 'trumpet',
      largestCell,
      roughness: trumpet.roughness,
      wallTemperature: () => bodyTemperature,
      lossPerLength: (x) => (x < correction ? 0 : trumpet.bendLoss / trumpet.length),
    }),
    runner: new Duct(profileOf(pieces), {
      name: 'runner',
      largestCell,
      roughness: runner.roughness,
      wallTemperature: piecewise(pieces, (piece) => piece.wallTemperature),
      lossPerLength: piecewise(pieces, (piece) => piece.bendLoss / piece.length),
    }),
  };
}

/** Acoustic length of the mouth beyond its rim [m], a wall in front of it counted. */
export function mouthCorrection(intake: IntakeSpecification): number {
  const rim = mouthDiameter(intake) / 2;
  const clearance = mouthClearance(intake);
  const added = clearance === undefined ? 0 : wallCorrection(clearance, rim);
  return (intake.trumpet.bellmouth.endCorrection + added) * rim;
}

/** Distance from the rim plane to the wall in front of it [m]; undefined where there is none. */
export function mouthClearance({ facingWall, trumpet }: IntakeSpecification): number | undefined {
  return facingWall === undefined ? undefined : facingWall - trumpet.length;
}

/** Diameter of the rim [m]. */
export function mouthDiameter(intake: IntakeSpecification): number {
  const { trumpet } = intake;
  return trumpet.outerDiameter + 2 * trumpet.bellmouth.overhang;
}

/** Entry loss in dynamic heads of the mouth itself [-], a wall in front of it counted. */
export function mouthLoss(intake: IntakeSpecification): number {
  const { trumpet } = intake;
  const { bellmouth, outerDiameter: bore } = trumpet;
  const areas = circleArea(mouthDiameter(intake)) / circleArea(bore);
  const clearance = mouthClearance(intake);
  const added = clearance === undefined ? 0 : wallLoss(clearance, bore, bellmouth.overhang > 0);
  return (bellmouth.entryLoss + added) * areas ** 2;
}

/** What the port takes on a flow bench: friction and bends, in heads of its inner end. */
export function portLoss(port: PipeSpecification): PortLoss {
  const diameter = 0.5 * (port.outerDiameter + port.innerDiameter);
  const reynolds = 2e5; // A port at 28 inH2O: 100 m/s in 35 mm; friction changes little about it.
  const f = fanningFactor(reynolds, port.roughness / diameter);
  return {
    heads: (4 * f * port.length) / diameter + port.bendLoss,
    area: circleArea(diameter),
  };
}

/** Stations of the trumpet duct: end correction, flare, taper, body up to the shaft. */
function trumpetProfile(intake: IntakeSpecification, correction: number): Profile {
  const { trumpet, throttle } = intake;
  const { depth, overhang } = trumpet.bellmouth;
  const mouth = mouthDiameter(intake);
  const front = profileOf([{ length: correction, outerDiameter: mouth, innerDiameter: mouth }]);
  const flare = bellmouthProfile(trumpet.outerDiameter, depth, overhang);
  const rest = profileOf([
    {
      length: trumpet.length - depth,
      outerDiameter: trumpet.outerDiameter,
      innerDiameter: trumpet.innerDiameter,
    },
    {
      length: throttle.shaftPosition,
      outerDiameter: throttle.bore,
      innerDiameter: throttle.bore,
    },
  ]);
  return [flare, rest].reduce<Profile>((whole, part) => {
    if (part.length === 0) return whole;
    return lengthOf(whole) === 0 && whole.length === 0 ? part : joinProfiles(whole, part);
  }, front);
}

/** The value of the piece that lies at x. */
export function piecewise(
  pieces: readonly PipeSpecification[],
  value: (piece: PipeSpecification) => number,
): Along {
  return (x) => {
    let end = 0;
    for (const piece of pieces) {
      end += piece.length;
      if (x < end) return value(piece);
    }
    return value(pieces[pieces.length - 1]!);
  };
}
