/**
 * A chamber that all mouths breathe from, and the pipe that feeds it; or one for each bank of a V:
 *
 *   open air | inlet, body to the shaft | plate | rest of the body | chamber
 *   open air | inlet | chamber                                      without a throttle body of its own
 *
 *   open air | inlet | plate | body | chamber of bank 0
 *                                        | cross pipe |              where one is fitted
 *   open air | inlet | plate | body | chamber of bank 1
 *
 * Its walls take no heat. Without a row it is one volume of uniform gas, alike to every mouth. With N
 * mouths in a row of pitch l it is as many compartments, V/N about each mouth, with a duct from each to
 * the next, so that waves run along it; two rows in one chamber stand side by side, two mouths a compartment:
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
import { entryLossRounded } from '../loss/entryLoss.ts';
import { mouthImpedance } from '../loss/mouthRadiation.ts';
import { plateGrowth, throttleArea } from '../loss/throttlePlate.ts';
import type {
  ChamberSpecification,
  PipeSpecification,
  ThrottleSpecification,
} from '../specification.ts';
import { piecewise } from './intakeDucts.ts';

/** A chamber or two, their pipes and what joins them. */
export interface ChamberParts {
  volumes: Volume[];
  /** What the mouth of the cylinder at a place of the firing order stands in. */
  around(place: number): Volume;
  /** Of the first of the firing order: what its inlet opens into, and that inlet as far as the plate or the chamber. */
  atInlet: Volume;
  inlet: Duct;
  ducts: Duct[];
  nodes: Node[];
  /** The plate of each, where it has a throttle body of its own. */
  plates: Node[];
}

/** Cell of the inlet over the trumpets' [-]: the chamber stands between it and the valves. */
const INLET_CELL = 1.5;

/** s: a compartment needs room, or steps of time become small. */
const DUCT_SHARE = 0.75;

/** Air that a chamber is fed with: still, density [kg/m^3], speed of sound [m/s]. */
interface Fed {
  feed: OpenAir;
  air: { density: number; soundSpeed: number };
  /** Largest cell of its pipes [m]. */
  cell: number;
}

/** @param air still air of the feed: density [kg/m^3], speed of sound [m/s] */
export function chamberParts(
  chamber: ChamberSpecification,
  feed: OpenAir,
  air: Fed['air'],
  intakeCell: number,
): ChamberParts {
  const { banks = [0], row, cross } = chamber;
  const fed = { feed, air, cell: INLET_CELL * intakeCell };
  const chambers = Array.from({ length: 1 + Math.max(...banks) }, (_, bank) =>
    oneChamber(chamber, bank, fed),
  );
  const own = chambers[banks[0]!]!;
  const pipes = cross ? [crossPipe(cross, chambers, fed.cell)] : [];
  const all = <T>(of: (part: { ducts: Duct[]; nodes: Node[] }) => T[]) =>
    [...chambers, ...pipes].flatMap(of);
  return {
    atInlet: own.atInlet,
    inlet: own.inlet,
    volumes: chambers.flatMap(({ volumes }) => volumes),
    around: (place) => chambers[banks[place] ?? 0]!.volumes[row?.places[place] ?? 0]!,
    ducts: all(({ ducts }) => ducts),
    nodes: all(({ nodes }) => nodes),
    plates: chambers.flatMap(({ plate }) => plate ?? []),
  };
}

function oneChamber(chamber: ChamberSpecification, bank: number, { feed, air, cell }: Fed) {
  const { inlet, inletLoss, throttle, row } = chamber;
  const box = compartments(chamber, bank, cell);
  const atInlet = box.volumes[Math.min(row?.inlet ?? 0, box.volumes.length - 1)]!;
  const { shaftPosition = 0, length = 0 } = throttle ?? {};
  const outer = pipeOf('inlet', [inlet, bodyPiece(shaftPosition, inlet, throttle)], cell);
  const outside = (END_CORRECTION_UNFLANGED * inlet.outerDiameter) / 2;
  const impedance = mouthImpedance(inlet.outerDiameter, outside, air);
  const open = mouth(new DuctEnd(outer, 'low'), feed, impedance, inletLoss);
  const last = new DuctEnd(outer, 'high');
  const own = { ...box, atInlet, inlet: outer, ducts: [...box.ducts, outer] };
  if (!throttle) {
    return { ...own, nodes: [...box.nodes, open, openEnd(last, atInlet)], plate: undefined };
  }
  const inner = pipeOf('body', [bodyPiece(length - shaftPosition, inlet, throttle)], cell);
  const plate = plateNode(throttle, last, new DuctEnd(inner, 'low'));
  const nodes = [...box.nodes, open, plate, openEnd(new DuctEnd(inner, 'high'), atInlet)];
  return { ...own, ducts: [...own.ducts, inner], nodes, plate };
}

/** One chamber itself: one volume, or one a mouth along its row and what joins them. */
function compartments({ volume, row, banks }: ChamberSpecification, bank: number, cell: number) {
  const places = row?.places.filter((_, i) => !banks || banks[i] === bank) ?? [0];
  const count = 1 + Math.max(...places);
  const slice = volume / (banks ? 1 + Math.max(...banks) : 1) / count;
  const { pitch = 1 } = row ?? {};
  const bore = Math.sqrt((4 * DUCT_SHARE * slice) / (Math.PI * pitch));
  const volumes = Array.from({ length: count }, (_, i) => {
    const ducts = (i > 0 ? 1 : 0) + (i < count - 1 ? 1 : 0);
    return new Volume('chamber', slice * (1 - 0.5 * ducts * square(DUCT_SHARE)));
  });
  const ducts = volumes.slice(1).map(() => {
    const piece = { length: DUCT_SHARE * pitch, outerDiameter: bore, innerDiameter: bore };
    return new Duct(profileOf([piece]), { name: 'along the chamber', largestCell: cell });
  });
  const nodes = ducts.flatMap((duct, i) => [
    openEnd(new DuctEnd(duct, 'low'), volumes[i]!),
    openEnd(new DuctEnd(duct, 'high'), volumes[i + 1]!),
  ]);
  return { volumes, ducts, nodes };
}

/** From one chamber to the other, square at both ends; its walls take no heat. */
function crossPipe(
  { length, diameter }: NonNullable<ChamberSpecification['cross']>,
  chambers: readonly { atInlet: Volume }[],
  cell: number,
) {
  const pipe = { length, outerDiameter: diameter, innerDiameter: diameter };
  const duct = new Duct(profileOf([pipe]), { name: 'cross pipe', largestCell: cell });
  const loss = entryLossRounded(0);
  const nodes = (['low', 'high'] as const).map((side, i) =>
    openEnd(new DuctEnd(duct, side), chambers[i]!.atInlet, loss),
  );
  return { ducts: [duct], nodes };
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
