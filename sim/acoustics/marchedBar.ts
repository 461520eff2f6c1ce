/**
 * The same hoses in time, where jets keep their own law: a chain of short pieces from each runner to the bar,
 * and on to the sensor.
 *
 *   dp/dt = (m_in - m_out) / C,   dm/dt = (p - p_next - R m) / L
 *   jet:  m = Cd A psi p1 / sqrt(R T) sqrt(1 - ((r - b) / (1 - b))^2),  r = p2 / p1 > b, flat below b
 *
 *   p  pressure of a piece [Pa]   m  mass flow [kg/s]   b  critical ratio, psi  flow function there [-]
 *   R, L, C  friction, inertia and room of a piece by the exact theory of line.ts at the firing frequency
 *
 * The ellipse is that of ISO 6358-1 (from memory), within 0.31 % of the isentropic nozzle. A jet is a line
 * through zero within a thousandth of the pressure. Steps leap from flow to pressure and back, half a step
 * apart. Source of the pieces: the telegraph equations, cut short; a piece is short beside the wave length.
 * Gas in hoses has one temperature and, but for jets, one density.
 */
import { circleArea } from '../duct/profile.ts';
import { criticalRatio, flowFunction } from '../loss/nozzle.ts';
import { type Line, lineConstants, type RestingGas } from './line.ts';
import type { Jet, PressureBar } from './pressureBar.ts';

/** Longest piece of a hose [m], and fewest pieces of one. */
const [PIECE, PIECES] = [0.1, 2];
/** A jet's flow is straight within this share of the pressure [-]. */
const STRAIGHT = 1e-3;
/** Longest step [s]. */
const STEP = 5e-5;

/** Runners of one pressure, so many of them. */
export interface RunnerGroup {
  count: number;
  /** Pressure [Pa] at a time from the start [s]. */
  pressure(time: number): number;
}

/** One hose in pieces. */
interface Chain {
  pieces: number;
  /** Of one piece. */
  resistance: number;
  inertance: number;
  capacity: number;
  /** Pressures from the far end on [Pa], then flows towards the bar [kg/s]. */
  p: Float64Array;
  m: Float64Array;
}

export class MarchedBar {
  time = 0;
  /** Pressures [Pa]. */
  bar: number;
  /** Mass flow from each group's runner into one of its hoses in the last step [kg/s]. */
  readonly flows: Float64Array;
  /** Longest stable step [s]. */
  readonly step: number;
  private readonly arms: Chain[];
  private readonly own: Chain | undefined;
  private readonly barCapacity: number;
  private readonly jet: JetLaw | undefined;
  private readonly groups: readonly RunnerGroup[];

  /**
   * @param start pressure of all gas at the start [Pa]
   * @param frequency at which friction and inertia of the hoses are taken [Hz]
   */
  constructor(
    bar: PressureBar,
    groups: readonly RunnerGroup[],
    gas: RestingGas,
    start: number,
    frequency: number,
  ) {
    this.groups = groups;
    this.bar = start;
    this.flows = new Float64Array(groups.length);
    this.arms = groups.map(() => chain(bar.hose, frequency, gas, start));
    this.own = bar.sensor.hose && chain(bar.sensor.hose, frequency, gas, start);
    const held = gas.density / (gas.gamma * gas.pressure);
    const ends = groups.reduce((sum, { count }, i) => sum + count * this.arms[i]!.capacity, 0);
    const room = bar.volume + (this.own ? 0 : bar.sensor.volume);
    this.barCapacity = held * room + (ends + (this.own?.capacity ?? 0)) / 2;
    if (this.own) this.sensorCapacity = held * bar.sensor.volume + this.own.capacity / 2;
    this.jet = bar.jet && new JetLaw(bar.jet, gas);
    this.step = this.stableStep(start);
  }

  private readonly sensorCapacity: number = 0;

  /** Pressure at the sensor [Pa]. */
  get sensor(): number {
    return this.own ? this.own.p[this.own.pieces]! : this.bar;
  }

