/**
 * Potential flow from all around into a thin-walled round pipe of radius 1, with or without a wall
 * before its mouth: the low-frequency end correction, from first principles.
 *
 *   div grad phi = 0,  d phi / dn = 0 at walls,  phi = sink and its image in the wall far away
 *   l = phi deep in the pipe, carried on to the mouth at unit velocity
 *
 * Finite volumes on a mesh that is finest at the rim; conjugate gradients.
 */

const FAR = 40;
const PIPE = 3;

/** End correction in radii; `h` radii from the rim to the wall, infinite where there is none. */
export function potentialEndCorrection(h: number, cells: number): number {
  const mesh = makeMesh(h, cells);
  const system = assemble(mesh, h);
  return correctionOf(mesh, solve(system, mesh));
}

/**
 * Limit for ever finer meshes from 10 and 20 cells across the radius, the error shrinking by 0.29 a
 * halving: measured at h from 0.1 to infinity with 10, 20 and 40 cells (0.28 to 0.30).
 */
export function potentialLimit(h: number): number {
  const shrink = 0.29;
  const [coarse, fine] = [potentialEndCorrection(h, 10), potentialEndCorrection(h, 20)];
  return fine + ((fine - coarse) * shrink) / (1 - shrink);
}

interface Mesh {
  /** Edges along the radius and the axis; the pipe lies at z < 0. */
  r: number[];
  z: number[];
  /** Cells across the pipe. */
  across: number;
  /** First row of cells inside the pipe that is computed. */
  bottom: number;
}

function makeMesh(h: number, cells: number): Mesh {
  const inner = Array.from({ length: cells + 1 }, (_, i) => 1 - (1 - i / cells) ** 1.8);
  const smallest = inner[cells]! - inner[cells - 1]!;
  const growth = 1 + 1.8 / cells;
  const before = stretch(FAR, smallest, growth).map((z) => -z);
  const after = Number.isFinite(h) ? upTo(h, smallest, growth) : stretch(FAR, smallest, growth);
  const z = [...before.reverse(), 0, ...after];
  const r = [...inner, ...stretch(FAR, smallest, growth).map((edge) => 1 + edge)];
  return { r, z, across: cells, bottom: z.findIndex((edge) => edge >= -PIPE) };
}

function stretch(end: number, first: number, growth: number): number[] {
  const edges = [first];
  for (let step = first * growth; edges[edges.length - 1]! < end; step *= growth) {
    edges.push(edges[edges.length - 1]! + step);
  }
  return edges;
}

/** As `stretch`, but ending at h without a sliver. */
function upTo(h: number, first: number, growth: number): number[] {
  const edges = stretch(h, first, growth).filter((edge) => edge < h - first / 2);
  return [...edges, h];
}

interface System {
  /** Conductance to the next cell along r and z, and the diagonal. */
  right: Float64Array;
  up: Float64Array;
  diagonal: Float64Array;
  source: Float64Array;
}

function assemble({ r, z, across, bottom }: Mesh, h: number): System {
  const [nr, nz] = [r.length - 1, z.length - 1];
  const zeros = () => new Float64Array(nr * nz);
  const system = { right: zeros(), up: zeros(), diagonal: zeros(), source: zeros() };
  const { right, up, diagonal, source } = system;
  const middle = (edges: number[], i: number) => 0.5 * (edges[i]! + edges[i + 1]!);
  const inPipe = (i: number, j: number) => i < across && j < bottom;
  const far = (rr: number, zz: number) => {
    const image = Number.isFinite(h) ? 1 / Math.hypot(rr, zz - 2 * h) : 0;
    return 0.25 * (1 / Math.hypot(rr, zz) + image);
  };
  const link = (from: number, to: number, side: Float64Array, conductance: number) => {
    side[from] = conductance;
    diagonal[from]! += conductance;
    diagonal[to]! += conductance;
  };
  const hold = (cell: number, conductance: number, value: number) => {
    diagonal[cell]! += conductance;
    source[cell]! += conductance * value;
  };
  for (let j = 0; j < nz; j++) {
    for (let i = 0; i < nr; i++) {
      const cell = j * nr + i;
      if (inPipe(i, j)) {
        diagonal[cell] = 1;
        continue;
      }
      const ring = 2 * Math.PI * r[i + 1]! * (z[j + 1]! - z[j]!);
      const disc = Math.PI * (r[i + 1]! ** 2 - r[i]! ** 2);
      const [rc, zc] = [middle(r, i), middle(z, j)];
      const wall = i + 1 === across && z[j + 1]! <= 0;
      if (i + 1 === nr) hold(cell, ring / (r[nr]! - rc), far(r[nr]!, zc));
      else if (!wall) link(cell, cell + 1, right, ring / (middle(r, i + 1) - rc));
      if (j + 1 < nz) {
        if (!inPipe(i, j + 1)) link(cell, cell + nr, up, disc / (middle(z, j + 1) - zc));
      } else if (!Number.isFinite(h)) hold(cell, disc / (z[nz]! - zc), far(rc, z[nz]!));
      if (j === 0 && i >= across) hold(cell, disc / (zc - z[0]!), far(rc, z[0]!));
      if (j === bottom && i < across) source[cell]! += disc;
    }
  }
  return system;
}

function solve({ right, up, diagonal, source }: System, { r }: Mesh): Float64Array {
  const nr = r.length - 1;
  const n = source.length;
  const x = new Float64Array(n);
  const rest = source.slice();
  const direction = new Float64Array(n);
  const image = new Float64Array(n);
  let scale = 0;
  let first = 0;
  for (let iteration = 0; iteration < 5000; iteration++) {
    let next = 0;
    for (let k = 0; k < n; k++) next += rest[k]! ** 2 / diagonal[k]!;
    if (iteration === 0) first = next;
    if (next <= 1e-18 * first) return x;
    const keep = iteration === 0 ? 0 : next / scale;
    for (let k = 0; k < n; k++) direction[k] = rest[k]! / diagonal[k]! + keep * direction[k]!;
    for (let k = 0; k < n; k++) image[k] = diagonal[k]! * direction[k]!;
    for (let k = 0; k < n; k++) {
      for (const [side, other] of [
        [right[k]!, k + 1],
        [up[k]!, k + nr],
      ] as const) {
        if (side === 0) continue;
        image[k]! -= side * direction[other]!;
        image[other]! -= side * direction[k]!;
      }
    }
    let slope = 0;
    for (let k = 0; k < n; k++) slope += direction[k]! * image[k]!;
    const step = next / slope;
    for (let k = 0; k < n; k++) x[k]! += step * direction[k]!;
    for (let k = 0; k < n; k++) rest[k]! -= step * image[k]!;
    scale = next;
  }
  throw new Error('the potential did not converge');
}

function correctionOf({ r, z, across, bottom }: Mesh, phi: Float64Array): number {
  const nr = r.length - 1;
  const depth = 0.5 * (z[bottom]! + z[bottom + 1]!);
  let mean = 0;
  for (let i = 0; i < across; i++) {
    mean += (r[i + 1]! ** 2 - r[i]! ** 2) * phi[bottom * nr + i]!;
  }
  return mean + depth;
}
