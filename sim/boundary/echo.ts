/**
 * A like cylinder's pipe at a shared joint, known by its echo: in a settled, evenly firing engine
 * every cylinder sends into the joint just what the first one sent, some crank degrees later. So
 * one cylinder is solved, and the others' arriving gas is replayed from its own last cycle.
 *
 * No source: symmetry. Exact once the cycle has settled; shown against all cylinders solved in
 * tests/consistency/echo.test.ts.
 */
import type { Gas } from '../gas/gas.ts';
import type { ArrivingGas, End, EndFlow } from './ductEnd.ts';

/** Degrees in a four-stroke cycle, and records kept per degree. */
const CYCLE = 720;
const PER_DEGREE = 2;
const BINS = CYCLE * PER_DEGREE;
/**
 * Share of the newest cycle in the record. A record of the last cycle alone can swing from cycle to
 * cycle for ever; the mean of all, the older the less, has the same settled state and finds it.
 */
const MEMORY = 0.75;
/** Cycles of which nothing is kept: the start is still being flushed out. */
const FORGOTTEN = 3;
/** Numbers kept of the arriving gas: rho, v, p, c, gamma, R, burned, fuel. */
const FIELDS = 8;

/** What arrived at an end over the last 720 degrees, on an even grid of crank angles. */
export class ArrivalRecord {
  private readonly bins = new Float64Array(BINS * FIELDS);
  private readonly last = new Float64Array(FIELDS);
  private readonly now = new Float64Array(FIELDS);
  private lastAngle = Number.NaN;
  private turns = 0;

  /** Fills the whole record with one state. */
  fill(gas: ArrivingGas): void {
    pack(gas, this.last);
    for (let bin = 0; bin < BINS; bin++) this.bins.set(this.last, bin * FIELDS);
    this.lastAngle = Number.NaN;
  }

  /** Starts from another record, of the same engine on another mesh. */
  copy(other: ArrivalRecord): void {
    this.bins.set(other.bins);
    this.last.set(other.last);
    this.lastAngle = other.lastAngle;
    this.turns = other.turns;
  }

  /** Notes the gas that arrives at a crank angle [deg]; angles rise from call to call. */
  note(gas: ArrivingGas, crankAngle: number): void {
    const here = crankAngle * PER_DEGREE;
    pack(gas, this.now);
    if (!Number.isNaN(this.lastAngle)) {
      const span = (here - this.lastAngle + BINS) % BINS;
      if (here < this.lastAngle) this.turns++;
      const first = Math.floor(this.lastAngle) + 1;
      for (let bin = first; bin <= this.lastAngle + span; bin++) {
        this.put(bin % BINS, (bin - this.lastAngle) / span);
      }
    }
    this.last.set(this.now);
    this.lastAngle = here;
  }

  /** Reads what arrived at a crank angle [deg]. */
  recall(crankAngle: number, into: ArrivingGas): void {
    const at = (((crankAngle % CYCLE) + CYCLE) % CYCLE) * PER_DEGREE;
    const floor = Math.floor(at);
    const share = at - floor;
    const low = (floor % BINS) * FIELDS;
    const high = ((floor + 1) % BINS) * FIELDS;
    into.rho = this.between(low, high, share);
    into.v = this.between(low + 1, high + 1, share);
    into.p = this.between(low + 2, high + 2, share);
    into.c = this.between(low + 3, high + 3, share);
    into.gamma = this.between(low + 4, high + 4, share);
    into.R = this.between(low + 5, high + 5, share);
    into.burned = this.between(low + 6, high + 6, share);
    into.fuel = this.between(low + 7, high + 7, share);
  }

  private between(low: number, high: number, share: number): number {
    const a = this.bins[low]!;
    return a + share * (this.bins[high]! - a);
  }

  /** Enters what lies `share` of the way from the last gas noted to the newest. */
  private put(bin: number, share: number): void {
    const weight = this.turns < FORGOTTEN ? 1 : MEMORY;
    for (let k = 0; k < FIELDS; k++) {
      const value = this.last[k]! + share * (this.now[k]! - this.last[k]!);
      const at = bin * FIELDS + k;
      this.bins[at]! += weight * (value - this.bins[at]!);
    }
  }
}

function pack(gas: ArrivingGas, into: Float64Array): void {
  into[0] = gas.rho;
  into[1] = gas.v;
  into[2] = gas.p;
  into[3] = gas.c;
  into[4] = gas.gamma;
  into[5] = gas.R;
  into[6] = gas.burned;
  into[7] = gas.fuel;
}

/** The end of a pipe that is not solved: reads a record, keeps a ledger of what it gave. */
export class EchoEnd implements End {
  readonly area: number;
  readonly arriving: ArrivingGas;
  readonly flow: EndFlow = { mass: 0, energy: 0, burned: 0, fuel: 0 };
  /** What it has given to the joint since the last reset: mass [kg], energy [J]. */
  readonly given: EndFlow = { mass: 0, energy: 0, burned: 0, fuel: 0 };
  /** How far behind the recorded pipe this one fires [deg]. */
  readonly delay: number;
  lastPressure = Number.NaN;

  constructor(area: number, delay: number, start: ArrivingGas) {
    this.area = area;
    this.delay = delay;
    this.arriving = { ...start };
  }

  read(_gas: Gas): void {}

  /** Adds this step's flow to the ledger. */
  tally(dt: number): void {
    this.given.mass += this.flow.mass * dt;
    this.given.energy += this.flow.energy * dt;
    this.given.burned += this.flow.burned * dt;
    this.given.fuel += this.flow.fuel * dt;
  }

  write(rho: number, v: number, p: number, burned: number, fuel: number, energyFlow: number): void {
    const { flow } = this;
    flow.mass = rho * v * this.area;
    flow.energy = energyFlow;
    flow.burned = flow.mass * burned;
    flow.fuel = flow.mass * fuel;
    this.lastPressure = p;
  }
}
