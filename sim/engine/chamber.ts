/**
 * A chamber that all mouths breathe from, and the pipe that feeds it:
 *
 *   open air | inlet, body to the shaft | plate | rest of the body | chamber
 *   open air | inlet | chamber                                      without a throttle body of its own
 *
 * Its walls take no heat. Without a row it is one volume of uniform gas, alike to every mouth. With N
 * mouths in a row of pitch l it is as many compartments, V/N about each mouth, with a duct from each to
 * the next, so that waves run along it:
 *
 *   length s l,  area s A,  A = V/(N l)      inertance rho l/A, as of the box between two mouths
 *
 * A compartment has what the ducts' halves at it leave of V/N. What flows along the box loses its head from
 * compartment to compartment, some 30 Pa at usual sizes. Waves across it are left out. Source: geometry.
 */
import { DuctEnd } from '../boundary/ductEnd.ts';
import { constriction, mouth, type Node, openEnd } from '../boundary/node.ts';
import { type OpenAir, Volume } from '../boundary/reservoir.ts';
import { Duct } from '../duct/duct.ts';
import { profileOf } from '../duct/profile.ts';
import { square } from '../elementary/powers.ts';
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
  /** Along the row; one where there is none. */
  volumes: Volume[];
  /** What the inlet opens into, and the inlet itself as far as the plate or the chamber. */
  atInlet: Volume;
  inlet: Duct;
  ducts: Duct[];
  nodes: Node[];
  /** The one plate, where the chamber has a throttle body of its own. */
  plate?: Node;
}

/** Cell of the inlet over the trumpets' [-]: the chamber stands between it and the valves. */
const INLET_CELL = 1.5;

/** s: a compartment needs room, or steps of time become small. */
const DUCT_SHARE = 0.75;

/** @param air still air of the feed: density [kg/m^3], speed of sound [m/s] */
export function chamberParts(
  chamber: ChamberSpecification,
  feed: OpenAir,
  air: { density: number; soundSpeed: number },
  intakeCell: number,
): ChamberParts {
  const { inlet, inletLoss, throttle } = chamber;
  const cell = INLET_CELL * intakeCell;
  const box = compartments(chamber, cell);
  const atInlet = box.volumes[chamber.row?.inlet ?? 0]!;
  const { shaftPosition = 0, length = 0 } = throttle ?? {};
  const outer = pipeOf('inlet', [inlet, bodyPiece(shaftPosition, inlet, throttle)], cell);
  const outside = (END_CORRECTION_UNFLANGED * inlet.outerDiameter) / 2;
  const impedance = mouthImpedance(inlet.outerDiameter, outside, air);
  const open = mouth(new DuctEnd(outer, 'low'), feed, impedance, inletLoss);
  const last = new DuctEnd(outer, 'high');
  const own = { ...box, atInlet, inlet: outer, ducts: [...box.ducts, outer] };
  if (!throttle) return { ...own, nodes: [...box.nodes, open, openEnd(last, atInlet)] };
  const inner = pipeOf('body', [bodyPiece(length - shaftPosition, inlet, throttle)], cell);
  const plate = plateNode(throttle, last, new DuctEnd(inner, 'low'));
  const nodes = [...box.nodes, open, plate, openEnd(new DuctEnd(inner, 'high'), atInlet)];
  return { ...own, ducts: [...own.ducts, inner], nodes, plate };
}

/** The chamber itself: one volume, or one a mouth of the row and what joins them. */
function compartments({ volume, row }: ChamberSpecification, largestCell: number) {
  const count = row?.places.length ?? 1;
  const slice = volume / count;
  const { pitch = 1 } = row ?? {};
  const bore = Math.sqrt((4 * DUCT_SHARE * slice) / (Math.PI * pitch));
  const volumes = Array.from({ length: count }, (_, i) => {
    const ducts = (i > 0 ? 1 : 0) + (i < count - 1 ? 1 : 0);
    return new Volume('chamber', slice * (1 - 0.5 * ducts * square(DUCT_SHARE)));
  });
  const ducts = volumes.slice(1).map(() => {
    const piece = { length: DUCT_SHARE * pitch, outerDiameter: bore, innerDiameter: bore };
    return new Duct(profileOf([piece]), { name: 'along the chamber', largestCell });
  });
  const nodes = ducts.flatMap((duct, i) => [
    openEnd(new DuctEnd(duct, 'low'), volumes[i]!),
    openEnd(new DuctEnd(duct, 'high'), volumes[i + 1]!),
  ]);
  return { volumes, ducts, nodes };
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