  private stableStep(pressure: number): number {
    const chains = this.own ? [...this.arms, this.own] : this.arms;
    const waves = chains.map(({ inertance, capacity }) => Math.sqrt(inertance * capacity) / 2);
    const jets = this.jet ? [this.arms[0]!.capacity / 2 / this.jet.steepest(pressure)] : [];
    return Math.min(STEP, ...waves, ...jets);
  }

  /** One step of this length [s]. */
  advance(dt: number): void {
    let net = 0;
    this.time += dt;
    this.arms.forEach((arm, i) => {
      const { count } = this.groups[i]!;
      net += count * this.advanceArm(arm, i, dt);
    });
    if (this.own) net -= this.advanceOwn(this.own, dt);
    this.bar += (dt * net) / this.barCapacity;
  }

  /** Gives what flows into the bar [kg/s]. */
  private advanceArm({ pieces, p, m, ...one }: Chain, i: number, dt: number): number {
    const outside = this.groups[i]!.pressure(this.time);
    const entry = this.jet ? this.jet.flow(outside, p[0]!) : 0;
    if (!this.jet) p[0] = outside;
    advanceFlows({ pieces, p, m, ...one }, this.bar, dt);
    if (this.jet) p[0] = p[0]! + (2 * dt * (entry - m[0]!)) / one.capacity;
    for (let k = 1; k < pieces; k++) p[k] = p[k]! + (dt * (m[k - 1]! - m[k]!)) / one.capacity;
    this.flows[i] = this.jet ? entry : m[0]!;
    return m[pieces - 1]!;
  }

  /** Hose of the sensor: its far end is the bar. Gives what leaves the bar [kg/s]. */
  private advanceOwn(own: Chain, dt: number): number {
    const { pieces, p, m, capacity } = own;
    p[0] = this.bar;
    advanceFlows(own, p[pieces]!, dt);
    for (let k = 1; k < pieces; k++) p[k] = p[k]! + (dt * (m[k - 1]! - m[k]!)) / capacity;
    p[pieces] = p[pieces]! + (dt * m[pieces - 1]!) / this.sensorCapacity;
    return m[0]!;
  }
}

/** Friction at the end of the step, which no resistance makes unstable. */
function advanceFlows(
  { pieces, p, m, resistance, inertance }: Chain,
  end: number,
  dt: number,
): void {
  for (let k = 0; k < pieces; k++) {
    const next = k + 1 < pieces ? p[k + 1]! : end;
    m[k] = (m[k]! + (dt * (p[k]! - next)) / inertance) / (1 + (dt * resistance) / inertance);
  }
}

function chain(hose: Line, frequency: number, gas: RestingGas, start: number): Chain {
  const pieces = Math.max(PIECES, Math.ceil(hose.length / PIECE));
  const length = hose.length / pieces;
  const { resistance, inertance, capacity } = lineConstants(hose.bore, frequency, gas);
  return {
    pieces,
    resistance: resistance * length,
    inertance: inertance * length,
    capacity: capacity * length,
    p: new Float64Array(pieces + 1).fill(start),
    m: new Float64Array(pieces),
  };
}

/** Flow of a jet either way. */
export class JetLaw {
  private readonly choked: number;
  private readonly critical: number;

  constructor({ bore, coefficient }: Jet, { gamma, pressure, density }: RestingGas) {
    this.critical = criticalRatio(gamma);
    const flowed = flowFunction(0, gamma) / Math.sqrt(pressure / density);
    this.choked = coefficient * circleArea(bore) * flowed;
  }

  /** Mass flow from `p1` to `p2` [kg/s]. */
  flow(p1: number, p2: number): number {
    return p1 >= p2 ? this.oneWay(p1, p2 / p1) : -this.oneWay(p2, p1 / p2);
  }

  private oneWay(p: number, ratio: number): number {
    const b = this.critical;
    const drop = 1 - ratio;
    if (drop < STRAIGHT) return (drop / STRAIGHT) * this.oneWay(p, 1 - STRAIGHT);
    const share = Math.max(ratio - b, 0) / (1 - b);
    return this.choked * p * Math.sqrt(1 - share * share);
  }

  /** Most that flow grows per pressure [kg/(s Pa)]. */
  steepest(pressure: number): number {
    return this.oneWay(pressure, 1 - STRAIGHT) / (STRAIGHT * pressure);
  }
}
