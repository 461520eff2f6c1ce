/**
 * Ahead to the state that repeats: from what the last cycles changed, the mixture of their ends that should
 * change least (Anderson's mixing). Hot gas takes many cycles through an exhaust, and what returns from it
 * waxes and wanes meanwhile; cycles alone can lie close together far from where that ends.
 *
 *   x = sum of t_k g_k,   t: least |sum of t_k (g_k - x_k)|, sum of t_k = 1,   g_k what a cycle makes of x_k
 *
 * Where a start is sought only: what counts is what cycles then do by themselves (settle.ts).
 * Source: Anderson (1965), J. ACM 12, 547; Walker and Ni (2011), SIAM J. Numer. Anal. 49, 1715; from memory.
 */
import { LuDecomposition, Matrix } from 'ml-matrix';
import type { Duct } from '../duct/duct.ts';
import * as AT from '../step/layout.ts';
import { type LineCycle, weightedCycle } from './cycle.ts';
import type { EngineModel } from './plan.ts';
import { type CellGas, sample } from './takeOver.ts';

/** Ends before the last that are mixed in, and the greatest share of one: beyond it they are too much alike. Our own choice. */
const DEPTH = 3;
const GREATEST_SHARE = 8;
/** Of each change, in its square: keeps shares from chasing rounding. Our own choice. */
const DAMPING = 1e-6;
/** Share of the length of an exhaust pipe before the open, where air of the outside comes and goes and says nothing of the rest. Our own choice. */
const BREATHING = 0.4;
/** What makes changes alike in size, and what cells are weighed by: usual swings [Pa], [K], [m/s], and the volume of a cell [m^3]. Our own choice. */
const USUAL = { pressure: 1e5, temperature: 500, velocity: 400, volume: 1e-4 };
/** Weight of a charge beside a cell of that volume [-]. Our own choice. */
const CHARGE = 3;

/** What a cycle ended in. */
interface Past {
  column: Float64Array;
  reports: LineCycle[];
  /** What it changed of what is looked at. */
  change: number[];
}

export class Hastening {
  private readonly model: EngineModel;
  /** Of each duct the weights of its cells. */
  private readonly looked: ReadonlyMap<Duct, readonly number[]>;
  private past: Past[] = [];
  private from: number[] = [];

  constructor(model: EngineModel) {
    this.model = model;
    this.looked = lookedAt(model);
  }

  /** Begins with the state that the model holds; joints forget what cycles before sent into them. */
  begin(): void {
    for (const { record } of this.model.collectors) record.slots[AT.REC_TURNS] = 0;
    this.from = this.seen();
  }

  /** After a cycle that is not yet the last: puts the mixture in the model's place; what it reports, or undefined where it is none. */
  ahead(reports: LineCycle[]): LineCycle[] | undefined {
    const { network } = this.model;
    const seen = this.seen();
    const change = seen.map((x, i) => x - this.from[i]!);
    this.past.push({ column: network.layout.column.slice(), reports, change });
    if (this.past.length > DEPTH + 1) this.past.shift();
    const shares = this.found();
    const past = this.past.slice(-(shares?.length ?? 1));
    const mixed = shares !== undefined && this.load(past, shares);
    if (!mixed) network.load(past.at(-1)!.column);
    this.from = mixed ? this.seen() : seen;
    return mixed ? reportsOf(past, shares) : undefined;
  }

  /** Shares of as many of the last ends as tell. */
  private found(): number[] | undefined {
    for (let count = this.past.length; count >= 2; count--) {
      const shares = leastChange(this.past.slice(-count).map(({ change }) => change));
      if (shares.every((share) => Math.abs(share) <= GREATEST_SHARE)) return shares;
    }
    return undefined;
  }

