/**
 * Lays a network into memory: whole numbers that say what joins what, reals that all lanes share, and
 * the column of reals of a lane, in which every part has its place (step/layout.ts).
 */

import type { DuctEnd } from '../boundary/ductEnd.ts';
import type { Echo, Node, Slots } from '../boundary/node.ts';
import { Tapping, type Volume } from '../boundary/reservoir.ts';
import { sweptVolume } from '../cylinder/crank.ts';
import { Cylinder } from '../cylinder/cylinder.ts';
import { CHOKED_FLOW } from '../cylinder/rings.ts';
import { WOSCHNI } from '../cylinder/woschni.ts';
import type { Duct } from '../duct/duct.ts';
import { circleArea } from '../duct/profile.ts';
import { power } from '../elementary/powers.ts';
import type { Gas } from '../gas/gas.ts';
import * as AT from '../step/layout.ts';
import { LIMITERS } from './numerics.ts';
import { Writer } from './writer.ts';

/** Ducts, what joins them, and how to compute. */
export interface NetworkParts {
  gas: Gas;
  ducts: readonly Duct[];
  nodes: readonly Node[];
  volumes?: readonly Volume[];
  /** Courant number [-]. */
  courant?: number;
  /** 1 minmod to 2 monotonised central (step/limiter.ts). */
  limiter?: number;
  flux?: 'hllc' | 'rusanov';
  /** Heat at the walls over that of the correlation (step/wall.ts) [-]. */
  pipeHeat?: number;
  /** Newton steps of a node in a time step. */
  iterations?: number;
}

export interface Layout {
  N: Int32Array<ArrayBuffer>;
  K: Float64Array<ArrayBuffer>;
  /** A lane's reals as the parts stand now. */
  column: Float64Array<ArrayBuffer>;
  /** Where each part's slots start in the column. */
  place: Map<Slots, number>;
  /** Places up to here hold what a cycle's end looks at: all but the ducts and the records. */
  small: number;
  /** Places up to here hold all but the records of joints. */
  live: number;
}

/** Throws Error if an end of a duct belongs to no node, or to two. */
export function layOut(parts: NetworkParts): Layout {
  checkConnected(parts);
  const writer = new Writer();
  const { N, K } = writer;
  N.length = AT.N_HEAD;
  N.fill(0);
  K.push(...parts.gas.head());
  K[AT.PIPE_HEAT] = parts.pipeHeat ?? 1;
  K[AT.COURANT] = parts.courant ?? 0.9;
  K[AT.THETA] = parts.limiter ?? LIMITERS['theta-1.7'];
  N[AT.ITERATIONS] = parts.iterations ?? 1;
  N[AT.ROUGH_FLUX] = parts.flux === 'rusanov' ? 1 : 0;

  const slots = giveSlots(writer, parts);
  writeRecords(writer, parts, slots);
  return {
    N: Int32Array.from(N),
    K: Float64Array.from(K),
    column: writer.column(),
    place: writer.place,
    small: slots.small,
    live: slots.live,
  };
}

type Placed = Pick<Layout, 'small' | 'live'> & { echoes: Echo[]; taps: Tapping[] };

/** Gives every part its slots in a lane: what a cycle's end looks at, then the ducts, then the records. */
function giveSlots(writer: Writer, { nodes, volumes = [], ducts }: NetworkParts): Placed {
  const reservoirs = new Set(
    nodes.flatMap((node) => ('reservoir' in node ? [node.reservoir as Slots] : [])),
  );
  for (const volume of volumes) reservoirs.add(volume);
  const echoes = nodes.flatMap((node) => (node.kind === 'collector' ? node.echoes : []));
  for (const part of reservoirs) writer.give(part);
  for (const part of [...nodes.flatMap((node) => [...node.ends]), ...echoes]) writer.give(part);
  for (const part of nodes.flatMap(ownSlots)) writer.give(part);
  for (const duct of ducts) writer.give(duct.sums);
  const small = writer.length;
  for (const duct of ducts) writer.give(duct);
  const live = writer.length;
  for (const node of nodes) if (node.kind === 'collector') writer.give(node.record);
  return { small, live, echoes, taps: [...reservoirs].filter((part) => part instanceof Tapping) };
}

