/**
 * The intake of one cylinder as two ducts with the throttle plate between them.
 *
 *   mouth | trumpet below the flare, body to the shaft | plate | body, runner, port | valve
 *
 * Flare and outside air are no duct: plane waves cannot follow so steep a wall, so they move as one
 * inertance in the mouth's node (loss/mouthLength.ts, step/mouth.ts).
 */

import type { PortLoss } from '../cylinder/valveFlow.ts';
import { Duct } from '../duct/duct.ts';
import { circleArea, type Profile, profileOf } from '../duct/profile.ts';
import { square } from '../elementary/powers.ts';
import { wallCorrection, wallLoss } from '../loss/facingWall.ts';
import { fanningFactor } from '../loss/friction.ts';
import { flareLength } from '../loss/mouthLength.ts';
import { type MouthImpedance, mouthImpedance } from '../loss/mouthRadiation.ts';
import type { IntakeSpecification, PipeSpecification } from '../specification.ts';

export interface IntakeDucts {
  /** Foot of the flare (x = 0) to throttle plate. */
  trumpet: Duct;
  /** Throttle plate to valve. */
  runner: Duct;
}

/** A wall property that changes from pipe to pipe along a duct. */
type Along = (x: number) => number;

export function intakeDucts(intake: IntakeSpecification, largestCell: number): IntakeDucts {
  const { trumpet, throttle, runner, port } = intake;
  const bodyTemperature = trumpet.wallTemperature;
  const outer = trumpetProfile(intake);
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
    trumpet: new Duct(outer, {
      name: 'trumpet',
      largestCell,
      roughness: trumpet.roughness,
      wallTemperature: () => bodyTemperature,
      lossPerLength: () => trumpet.bendLoss / trumpet.length,
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

/** The air of flare and outside as the bore feels it, still air of the feed outside. */
export function intakeMouth(
  intake: IntakeSpecification,
  air: { density: number; soundSpeed: number },
): MouthImpedance {
  return mouthImpedance(intake.trumpet.outerDiameter, mouthInertia(intake), air);
}

/** Length of the bore with the inertia of flare and outside air [m], a wall in front counted. */
export function mouthInertia(intake: IntakeSpecification): number {
  const { bellmouth, outerDiameter: bore } = intake.trumpet;
  const rim = mouthDiameter(intake) / 2;
  const clearance = mouthClearance(intake);
  const added = clearance === undefined ? 0 : wallCorrection(clearance, rim);
  const outside = (bellmouth.endCorrection + added) * rim * square(bore / 2 / rim);
  return flareLength(bore, bellmouth.depth, bellmouth.overhang) + outside;
}

/** Distance from the rim plane to the wall in front of it [m]; undefined where there is none. */
function mouthClearance({ facingWall, trumpet }: IntakeSpecification): number | undefined {
  return facingWall === undefined ? undefined : facingWall - trumpet.length;
}

/** Diameter of the rim [m]. */
export function mouthDiameter(intake: IntakeSpecification): number {
  const { trumpet } = intake;
  return trumpet.outerDiameter + 2 * trumpet.bellmouth.overhang;
}

/** Entry loss in dynamic heads of the bore [-], a wall in front of it counted. */
export function mouthLoss(intake: IntakeSpecification): number {
  const { bellmouth, outerDiameter: bore } = intake.trumpet;
  const clearance = mouthClearance(intake);
  const added = clearance === undefined ? 0 : wallLoss(clearance, bore, bellmouth.overhang > 0);
  return bellmouth.entryLoss + added;
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

/** Stations of the trumpet duct: taper below the flare, body up to the shaft. */
function trumpetProfile({ trumpet, throttle }: IntakeSpecification): Profile {
  const straight = {
    length: trumpet.length - trumpet.bellmouth.depth,
    outerDiameter: trumpet.outerDiameter,
    innerDiameter: trumpet.innerDiameter,
  };
  const body = {
    length: throttle.shaftPosition,
    outerDiameter: throttle.bore,
    innerDiameter: throttle.bore,
  };
  return profileOf([straight, body].filter(({ length }) => length > 0));
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