  /** Loads a mixture; false where it is no state of gas. */
  private load(past: readonly Past[], shares: readonly number[]): boolean {
    const { network, collectors, lines } = this.model;
    const { column } = network.layout;
    column.fill(0, AT.X_HEAD);
    past.forEach((one, k) => {
      const share = shares[k]!;
      for (let i = AT.X_HEAD; i < column.length; i++) column[i]! += share * one.column[i]!;
    });
    const last = past.at(-1)!.column;
    for (const { record } of collectors) {
      const at = network.layout.place.get(record)!;
      record.slots.set(last.subarray(at, at + AT.REC_BINS));
    }
    if (
      !network.ducts.every(isGas) ||
      !lines.every(({ cylinder: { slots } }) => slots[AT.V_MASS]! > 0)
    )
      return false;
    for (const duct of network.ducts) {
      sample(duct, duct, network.gas, inBounds);
      // Its ends hold a mixture too: what any of them has had of fuel, the duct has had.
      const at = network.layout.place.get(duct.sums)! + AT.D_VAPOUR;
      column[at] = Math.max(...past.map((one) => one.column[at]!));
    }
    return true;
  }

  /** What shares are found by: gas of the cells looked at, the more the more they hold, and the charges; all of order one. */
  private seen(): number[] {
    const { lines } = this.model;
    const seen: number[] = [];
    for (const [{ prim }, weights] of this.looked)
      for (let i = 0; i < weights.length; i++) {
        const weight = weights[i]!;
        seen.push((weight * prim.p.at(i)) / USUAL.pressure);
        seen.push((weight * prim.T.at(i)) / USUAL.temperature);
        seen.push((weight * prim.u.at(i)) / USUAL.velocity, weight * prim.burned.at(i));
      }
    for (const { cylinder } of lines) {
      const { slots } = cylinder;
      seen.push((CHARGE * slots[AT.Q_P]!) / USUAL.pressure);
      seen.push((CHARGE * slots[AT.V_T]!) / USUAL.temperature);
      seen.push((CHARGE * slots[AT.V_BURNED]!) / slots[AT.V_MASS]!);
    }
    return seen;
  }
}

/** Of each duct the weights of its cells; none of those next to the open. */
function lookedAt({ network, outside }: EngineModel): ReadonlyMap<Duct, readonly number[]> {
  const open = new Map(
    network.nodes.flatMap((node) =>
      node.kind === 'reservoir' && node.reservoir === outside
        ? [[node.ends[0].duct, node.ends[0].side] as const]
        : [],
    ),
  );
  return new Map(
    network.ducts.map((duct) => {
      const { volume, cells } = duct.mesh;
      const side = open.get(duct);
      const within = (i: number) => (side === 'low' ? cells - 1 - i : i) < (1 - BREATHING) * cells;
      const weight = (v: number) => Math.sqrt(v / USUAL.volume);
      return [duct, Array.from(volume, (v, i) => (side && !within(i) ? 0 : weight(v)))];
    }),
  );
}

function isGas({ prim, mesh }: Duct): boolean {
  for (let i = 0; i < mesh.cells; i++) {
    const [p, T] = [prim.p.at(i), prim.T.at(i)];
    if (!(p > 0 && T > LEAST_TEMPERATURE && T < MOST_TEMPERATURE)) return false;
  }
  return true;
}

/** Gas of an engine is nowhere colder or hotter [K]. */
const LEAST_TEMPERATURE = 150;
const MOST_TEMPERATURE = 3500;

const inBounds = (gas: CellGas): CellGas => ({
  ...gas,
  burned: Math.min(Math.max(gas.burned, 0), 1),
  fuel: Math.max(gas.fuel, 0),
});

const reportsOf = (past: readonly Past[], shares: readonly number[]): LineCycle[] =>
  past[0]!.reports.map((_, line) =>
    weightedCycle(
      past.map(({ reports }) => reports[line]!),
      (k) => shares[k]!,
    ),
  );

/** Shares, one in all, whose mixture of changes is least; NaN where changes do not tell. */
export function leastChange(changes: readonly (readonly number[])[]): number[] {
  const last = changes.at(-1)!;
  const others = changes.slice(0, -1).map((change) => change.map((x, i) => x - last[i]!));
  const matrix = others.map((a, i) =>
    others.map((b, j) => (i === j ? 1 + DAMPING : 1) * dot(a, b)),
  );
  const right = Matrix.columnVector(others.map((a) => -dot(a, last)));
  const system = new LuDecomposition(new Matrix(matrix));
  if (system.isSingular()) return changes.map(() => Number.NaN);
  const shares = system.solve(right).to1DArray();
  return [...shares, 1 - shares.reduce((sum, share) => sum + share, 0)];
}

function dot(a: readonly number[], b: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}