/** Writes what joins what: ducts, their ends, nodes, taps and volumes. */
function writeRecords(writer: Writer, parts: NetworkParts, { echoes, taps }: Placed): void {
  const { N } = writer;
  const { ducts, nodes, volumes = [] } = parts;
  N[AT.DUCTS_AT] = writer.records(ducts, (duct) => ductRecord(writer, duct));
  N[AT.DUCTS] = ducts.length;
  const endAt = new Map<DuctEnd | Echo, number>();
  for (const end of nodes.flatMap((node) => [...node.ends]))
    endAt.set(end, writer.record(endRecord(writer, end)));
  for (const echo of echoes) endAt.set(echo, writer.record(echoRecord(writer, echo)));
  const nodeAt = nodes.map((node) => writer.record(nodeRecord(writer, node, endAt)));
  N[AT.NODES] = nodes.length;
  N[AT.NODES_AT] = writer.record(nodeAt);
  N[AT.TAPS] = taps.length;
  N[AT.TAPS_AT] = writer.records(taps, (tap) => tapRecord(writer, tap));
  N[AT.VOLUMES] = volumes.length;
  N[AT.VOLUMES_AT] = writer.records(volumes, (volume) => volumeRecord(writer, volume));
}

/** Relative difference of areas below which a cell counts as straight. */
const STRAIGHT = 1e-9;

function ductRecord(writer: Writer, duct: Duct): number[] {
  const { mesh } = duct;
  const rough = Number.isNaN(duct.roughness);
  const rows: ArrayLike<number>[] = [
    mesh.faceArea,
    mesh.perVolume,
    mesh.lowRatio,
    mesh.highRatio,
    mesh.toLow,
    mesh.toHigh,
    mesh.diameter,
    mesh.perDiameter,
    mesh.meanArea,
    mesh.diameter.map((d) => (rough ? 0 : power(duct.roughness / (3.7 * d), 1.11))),
    duct.wallTemperature,
    duct.lossPerLength,
    mesh.volume,
  ];
  const dx = writer.reals([mesh.dx, 1 / mesh.dx]);
  const k = writer.K.length;
  for (let i = 0; i <= mesh.cells; i++) writer.reals(rows.map((row) => row[i] ?? 0));
  const bent = (ratio: number) => Math.abs(ratio - 1) > STRAIGHT;
  const flags = Array.from(mesh.volume, (_, i) =>
    [mesh.lowRatio, mesh.highRatio, mesh.toLow, mesh.toHigh].some((row) => bent(row[i]!)) ? 1 : 0,
  );
  const { thin } = duct;
  const wall = rough || thin ? 0 : 1;
  const own = thin ? writer.reals([thin.drag, thin.warming, thin.turbulent]) : -1;
  const taper = writer.record(flags);
  return [mesh.cells, writer.of(duct), k, taper, wall, writer.of(duct.sums), dx, own];
}

function endRecord(writer: Writer, end: DuctEnd): number[] {
  const { duct, side, area } = end;
  const cells = duct.mesh.cells;
  const low = side === 'low';
  const slot = (j: number) => writer.of(duct) + j * AT.ROWS;
  const record = [
    writer.of(end),
    writer.reals([area, 1 / area]),
    slot(low ? 0 : cells),
    slot(low ? 0 : cells + 1),
    slot(low ? 1 : cells),
    low ? AT.RIGHT : AT.LEFT,
    writer.of(duct.sums),
  ];
  return record;
}

function echoRecord(writer: Writer, echo: Echo): number[] {
  return [writer.of(echo), writer.reals([echo.area, 1 / echo.area]), -1, 0, 0, AT.LEFT, 0];
}

