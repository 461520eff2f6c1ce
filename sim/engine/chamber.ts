/**
 * A chamber that all mouths breathe from, and the pipe that feeds it:
 *
 *   open air | inlet, body to the shaft | plate | rest of the body | chamber
 *   open air | inlet | chamber                                      without a throttle body of its own
 *
 * The chamber is one volume of uniform gas, its walls take no heat, and it is the same to every mouth:
 * what the place of a cylinder along it does is not computed.
 */
import { DuctEnd } from '../boundary/ductEnd.ts';
import { constriction, mouth, type Node, openEnd } from '../boundary/node.ts';
import { type OpenAir, Volume } from '../boundary/reservoir.ts';
import { Duct } from '../duct/duct.ts';
import { profileOf } from '../duct/profile.ts';
import { END_CORRECTION_UNFLANGED } from '../loss/endCorrection.ts';
import { mouthImpedance } from '../loss/mouthRadiation.ts';
import { plateGrowth, throttleArea } from '../loss/throttlePlate.ts';
import type {
  ChamberSpecification,
  PipeSpecification,
  ThrottleSpecification,
} from '../specification.ts';
import { piecewise } from './intakeDucts.ts';

/** A chamber, its pipes and what joins them. */
export interface ChamberParts {
  volume: Volume;
  ducts: Duct[];
  nodes: Node[];
}

/** Cell of the inlet over the trumpets' [-]: the chamber stands between it and the valves. */
const INLET_CELL = 1.5;

/** @param air still air of the feed: density [kg/m^3], speed of sound [m/s] */
export function chamberParts(
  chamber: ChamberSpecification,
  feed: OpenAir,
  air: { density: number; soundSpeed: number },
  intakeCell: number,
): ChamberParts {
  const { inlet, inletLoss, throttle } = chamber;
  const volume = new Volume('chamber', chamber.volume);
  const cell = INLET_CELL * intakeCell;
  const { shaftPosition = 0, length = 0 } = throttle ?? {};
  const outer = pipeOf('inlet', [inlet, bodyPiece(shaftPosition, inlet, throttle)], cell);
  const outside = (END_CORRECTION_UNFLANGED * inlet.outerDiameter) / 2;
  const impedance = mouthImpedance(inlet.outerDiameter, outside, air);
  const open = mouth(new DuctEnd(outer, 'low'), feed, impedance, inletLoss);
  const last = new DuctEnd(outer, 'high');
  if (!throttle) return { volume, ducts: [outer], nodes: [open, openEnd(last, volume)] };
  const inner = pipeOf('body', [bodyPiece(length - shaftPosition, inlet, throttle)], cell);
  const plate = plateNode(throttle, last, new DuctEnd(inner, 'low'));
  const nodes = [open, plate, openEnd(new DuctEnd(inner, 'high'), volume)];
  return { volume, ducts: [outer, inner], nodes };
}

/** The plate of a body between two ends. */
export function plateNode(throttle: ThrottleSpecification, before: DuctEnd, behind: DuctEnd): Node {
  const area = throttleArea(throttle, throttle.angle);
  const growth = plateGrowth(throttle, throttle.angle);
  return constriction(before, behind, { forward: area, backward: area }, growth);
}

/** A piece of the throttle body, walls as the inlet's. */
function bodyPiece(
  length: number,
  inlet: PipeSpecification,
  { bore = 0 }: Partial<ThrottleSpecification> = {},
): PipeSpecification {
  return { ...inlet, length, outerDiameter: bore, innerDiameter: bore, bendLoss: 0 };
}

function pipeOf(name: string, pieces: readonly PipeSpecification[], largestCell: number): Duct {
  const there = pieces.filter(({ length }) => length > 0);
  return new Duct(profileOf(there), {
    name,
    largestCell,
    roughness: there[0]!.roughness,
    wallTemperature: piecewise(there, ({ wallTemperature }) => wallTemperature),
    lossPerLength: piecewise(there, ({ bendLoss, length }) => bendLoss / length),
  });
}
