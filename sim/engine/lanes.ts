/**
 * Speeds of one engine side by side in the lanes of a compiled step. Each lane steps by itself, and
 * as one comes to its end the next speed takes its place, so that what a speed gives depends on no other.
 */
import type { NonPhysicalStateError } from '../errors.ts';
import { BYTES as SINGLE } from '../kernel/f32x4.ts';
import { BYTES as DOUBLE } from '../kernel/f64x2.ts';
import { type Kernel, load, moduleOf } from '../kernel/load.ts';
import * as AT from '../step/layout.ts';
import { placed } from './cycle.ts';
import { begun, type Driver, type End, type Start, solo } from './driver.ts';
import type { Layout } from './layOut.ts';
import type { EngineModel } from './plan.ts';
import type { SettleRule, Settling } from './settle.ts';

/** Places of a lane's column that a kernel holds at least. */
const LEAST_PLACES = 1 << 17;
const MOST_STEPS = 1_000_000;
/** How far a lane without a speed is sent [deg]. */
const IDLE = 360;

type Form = 'f64x2' | 'f32x4';
const BYTES: Record<Form, string> = { f64x2: DOUBLE, f32x4: SINGLE };
const modules = new Map<Form, WebAssembly.Module>();
const kernels = new Map<Form, Kernel>();

/** A kernel with room for a column; the last one where that will do. */
function kernelFor(form: Form, places: number): Kernel {
  const known = kernels.get(form);
  if (known && known.X.length >= places * known.lanes) return known;
  const module = modules.get(form) ?? moduleOf(BYTES[form]);
  modules.set(form, module);
  const kernel = load(module, form, Math.max(places, LEAST_PLACES));
  kernels.set(form, kernel);
  return kernel;
}

/** Whether this machine has the lanes; without them speeds go one after the other, to the same bits. */
function lanesOf(form: Form, places: number): Kernel | undefined {
  try {
    return kernelFor(form, places);
  } catch {
    return undefined;
  }
}

/** Two speeds at a time, in double precision. */
export const inLanes: Driver = (model, starts, rule) => drive('f64x2', model, starts, rule);

/** Four at a time in single precision, for previews: volumetric efficiency is within 1e-4 of the other. */
export const inQuickLanes: Driver = (model, starts, rule) => drive('f32x4', model, starts, rule);

function drive(
  form: Form,
  model: EngineModel,
  starts: readonly Start[],
  rule: SettleRule,
): (End | NonPhysicalStateError)[] {
  const { layout } = model.network;
  const kernel = lanesOf(form, layout.column.length);
  if (!kernel) return solo(model, starts, rule);
  const lanes = new Lanes(kernel, layout);
  const ends = new Array<End | NonPhysicalStateError>(starts.length);
  let next = 0;
  const seats = Array.from({ length: lanes.count }, () => new Seat(model, rule, lanes));
  const fill = (seat: Seat, lane: number) => {
    seat.index = next < starts.length ? next : -1;
    if (seat.index >= 0) seat.take(starts[next++]!, lane);
  };
  seats.forEach(fill);
  // A lane without a speed of its own computes what no one looks at.
  seats.forEach((seat, lane) => {
    if (seat.index < 0) lanes.put(lane, layout.column, layout.column.length);
  });
  while (seats.some(({ index }) => index >= 0)) {
    seats.forEach((seat, lane) => {
      if (seat.index < 0) lanes.set(lane, AT.CRANK_LEFT, IDLE);
    });
    if (!lanes.run()) return oneByOne(form, ends, model, starts, rule);
    seats.forEach((seat, lane) => {
      if (seat.index < 0 || lanes.get(lane, AT.CRANK_LEFT) > 0) return;
      const end = seat.arrive(lane);
      if (!end) return;
      ends[seat.index] = end;
      fill(seat, lane);
    });
  }
  return ends;
}

/** Speeds without an end yet, in TypeScript: it says of a state beyond physics what it is. */
function oneByOne(
  form: Form,
  ends: (End | NonPhysicalStateError)[],
  model: EngineModel,
  starts: readonly Start[],
  rule: SettleRule,
): (End | NonPhysicalStateError)[] {
  // Nobody knows what a kernel that went astray has written over.
  kernels.delete(form);
  return starts.map((start, i) => ends[i] ?? solo(model, [start], rule)[0]!);
}

/** One lane and the speed in it. */
class Seat {
  /** Which of the starts; -1: none. */
  index = -1;
  private settling: Settling | undefined;

  constructor(
    private readonly model: EngineModel,
    private readonly rule: SettleRule,
    private readonly lanes: Lanes,
  ) {}

  take(start: Start, lane: number): void {
    this.settling = begun(this.model, start, this.rule);
    const { column } = this.model.network.layout;
    this.lanes.put(lane, column, column.length);
  }

  /** What is due where the lane has come to; its end, or undefined to go on. */
  arrive(lane: number): End | NonPhysicalStateError | undefined {
    const { lanes, settling } = this;
    const { network } = this.model;
    const { column, small, live } = network.layout;
    const { hastened } = this.rule;
    lanes.take(lane, column, 0, hastened ? column.length : live);
    try {
      network.check();
    } catch (error) {
      return placed(error, column) as NonPhysicalStateError;
    }
    const state = settling!.arrive();
    if (state) {
      lanes.take(lane, column, live, column.length);
      return { state, column: column.slice(), sprays: settling!.run.sprays };
    }
    const changed = settling!.run.sprays.length > 0 ? live : small;
    lanes.put(lane, column, hastened ? column.length : changed);
    return undefined;
  }
}

/** The columns of the lanes in a kernel's memory. */
class Lanes {
  readonly count: number;
  private readonly kernel: Kernel;

  constructor(kernel: Kernel, { N, K }: Layout) {
    this.kernel = kernel;
    this.count = kernel.lanes;
    kernel.N.set(N);
    kernel.K.set(K);
  }

  /** Steps all lanes on until one has come to its stop; false where a state points beyond the memory. */
  run(): boolean {
    try {
      this.kernel.call.run!(MOST_STEPS);
      return true;
    } catch (error) {
      if (error instanceof WebAssembly.RuntimeError) return false;
      throw error;
    }
  }

  get(lane: number, place: number): number {
    return this.kernel.X[place * this.count + lane]!;
  }

  set(lane: number, place: number, value: number): void {
    this.kernel.X[place * this.count + lane] = value;
  }

  /** Copies places of a lane into a column. */
  take(lane: number, column: Float64Array, from: number, to: number): void {
    const { X } = this.kernel;
    for (let i = from, at = from * this.count + lane; i < to; i++, at += this.count)
      column[i] = X[at]!;
  }

  /** Copies the first places of a column into a lane. */
  put(lane: number, column: Float64Array, places: number): void {
    const { X } = this.kernel;
    for (let i = 0, at = lane; i < places; i++, at += this.count) X[at] = column[i]!;
  }
}