const KINDS: Record<Node['kind'], number> = {
  closed: AT.CLOSED,
  reservoir: AT.RESERVOIR,
  constriction: AT.CONSTRICTION,
  junction: AT.JUNCTION,
  collector: AT.COLLECTOR,
  nonReflecting: AT.NON_REFLECTING,
  mouth: AT.MOUTH,
};

function nodeRecord(
  writer: Writer,
  node: Node,
  endAt: ReadonlyMap<DuctEnd | Echo, number>,
): number[] {
  const ends = [...node.ends, ...(node.kind === 'collector' ? node.echoes : [])];
  const places = ends.map((end) => endAt.get(end)!);
  return [KINDS[node.kind], ends.length, ...places, ...ownRecord(writer, node)];
}

/** What follows the ends in a node's record. */
function ownRecord(writer: Writer, node: Node): number[] {
  switch (node.kind) {
    case 'closed':
      return [writer.of(node.roots)];
    case 'reservoir':
      return [
        writer.of(node.reservoir),
        writer.reals(node.shares),
        node.areas ? writer.reals(node.areas) : -1,
        writer.reals([node.phase]),
        writer.of(node.roots),
      ];
    case 'constriction':
      return [writer.of(node.throat), node.growth ? writer.reals(node.growth) : -1];
    case 'junction':
      return [writer.of(node.root)];
    case 'collector':
      return [
        writer.of(node.root),
        writer.of(node.record),
        writer.reals(node.echoes.map(({ delay }) => delay)),
        node.echoes.length,
      ];
    case 'nonReflecting':
      return [writer.of(node.reservoir)];
    case 'mouth': {
      const { inertance, resistance, compliance } = node.impedance;
      const constants = writer.reals([inertance, 1 / resistance, compliance, node.share]);
      return [writer.of(node.reservoir), writer.of(node.state), constants];
    }
  }
}

/** A node's own numbers of a lane, but for records of joints. */
function ownSlots(node: Node): Slots[] {
  switch (node.kind) {
    case 'closed':
    case 'reservoir':
      return [node.roots];
    case 'constriction':
      return [node.throat];
    case 'junction':
    case 'collector':
      return [node.root];
    case 'mouth':
      return [node.state];
    case 'nonReflecting':
      return [];
  }
}

function tapRecord(writer: Writer, tap: Tapping): number[] {
  const { duct, cell } = tap;
  const perVolume = writer.reals([duct.mesh.perVolume[cell]!]);
  const slot = writer.of(duct) + (cell + 1) * AT.ROWS;
  return [writer.of(tap), slot, perVolume, writer.of(duct.sums)];
}

function volumeRecord(writer: Writer, volume: Volume): number[] {
  const constants = volume instanceof Cylinder ? writer.reals(cylinderConstants(volume)) : -1;
  return [writer.of(volume), constants];
}

/** In the order of step/layout.ts. */
function cylinderConstants({ crank, options, phase }: Cylinder): number[] {
  const area = circleArea(crank.bore);
  const swept = sweptVolume(crank);
  const { shut, rings } = options;
  const span = (((shut.to - shut.from) % 720) + 720) % 720;
  return [
    crank.stroke / 2,
    crank.rodLength,
    area,
    swept / (crank.compressionRatio - 1),
    phase,
    options.wallTemperature ?? 0,
    (Math.PI * crank.bore) / area,
    WOSCHNI * power(crank.bore, -0.2),
    swept,
    shut.from,
    span,
    options.fuelHeat ?? 0,
    rings ? rings.crevice / options.wallTemperature! : 0,
    rings ? CHOKED_FLOW * rings.leakArea : 0,
    rings?.crankcasePressure ?? 0,
  ];
}

function checkConnected({ ducts, nodes }: NetworkParts): void {
  const ends = nodes.flatMap((node) => [...node.ends]);
  for (const duct of ducts) {
    for (const side of ['low', 'high'] as const) {
      const joined = ends.filter((end) => end.duct === duct && end.side === side).length;
      if (joined !== 1) {
        throw new Error(`the ${side} end of "${duct.name}" has ${joined} nodes`);
      }
    }
  }
}
